import type { Mm } from '../geometry/units.ts';
import type { Added, Reading } from '../stiffener/reading.ts';
import { mm, pliesWords, rounded } from './say.ts';

/** What was read of a pack on the bench, in words: the same on the card it is proved by and in the checks. */

/** A gauge shows hundredths. */
export const droopWords = (droop: Mm): string => mm(droop, 2);

/** "0.41 to 0.95 mm", rounded towards the inside, so that what is told is good too. */
export const bandWords = ([least, most]: readonly [Mm, Mm]): string => `${rounded(Math.ceil(least * 100) / 100, 2)} to ${droopWords(Math.floor(most * 100) / 100)}`;

/** "droops 2.0 times as far as reckoned" */
export const timesWords = (times: number): string => (rounded(times, 2) === '1.00' ? 'droops as far as reckoned' : `droops ${timesNumber(times)} times as far as reckoned`);
/** To hundredths, in tenths where they tell as much. */
export const timesNumber = (times: number): string => rounded(times, 2).replace(/0$/, '');

/** What is hung on a pack: to hundredths of a kg, no more digits than it has. */
export const kgWords = (mass: number): string => `${Number(rounded(mass, 2))} kg`;

/** "2 plies on top", "1 ply on top and 1 underneath". */
export function addedWords({ onTop, underneath }: Added): string {
  if (underneath === 0) return `${pliesWords(onTop)} on top`;
  return onTop === 0 ? `${pliesWords(underneath)} underneath` : `${pliesWords(onTop)} on top and ${underneath} underneath`;
}
/** Which side is which, for `addedWords`. */
export const ADDED_SIDES = 'on top is the foot\'s side, underneath the floor\'s';

/** What to do about a reading. */
export function readingWords(reading: Reading): string {
  switch (reading.means) {
    case 'test again': return 'test again: mass, gauge or clamp is wrong';
    case 'good': return 'good';
    case 'soft': return 'holds, but too soft: seek voids, test again';
    case 'add': return `add ${addedWords(reading.add)}`;
    case 'lay anew': return 'do not use it: lay it anew';
  }
}
