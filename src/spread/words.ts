import { deg, mm, rounded, sentences } from '../checks/say.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import type { Influence, Move, ShoeSpread, Uncertain } from './linear.ts';
import type { ShoeSample } from './sampled.ts';

export const inUnit = (value: number, unit: 'mm' | 'deg', digits = 1): string => (unit === 'deg' ? deg : mm)(value, digits);

/** A measure with its accuracy: `62.0 ± 13.0 mm`, with as many digits as the accuracy has to say. */
export function sureness({ value, accuracy, unit, estimated }: Influence): string {
  const digits = accuracy < 0.95 ? 2 : 1;
  return `${rounded(value, 1)} ± ${inUnit(accuracy, unit, digits)}${estimated ? ' (est.)' : ''}`;
}

export const percent = (share: number): string => (share < 0.005 ? 'under 1 %' : `${rounded(100 * share, 0)} %`);

/** How a measure is spoken of that may be another shoe's. */
export const measureWords = ({ label, side }: Influence, spread: ShoeSpread): string => (side === spread.side ? label : `${label} (${side})`);

/** The move that a measure, off by its accuracy, makes felt most, and the result it moves. */
export function strongest({ moves, accuracy, step }: Influence, results: readonly Uncertain[]): { readonly move: Move; readonly result: Uncertain } | undefined {
  const felt = moves.flatMap((move) => { const result = results.find(({ key }) => key === move.key); return result ? [{ move, result, weight: (Math.abs(move.by) * accuracy) / step / result.matters }] : []; });
  return felt.length === 0 ? undefined : felt.reduce((a, b) => (b.weight > a.weight ? b : a));
}

/** "moves the standing point forward by 5.0 mm" */
export function moveWords({ by }: Move, { label, unit, more, less }: Uncertain): string {
  return `moves the ${label} ${by > 0 ? more : less} by ${inUnit(Math.abs(by), unit)}`;
}

/** "5 mm more moves the standing point forward by 5.0 mm" */
export function effectWords(influence: Influence, { results }: ShoeSpread): string {
  const felt = strongest(influence, results);
  return felt ? `${inUnit(influence.step, influence.unit, 0)} more ${moveWords(felt.move, felt.result)}` : '';
}

/** What decides less than this is only counted. */
const TELLING = 0.005;

/** The measures that are named, by what they decide: the first, and all that decide enough to be told; and how many more there are. */
export function tellingOf({ influences }: ShoeSpread): { readonly named: readonly Influence[]; readonly rest: string } {
  const named = influences.filter(({ share }, i) => i === 0 || share >= TELLING), more = influences.length - named.length;
  return { named, rest: more === 0 ? '' : `${more} more ${more === 1 ? 'decides' : 'decide'} under 1 %${more === 1 ? '' : ' each'}.` };
}

/** What is to be done about a measure that decides much: by how it was come by. */
function asked(influence: Influence, shoe: ShoeFitting, spread: ShoeSpread): string {
  const { field, estimated } = influence, words = measureWords(influence, spread), stance = shoe.foot?.stance;
  if (field === 'foot.ankleAngle' && stance?.kind === 'locked' && stance.found === 'goniometer') return 'Find the fixed ankle angle on heel plates with a plumb line';
  if (field.startsWith('foot.prosthesis.')) return `Have the prosthetist ${estimated ? 'give' : 'confirm'} the ${words}`;
  return estimated ? `Measure the ${words}` : `Take the ${words} again`;
}

/**
 * Which measure to take again and what for: "Take the ankle pivot forward of the heel back again: 5.0 mm more there moves the
 * standing point forward by 5.0 mm. …" Undefined where nothing is unsure.
 * @param shoe whose measure it is
 */
export function takeAgain(spread: ShoeSpread, shoe: ShoeFitting): string | undefined {
  const first = spread.influences[0], felt = first && strongest(first, spread.results);
  if (!first || !felt) return undefined;
  return sentences(
    `${asked(first, shoe, spread)}: ${inUnit(first.step, first.unit, 0)} more there ${moveWords(felt.move, felt.result)}`,
    `It stands at ${sureness(first)} and decides ${percent(first.share)} of what is unsure`,
    ...spread.influences.map((one) => noShapeWords(one, spread)),
  );
}

/** That sentence for a shoe of a pair; the measure may be one of the other shoe. */
export function againWords({ shoes }: Fitting, spread: ShoeSpread): string | undefined {
  const owner = spread.influences[0] && shoes[spread.influences[0].side];
  return owner && takeAgain(spread, owner);
}

/** Spreads nearer than this are one: of 2,000 variants no more can be told where ten share an outline (three standard errors). */
const AGREES = 0.15;
/** A spread below this nobody could measure. */
const LEAST_TOLD = 0.05;

/** "2,000" */
export const counted = (many: number): string => String(many).replace(/\B(?=(\d{3})+$)/g, ',');

/**
 * How what the variants came to agrees with what each measure does alone: "2,000 variants agree with the quick answer: no
 * spread differs by more than 6 %."
 */
export function agreementWords({ results }: ShoeSpread, { results: sampled, noShape }: ShoeSample, samples: number): string {
  const felt = results.flatMap((quick) => { const found = sampled.find(({ key }) => key === quick.key); return found && Math.max(quick.deviation, found.deviation) > LEAST_TOLD ? [{ quick, found, off: Math.abs(found.deviation / quick.deviation - 1) }] : []; });
  const without = noShape > 0 ? `${rounded(100 * noShape, 1)} % of the variants leave no shape` : '';
  if (felt.length === 0) return sentences(`${counted(samples)} variants were tried, and ${sampled.length ? 'no result moves that anyone could measure' : 'none has a shape'}`, without);
  const { quick, found, off } = felt.reduce((a, b) => (b.off > a.off ? b : a)), { label, unit } = quick;
  return sentences(off <= AGREES ? `${counted(samples)} variants agree with the quick answer: no spread differs by more than ${rounded(Math.ceil(100 * off), 0)} %`
    : `${counted(samples)} variants differ from the quick answer, most in the ${label}: ± ${inUnit(found.deviation, unit)} and not ± ${inUnit(quick.deviation, unit)}. Go by the variants: in them all measures are off at once`, without);
}

/** A measure that may well be read so that nothing can be made. */
function noShapeWords(influence: Influence, spread: ShoeSpread): string {
  const { noShape: { less, more }, unit } = influence, words = measureWords(influence, spread);
  const ways = [...(less === undefined ? [] : [`${inUnit(less, unit)} less`]), ...(more === undefined ? [] : [`${inUnit(more, unit)} more`])];
  return ways.length === 0 ? '' : `With the ${words} ${ways.join(' or ')} there is no shape, though it may be off by that much`;
}
