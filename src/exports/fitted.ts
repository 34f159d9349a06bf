import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { roomFor, WIDER, words, type Words } from './drawing.ts';
import { wrapped, type Lettering } from './letters.ts';

/** No lettering on a job sheet is smaller: 7 points. */
export const LEAST_LETTERS: Mm = 2.5;

/** Rounding must not cut what was made to fit. */
const JUST_UNDER = 0.9999;

type Style = Lettering & Partial<Pick<Words, 'anchor' | 'ink'>>;

/** One line of lettering in a room: smaller where it is too long, and cut with an ellipsis where it would become too small to read. */
export function fitted(text: string, at: Point, room: Mm, style: Style): Words {
  const size = Math.max(LEAST_LETTERS, Math.min(style.size, (style.size * room * JUST_UNDER) / (roomFor(text, style) || 1)));
  return words(shortened(text, room, { ...style, size }), at, { ...style, size });
}

/** As much of a text as goes on one line. */
export function shortened(text: string, room: Mm, lettering: Lettering): string {
  if (roomFor(text, lettering) <= room) return text;
  const letters = [...text];
  let most = letters.length;
  while (most > 0 && roomFor(`${letters.slice(0, most).join('').trimEnd()}…`, lettering) > room) most--;
  return `${letters.slice(0, most).join('').trimEnd()}…`;
}

/** Lines of a text, no more than so many: the last one says by its ellipsis that there is more. */
export function linesOf(text: string, room: Mm, lettering: Lettering, most = Infinity): readonly string[] {
  const lines = wrapped(text, room / WIDER, lettering);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), shortened(lines.slice(most - 1).join(' '), room, lettering)];
}
