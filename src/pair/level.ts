import type { LegDifference } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import type { Raise } from './raise.ts';

/** Floor to where the foot stands, inside the shoe: at the centre of the seat and at the ball, mm. */
export interface FootHeights { readonly seat: Mm; readonly ball: Mm }

/** How much higher a side is to stand than the other: the shorter leg by what the prescriber wants corrected. */
export function standsHigherBy(side: Side, { correct, shorter }: LegDifference): Mm {
  if (correct === 0 || shorter === undefined) return 0;
  return side === shorter ? correct : -correct;
}

/** What has to go under a shoe so that it stands level with the other, leg difference counted. */
export function raiseFor(side: Side, now: FootHeights, other: FootHeights, difference: LegDifference): Raise {
  const more = standsHigherBy(side, difference);
  return { seat: other.seat + more - now.seat, ball: other.ball + more - now.ball };
}

/** The leg difference as a sentence for the bench. */
export function levelInWords({ correct, shorter }: LegDifference): string {
  if (correct === 0 || shorter === undefined) return 'Both feet are to stand at one height.';
  return `The ${shorter} foot is to stand ${correct.toFixed(1)} mm higher than the other.`;
}
