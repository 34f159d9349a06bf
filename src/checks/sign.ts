import type { Foot } from '../fitting/fitting.ts';
import type { Last } from '../last/last.ts';
import { inDegrees } from '../geometry/units.ts';
import { footNumbers, standInShoe } from '../profile/stance.ts';
import { deg } from './say.ts';

/** Lean of the leg in degrees that is good. Common practice of the trade. */
export const LEAN_GOOD = [2, 6] as const;

/** Asks whether the sign of a typed ankle angle was meant, where the other sign would have the leg lean as it should; empty otherwise. */
export function signQuestion(foot: Foot | undefined, last: Last): string {
  if (foot?.stance.kind !== 'locked' || foot.stance.found !== 'goniometer') return '';
  const { ankleAngle } = foot.stance, numbers = footNumbers(foot), [least, most] = LEAN_GOOD;
  const leanWith = (angle: number): number => inDegrees(standInShoe({ ...numbers, stance: { kind: 'locked', ankleAngle: angle } }, last).lean);
  const isGood = (lean: number): boolean => lean >= least && lean <= most;
  const turned = leanWith(-ankleAngle.value);
  if (isGood(leanWith(ankleAngle.value)) || !isGood(turned)) return '';
  return `Check the sign of ankleAngle: positive is the shin forward of square to the sole. With ${deg(inDegrees(-ankleAngle.value))} the leg would lean ${deg(turned)}`;
}
