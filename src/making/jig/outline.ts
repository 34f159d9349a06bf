import type { Path, PathPiece } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';

/** Straight lines from point to point. */
export const straights = (points: readonly Point[]): PathPiece[] => points.slice(1).map((to, i) => ({ kind: 'line', from: points[i]!, to }));

/** A closed outline of straight lines. */
export const closed = (points: readonly Point[]): Path => straights([...points, points[0]!]);

/** The corners of a slot cut into a lower edge, on the way to the right; `head` is the height of its closed end. */
export const slotFromBelow = (middle: Mm, width: Mm, foot: Mm, head: Mm): Point[] =>
  [[middle - width / 2, foot], [middle - width / 2, head], [middle + width / 2, head], [middle + width / 2, foot]];

/** The corners of a slot cut into an upper edge, on the way to the left. */
export const slotFromAbove = (middle: Mm, width: Mm, top: Mm, end: Mm): Point[] =>
  [[middle + width / 2, top], [middle + width / 2, end], [middle - width / 2, end], [middle - width / 2, top]];
