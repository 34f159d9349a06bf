import type { Point } from './point.ts';

/** The corners of the tightest outline round points, counter-clockwise. Source: Andrew's monotone chain (from memory). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = sortedAlong(points);
  return [...chain(sorted).slice(0, -1), ...chain(sorted.reverse()).slice(0, -1)];
}

/** The lower half of that outline, from its rearmost to its foremost corner, of those above each other the lowest: what points rest on when they are rolled. */
export function lowerHullOf(points: readonly Point[]): Point[] {
  const lower = chain(sortedAlong(points)), last = lower.length - 1;
  return last > 0 && lower[last]![0] === lower[last - 1]![0] ? lower.slice(0, last) : lower;
}

const sortedAlong = (points: readonly Point[]): Point[] => [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);

/** Of points in order those that a line turning left all the way goes through, both ends with them. */
function chain(run: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of run) {
    while (kept.length > 1 && turnOf(kept[kept.length - 2]!, kept[kept.length - 1]!, point) <= 0) kept.pop();
    kept.push(point);
  }
  return kept;
}

const turnOf = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number => (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
