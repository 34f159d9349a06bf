import type { ShoeFitting } from '../fitting/fitting.ts';
import { rangeOf } from '../fitting/ranges.ts';
import { inDegrees, type Rad } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import { footNumbers, standInShoe } from '../profile/stance.ts';
import { deg } from './say.ts';

/** Lean of the leg in degrees that is good. Common practice of the trade. */
export const LEAN_GOOD = [2, 6] as const;

/** An ankle angle with the other sign, and how the leg would lean with it, degrees. */
interface Turned { readonly ankleAngle: Rad; readonly lean: number }

/**
 * A typed ankle angle turned round, where that would have the leg lean as it should and the typed one does not: its sign
 * is in question then, and nothing else is to be changed before it is settled. Undefined where it is not, and where the
 * pitch is unusual and was not taken twice: that may be the slip instead.
 */
export function turnedAnkle({ foot, last: measures }: ShoeFitting, last: Last): Turned | undefined {
  if (foot?.stance.kind !== 'locked' || foot.heelPlates || foot.stance.found === 'prosthesis alignment') return undefined;
  if (isUnusualPitch(measures)) return undefined;
  const numbers = footNumbers(foot), { value } = foot.stance.ankleAngle, [least, most] = LEAN_GOOD;
  const leanWith = (ankleAngle: Rad): number => inDegrees(standInShoe({ ...numbers, stance: { kind: 'locked', ankleAngle } }, last).lean);
  const isGood = (lean: number): boolean => lean >= least && lean <= most;
  const turned = { ankleAngle: -value, lean: leanWith(-value) };
  return !isGood(leanWith(value)) && isGood(turned.lean) ? turned : undefined;
}

function isUnusualPitch({ pitch: { value, twice } }: ShoeFitting['last']): boolean {
  const [least, most] = rangeOf('last.pitch').usual?.() ?? rangeOf('last.pitch').limits;
  return !twice && (value < least || value > most);
}

/** Asks whether the sign of a typed ankle angle was meant; empty where it is not in question. */
export function signQuestion(shoe: ShoeFitting, last: Last): string {
  const turned = turnedAnkle(shoe, last);
  if (!turned) return '';
  return `Check the sign of ankleAngle: positive is the shin forward of square to the sole. With ${deg(inDegrees(turned.ankleAngle))} the leg would lean ${deg(turned.lean)}`;
}
