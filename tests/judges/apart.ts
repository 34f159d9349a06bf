import { lengthOf, pointOn, type Path } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';

/**
 * Slow judge of how far two closed paths lie apart: both are sampled along their true arcs, and every stretch is measured
 * against every other. Less than nothing means that one lies in or across the other. It shares nothing with the nesting.
 * @param step largest distance between two samples of an arc, mm
 */
export function apart(one: Path, other: Path, step: number): number {
  const a = sampled(one, step), b = sampled(other, step);
  if (isInside(a[0]!, b) || isInside(b[0]!, a)) return -1;
  let least = Infinity;
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) {
    const [p, q, r, s] = [a[i]!, a[(i + 1) % a.length]!, b[j]!, b[(j + 1) % b.length]!];
    if (Math.min(p[0], q[0]) - Math.max(r[0], s[0]) > least || Math.min(r[0], s[0]) - Math.max(p[0], q[0]) > least) continue;
    if (cross(p, q, r, s)) return -1;
    least = Math.min(least, toStretch(p, r, s), toStretch(q, r, s), toStretch(r, p, q), toStretch(s, p, q));
  }
  return least;
}

export const sampled = (path: Path, step: number): Point[] => path.flatMap((piece) => {
  const count = piece.kind === 'line' ? 1 : Math.ceil(lengthOf(piece) / step);
  return Array.from({ length: count }, (_, i) => pointOn(piece, i / count));
});

/** By the number of edges to the right of it. */
export function isInside([x, y]: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  polygon.forEach(([bx, by], i) => {
    const [ax, ay] = polygon[(i + polygon.length - 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

const side = ([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
const cross = (p: Point, q: Point, r: Point, s: Point): boolean => side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0;

function toStretch([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [ux, uy] = [bx - ax, by - ay], square = ux * ux + uy * uy, t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / square)) : 0;
  return Math.hypot(x - ax - t * ux, y - ay - t * uy);
}
