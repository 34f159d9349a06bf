import { pointAlong, type Path } from './path.ts';
import type { Point } from './point.ts';
import { rootBetween } from './solve.ts';
import type { Mm } from './units.ts';

const LOOKS = 8;

/** The points of a closed path at which a measure changes sign. */
export function crossings(path: Path, measure: (point: Point) => Mm): Point[] {
  const at = (w: number): Mm => measure(pointAlong(path, w));
  return Array.from({ length: path.length * LOOKS }, (_, i) => i / LOOKS).flatMap((w) =>
    at(w) < 0 === at(w + 1 / LOOKS) < 0 ? [] : [pointAlong(path, rootBetween(at, w, w + 1 / LOOKS))]);
}
