import { LENGTH_DIGITS, type LengthUnit } from '../fitting/lengthUnit.ts';
import { inDegrees, MM_PER_INCH, type Mm } from '../geometry/units.ts';
import { alternativesTo, assumptionsOf, wouldKeep, type Would } from '../stiffener/alternatives.ts';
import type { BentBy } from '../stiffener/bentBy.ts';
import type { BentShape } from '../stiffener/bentShape.ts';
import { inShort, layersDown } from '../stiffener/layers.ts';
import { BENCH_MOMENT } from '../stiffener/loads.ts';
import type { Pack } from '../stiffener/pack.ts';
import type { Keeps, Tried } from '../stiffener/search.ts';
import { capital, deg, grams, inInches, mm, rounded } from './say.ts';

/** How a stiffener is laid, beside other ways to it, in words: the same in the terminal and on the page. */

const length = (value: Mm, units: LengthUnit, digits = 2): string => (units === 'in' ? `${rounded(value / MM_PER_INCH, LENGTH_DIGITS.in)} in` : mm(value, digits));
const inUnits = (text: string, units: LengthUnit): string => (units === 'in' ? inInches(text) : text);

export const foundOrLaid = ({ by }: Pick<Pack, 'by'>): string => (by === 'sheet' ? 'as laid' : 'as found');
export const packInShort = ({ stiffener, underFoam, plate }: Pick<Pack, 'stiffener' | 'underFoam' | 'plate'>, units: LengthUnit): string => inUnits(inShort(stiffener, underFoam, plate), units);

/** A layer in words; the angle is empty where it has none. */
export interface LayerWords { readonly name: string; readonly thickness: string; readonly angle: string; readonly where: string }
export const layerWords = (pack: Pack, units: LengthUnit): LayerWords[] => layersDown(pack).map(({ name, thickness, fibres = '', over }) => ({
  name: inUnits(name, units), thickness: length(thickness, units), angle: fibres, where: over ? `${length(over.from, units, 0)} to ${length(over.to, units, 0)}` : 'all along',
}));

const KEEPS: Readonly<Record<Keeps, string>> = { all: 'all', must: 'bend, stumble', not: 'no' };
const WAYS: Readonly<Record<Would['what'], string>> = { plies: 'more plies', thickness: 'thicker', cloth: 'another cloth', camber: 'cambered more' };

/** What a row of `waysTo` tells after the way. Safety is how many times a stumble may be as hard before a ply fails. */
export const WAY_HEADS = ['plies', 'thick', 'weight', 'resin', 'bends', 'strain', 'safety', 'keeps to'] as const;

/** A way to a stiffener, and its numbers in the order of `WAY_HEADS`. */
export interface WayWords { readonly way: string; readonly numbers: readonly string[] }

/** The pack itself, then the best of each other kind, then what would keep to more. */
export function waysTo(pack: Pack, units: LengthUnit): WayWords[] {
  const other = (way: string, tried: Tried): WayWords => ({ way: `${way}: ${packInShort({ stiffener: tried.stiffener, underFoam: tried.choice.core?.foam === true, plate: pack.plate }, units)}`, numbers: numbersOf(tried, units) });
  return [
    { way: foundOrLaid(pack), numbers: numbersOf(pack, units) },
    ...alternativesTo(pack).map(({ way, tried }) => other(way, tried)), ...wouldKeep(pack).map(({ what, tried }) => other(WAYS[what], tried)),
  ];
}

type Numbers = Pick<Pack, 'plies' | 'thickness' | 'grams' | 'assessed' | 'keeps'>;
function numbersOf({ plies, thickness, grams: weight, assessed: { bench, walking, stumble }, keeps }: Numbers, units: LengthUnit): string[] {
  return [String(plies), length(thickness, units, 1), grams(weight.pack), weight.resin === undefined ? '' : grams(weight.resin), deg(inDegrees(bench.bend), 2), `${rounded(Math.abs(walking.strain) * 100, 2)} %`, rounded(stumble.firstPly.times, 2), KEEPS[keeps]];
}

/** What was taken as usual, a sentence each; the one that moves the bend most is told first. */
export const decidesIt = (pack: Pack): string[] => assumptionsOf(pack).map(({ text, bends: [worst, best], grades }, i) =>
  `${i === 0 ? 'What decides it: ' : ''}${text}: ${deg(worst, 2)} (${grades[0]}) to ${deg(best, 2)} (${grades[1]}).`);

const ASKED_KEPT: Readonly<Record<Keeps, string>> = {
  all: 'It keeps to all that is asked.', must: 'It bends as little as is wanted and bears a stumble, but does not keep to the rest: see the checks.', not: 'It does not keep to what is asked: see the checks.',
};

/** How stiff it is, and whether that is what is asked. @param est behind what rests on an estimate */
export function gradeWords({ assessed: { grade, bench }, keeps }: Pack, est: string): string {
  return `${capital(grade)}: the ball bends ${deg(inDegrees(bench.bend), 2)}${est} on the bench, under ${BENCH_MOMENT} N·m for each kg. ${ASKED_KEPT[keeps]}`;
}

const UNDER: Readonly<Record<BentBy, string>> = { bench: 'On the bench, clamped up to the ball', walking: 'Where walking strains it most', stumble: 'In a stumble on the tip' };
/** Beyond so much of bend straight reckoning tells more than there would be; beyond the second it tells nothing but that a pack is far too soft. Degrees. */
const TELLS_MORE = 15, TELLS_NOTHING = 45;
export const isFarTooSoft = ({ bend }: Pick<BentShape, 'bend'>): boolean => inDegrees(bend) > TELLS_NOTHING;

/** "On the bench, clamped up to the ball: bends 0.28° at the ball, the tip droops 0.3 mm." */
export function bentWords({ by, bend, tip }: Pick<BentShape, 'by' | 'bend' | 'tip'>, units: LengthUnit, est: string): string {
  if (isFarTooSoft({ bend })) return `${UNDER[by]}: bends by more than ${deg(TELLS_NOTHING, 0)} at the ball, so far that nothing else can be told of it: it is far too soft.`;
  const [went, seen] = by === 'bench' ? ['droops', ''] : ['gives way by', ', seen from the sole at the ball'], more = inDegrees(bend) > TELLS_MORE ? ` Beyond ${deg(TELLS_MORE, 0)} this tells rather more than there would be.` : '';
  return `${UNDER[by]}: bends ${deg(inDegrees(bend), 2)}${est} at the ball, the tip ${went} ${length(tip, units, 1)}${est}${seen}.${more}`;
}

/** Plies and core together. */
export const thickWords = ({ thickness }: Pick<Pack, 'thickness'>, units: LengthUnit): string => length(thickness, units, 1);
