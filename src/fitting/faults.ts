/** One thing the maker has to correct before the sheet can be read. */
export interface Fault {
  /** Where on the sheet, like `left.foot.pivotHeight`; `sheet` for the text as a whole. */
  readonly path: string;
  /** The rule that is broken, in words and with its unit. */
  readonly rule: string;
  /** The value as it came, at most 80 characters. */
  readonly value: string;
  /** The whole message: where, the rule, what came, what to do. */
  readonly text: string;
}

export type Path = readonly (string | number)[];

const VALUE_MAX = 80;
const NAME_MAX = 40;

const shorten = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, most - 1)}…`);

/** Marks that do not print, or turn the line round, are written as their code. */
const printable = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** More lines than this are a table, which its rule quotes from. */
const LINES_MOST = 3;
const linesIn = (text: string): number => text.trim().split(/\r\n|\n|\r/).length;

/** A value the way the maker typed it, on one line. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string' && linesIn(value) > LINES_MOST) return `a text of ${linesIn(value)} lines`;
  if (typeof value === 'string') return `"${shorten(printable(value), VALUE_MAX - 2)}"`;
  return shorten(printable(typeof value === 'number' ? String(value) : JSON.stringify(value)), VALUE_MAX);
}

/** `['left', 'last', 'heights', 2, 0]` as `left.last.heights[2][0]`. */
export function pathName(path: Path): string {
  if (path.length === 0) return 'sheet';
  const steps = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${shorten(printable(step), NAME_MAX)}`));
  return steps.join('').replace(/^\./, '');
}

/**
 * @param rule completes the sentence "left.foot.length …", e.g. "must be 99 to 485 mm"
 * @param help what to do about it, a sentence of its own
 */
export function fault(path: Path, rule: string, came: unknown, help = ''): Fault {
  const name = pathName(path), value = shown(came);
  return { path: name, rule, value, text: `${name} ${rule}; got ${value}.${help === '' ? '' : ` ${help}`}` };
}

/** What to do about it, as `fault` was told. */
export const helpIn = ({ path, rule, value, text }: Fault): string => text.slice(`${path} ${rule}; got ${value}.`.length).trim();

/** True for a field that should be there and is not. */
export const isMissing = ({ value }: Fault): boolean => value === shown(undefined);

/** Begins every rule that asks for a field to be taken out. */
export const LEAVE_OUT = 'must be left out';

/** What has to go needs no correcting inside. */
export function withoutInside(faults: readonly Fault[]): Fault[] {
  const going = faults.filter(({ rule }) => rule.startsWith(LEAVE_OUT)).map(({ path }) => `${path}.`);
  return faults.filter(({ path }) => !going.some((place) => path.startsWith(place)));
}

/** What stands at a place of the sheet as it came, or undefined. */
export function valueAt(sheet: unknown, path: Path): unknown {
  let here = sheet;
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

/**
 * Notes a broken rule at a place. The value shown is the one the maker typed there, or `computed` where the sheet has
 * none; `help` says what to do about it.
 */
export type Complain = (path: Path, rule: string, help?: string, computed?: unknown) => void;

/**
 * Gathers the faults that show only when fields are read together; `came` tells what stands at a place. A place that already has a fault gets no second
 * one, and neither does anything inside it: what could not be read there is not missing.
 */
export function complaintsAbout(came: (path: Path) => unknown, earlier: readonly Fault[]): { readonly complain: Complain; readonly faults: readonly Fault[] } {
  const known = new Set(earlier.map(({ path }) => path)), faults: Fault[] = [];
  const complain: Complain = (path, rule, help, computed) => {
    const within = path.map((_, i) => pathName(path.slice(0, i + 1)));
    if (!within.some((name) => known.has(name))) faults.push(fault(path, rule, came(path) ?? computed, help));
  };
  return { complain, faults };
}
