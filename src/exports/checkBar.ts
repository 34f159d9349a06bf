import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { stroke, type Mark } from './drawing.ts';

/** Length of every line that proves a print, and half of the tick at each of its ends, mm on paper. */
export const CHECK: Mm = 100;
const END: Mm = 1.5;

/** A line that proves the print, with a tick at each end. @param from its left or its upper end */
export function checkBar(from: Point, way: 'level' | 'upright'): Mark[] {
  const [x, y] = from, to: Point = way === 'level' ? [x + CHECK, y] : [x, y + CHECK], [asideX, asideY] = way === 'level' ? [0, END] : [END, 0];
  return [stroke(from, to, 'thin', 'ink'), ...[from, to].map(([ex, ey]) => stroke([ex - asideX, ey - asideY], [ex + asideX, ey + asideY], 'thin', 'ink'))];
}
