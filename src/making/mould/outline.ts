import { between, distance, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';

/** Closed lines of corners in plan, mm. */
export type Outline = readonly Point[];

/** The part of an outline on one side of a line square to an axis: `sign` 1 keeps what lies beyond `at`, -1 what lies before it. */
function clipped(outline: Outline, axis: 0 | 1, at: Mm, sign: 1 | -1): Outline {
  const beyond = (point: Point): Mm => sign * (point[axis] - at);
  return outline.flatMap((to, i) => {
    const from = outline.at(i - 1)!, a = beyond(from), b = beyond(to);
    const crossing = a >= 0 === b >= 0 ? [] : [between(from, to, a / (a - b))];
    return b >= 0 ? [...crossing, to] : crossing;
  });
}

/** The part of an outline between two limits along an axis. */
export const clippedTo = (outline: Outline, axis: 0 | 1, from: Mm, to: Mm): Outline => clipped(clipped(outline, axis, from, 1), axis, to, -1);

/** Where lines run between limits: from before the first plane to beyond the last. */
export const spans = (planes: readonly Mm[]): readonly (readonly [from: Mm, to: Mm])[] =>
  [-Infinity, ...planes].map((from, i) => [from, planes[i] ?? Infinity]);

/** Least distance from a point to an outline. */
export const fromOutline = (outline: Outline, at: Point): Mm => Math.min(...outline.map((to, i) => fromSegment(outline.at(i - 1)!, to, at)));

export function fromSegment(from: Point, to: Point, at: Point): Mm {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]], square = ux * ux + uy * uy;
  const t = square > 0 ? ((at[0] - from[0]) * ux + (at[1] - from[1]) * uy) / square : 0;
  return distance(at, between(from, to, Math.min(1, Math.max(0, t))));
}
