import { parseArgs } from 'node:util';
import { BLANK_FEET, MAKINGS, SIDES, type BlankFoot, type MakingName, type Side } from '../fitting/words.ts';
import { EXIT, printable, Refusal } from './refusal.ts';

/** What was asked for. */
export type Asked =
  | { readonly verb: 'make'; readonly sheet: string; readonly with: readonly MakingName[]; readonly into: string | undefined; readonly replace: boolean }
  | { readonly verb: 'check'; readonly sheet: string; readonly with: readonly MakingName[]; readonly json: boolean; readonly spread: boolean; readonly stiffener: boolean }
  | { readonly verb: 'seek'; readonly sheet: string; readonly json: boolean; readonly curve: boolean; readonly take: string | undefined }
  | { readonly verb: 'roll'; readonly sheet: string; readonly solid: string; readonly side: Side | undefined; readonly json: boolean }
  | { readonly verb: 'blank'; readonly foot: BlankFoot; readonly rocker: Side | 'both'; readonly to: string }
  | { readonly verb: 'schema' }
  | { readonly verb: 'samples'; readonly name: string | undefined }
  | { readonly verb: 'version' }
  | { readonly verb: 'help'; readonly about: Verb | undefined };

export const VERBS = ['make', 'check', 'seek', 'roll', 'blank', 'schema', 'samples', 'help'] as const;
export type Verb = (typeof VERBS)[number];
const isVerb = (word: string): word is Verb => VERBS.some((verb) => verb === word);

type Options = Readonly<Record<string, { readonly type: 'string' | 'boolean'; readonly short?: string }>>;
const HELP = { help: { type: 'boolean', short: 'h' } } as const;
const OPTIONS: Readonly<Record<Verb, Options>> = {
  make: { with: { type: 'string' }, into: { type: 'string' }, replace: { type: 'boolean' }, ...HELP },
  check: { with: { type: 'string' }, json: { type: 'boolean' }, spread: { type: 'boolean' }, stiffener: { type: 'boolean' }, ...HELP },
  seek: { json: { type: 'boolean' }, curve: { type: 'boolean' }, take: { type: 'string' }, ...HELP },
  roll: { side: { type: 'string' }, json: { type: 'boolean' }, ...HELP },
  blank: { rocker: { type: 'string' }, to: { type: 'string' }, ...HELP },
  schema: HELP, samples: HELP, help: HELP,
};

const wrong = (message: string): Refusal => new Refusal(EXIT.commandLine, `${message}\nrockerbench --help shows how it is used.`);

/** Reads the words after the command's name. @throws Refusal for words that mean nothing here */
export function commandLine(words: readonly string[]): Asked {
  const [first, ...rest] = words;
  if (first === undefined) throw wrong(`What is to be done? Verbs: ${VERBS.join(', ')}.`);
  if (first === '--help' || first === '-h') return { verb: 'help', about: undefined };
  if (first === '--version') return { verb: 'version' };
  if (isVerb(first)) return asked(first, rest);
  const meant = first.endsWith('.json') ? ` A sheet comes after the verb: rockerbench make ${printable(first)}` : ` Verbs: ${VERBS.join(', ')}.`;
  throw wrong(`"${printable(first)}" is no verb of rockerbench.${meant}`);
}

function asked(verb: Verb, words: readonly string[]): Asked {
  const { given, values } = taken(verb, words);
  if (given.has('help')) return { verb: 'help', about: verb };
  switch (verb) {
    case 'make': return { verb, sheet: theSheet(verb, values), with: theThings(given.get('with')), into: given.get('into'), replace: given.has('replace') };
    case 'check': return { verb, sheet: theSheet(verb, values), with: theThings(given.get('with')), json: given.has('json'), spread: given.has('spread'), stiffener: given.has('stiffener') };
    case 'seek': return { verb, sheet: theSheet(verb, values), json: given.has('json'), curve: given.has('curve'), take: given.get('take') };
    case 'roll': return { verb, ...theSheetAndSolid(values), side: theSide(given.get('side')), json: given.has('json') };
    case 'blank': return { verb, foot: theFoot(values), rocker: theRocker(given.get('rocker')), to: theFile(given.get('to')) };
    case 'schema': atMost(0, verb, values); return { verb };
    case 'samples': atMost(1, verb, values); return { verb, name: values[0] };
    case 'help': return helpAbout(values);
  }
}

function theSheet(verb: Verb, values: readonly string[]): string {
  if (!values[0]) throw wrong(`${verb} needs a fitting sheet: rockerbench ${verb} SHEET.json`);
  atMost(1, verb, values);
  return values[0];
}

function theSheetAndSolid(values: readonly string[]): { readonly sheet: string; readonly solid: string } {
  const [sheet, solid, extra] = values;
  if (!sheet || !solid) throw wrong('roll needs a fitting sheet and a solid: rockerbench roll SHEET.json SOLID.stl');
  if (extra !== undefined) throw wrong(`roll takes two words after it, and got "${printable(extra)}" as well.`);
  return { sheet, solid };
}

function theSide(word: string | undefined): Side | undefined {
  const side = SIDES.find((known) => known === word);
  if (word !== undefined && !side) throw wrong(`--side takes ${SIDES.join(' or ')}; got "${printable(word)}".`);
  return side;
}

const BLANK_USE = 'rockerbench blank ankle --rocker left --to sheet.json';

function theFoot(values: readonly string[]): BlankFoot {
  atMost(1, 'blank', values);
  const foot = BLANK_FEET.find((known) => known === values[0]);
  if (!foot) throw wrong(`blank needs to know what must not bend: ${BLANK_FEET.join(', ')}; got "${printable(values[0] ?? '')}". Like: ${BLANK_USE}`);
  return foot;
}

function theRocker(word: string | undefined): Side | 'both' {
  const side = [...SIDES, 'both' as const].find((known) => known === word);
  if (!side) throw wrong(`blank needs to know which shoe rolls: --rocker left, right or both; got "${printable(word ?? '')}". Like: ${BLANK_USE}`);
  return side;
}

/** `jig,gauges`: what is to be made besides, each as is usual where the sheet does not say more. */
function theThings(words: string | undefined): readonly MakingName[] {
  if (words === 'all') return MAKINGS;
  return (words?.split(',') ?? []).map((word) => {
    const name = MAKINGS.find((known) => known === word.trim());
    if (!name) throw wrong(`--with takes names with commas between them, of: ${MAKINGS.join(', ')}; or all. Got "${printable(word)}".`);
    return name;
  });
}

function theFile(file: string | undefined): string {
  if (file === undefined) throw wrong(`blank needs the name of a new file after --to. Like: ${BLANK_USE}`);
  return file;
}

function atMost(most: number, verb: Verb, values: readonly string[]): void {
  const extra = values[most];
  if (extra !== undefined) throw wrong(`${verb} takes ${most === 0 ? 'no words after it' : 'one word after it'}, and got "${printable(extra)}" as well.`);
}

function helpAbout(values: readonly string[]): Asked {
  atMost(1, 'help', values);
  const about = values[0];
  if (about !== undefined && !isVerb(about)) throw wrong(`There is no help about "${printable(about)}". Verbs: ${VERBS.join(', ')}.`);
  return { verb: 'help', about };
}

/** The options that were given, each at most once, and the words that are none. */
function taken(verb: Verb, words: readonly string[]): { readonly given: ReadonlyMap<string, string>; readonly values: readonly string[] } {
  const options = OPTIONS[verb], given = new Map<string, string>();
  const { tokens, positionals } = parseArgs({ args: [...words], options, strict: false, allowPositionals: true, tokens: true });
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token, option = Object.hasOwn(options, name) ? options[name] : undefined;
    if (!option) throw wrong(`${verb} has no option ${printable(rawName)}. Its options: ${Object.keys(options).map((known) => `--${known}`).join(', ')}.`);
    if (given.has(name)) throw wrong(`${rawName} was given twice.`);
    if (option.type === 'string' && (!value || value.startsWith('-'))) throw wrong(`${rawName} needs a name after it.`);
    if (option.type === 'boolean' && value !== undefined) throw wrong(`${rawName} takes nothing after it, and got "${printable(value)}".`);
    given.set(name, value ?? '');
  }
  return { given, values: positionals };
}
