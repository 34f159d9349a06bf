import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { rounded } from '../../checks/say.ts';
import type { BoardOrder } from '../../fitting/making.ts';
import type { FlatPart } from '../flatPart.ts';
import { linesInRows, linesOver, ROW, widthOf } from './lettering.ts';
import { polygon } from './polygon.ts';

/** Width of a board of the block, and what stays at least on both sides of its slot. */
const WIDE: Mm = 50, BESIDE: Mm = 20;
/** Between letters and an edge that is cut. */
const CLEAR: Mm = 2;

/**
 * A block just so high, of two boards halved across each other so that it stands: under the bare seat of the lasted shoe,
 * with the ball on its own height, it shows pitch and toe spring of the last before a sole is made.
 * @param height floor to the face the sole is glued to, at the centre of the seat
 */
export function heelBlock(name: string, height: Mm, { thickness, clearance }: BoardOrder, estimated: boolean): FlatPart[] {
  const words = [...name.split(' '), rounded(height, 1), ...(estimated ? ['est.'] : [])], rows = Math.max(1, Math.floor((height - 2 * CLEAR) / ROW)), lines = words.length > rows ? linesInRows(words.join(' '), rows) : words;
  const slot = thickness + clearance, width = Math.max(WIDE, slot + 2 * Math.max(BESIDE, widthOf(lines) + 2 * CLEAR)), deep = height / 2 + clearance, left = (width - slot) / 2, right = left + slot;
  const letters = linesOver(lines, [CLEAR, (height - (lines.length - 0.3) * ROW) / 2]);
  const from = (corners: readonly Point[], which: string): FlatPart => ({ name: `${name}, ${which}`, outline: polygon(corners), holes: [], marks: [], letters });
  return [
    from([[0, 0], [width, 0], [width, height], [right, height], [right, height - deep], [left, height - deep], [left, height], [0, height]], 'slot above'),
    from([[0, 0], [left, 0], [left, deep], [right, deep], [right, 0], [width, 0], [width, height], [0, height]], 'slot below'),
  ];
}
