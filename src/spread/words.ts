import { deg, mm, rounded, sentences } from '../checks/say.ts';
import type { ShoeFitting } from '../fitting/fitting.ts';
import type { Influence, Move, ShoeSpread, Uncertain } from './linear.ts';

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

/** A measure that may well be read so that nothing can be made. */
function noShapeWords(influence: Influence, spread: ShoeSpread): string {
  const { noShape: { less, more }, unit } = influence, words = measureWords(influence, spread);
  const ways = [...(less === undefined ? [] : [`${inUnit(less, unit)} less`]), ...(more === undefined ? [] : [`${inUnit(more, unit)} more`])];
  return ways.length === 0 ? '' : `With a ${words} ${ways.join(' or ')} there is no shape, though it may be off by that much`;
}
