import { heightAt, type GroundFace } from '../../src/profile/groundFace.ts';
import type { Point } from '../../src/geometry/point.ts';

/**
 * Slow judge: the outline as a row of points, turned about the origin by a roll angle (toe down positive) until its
 * lowest point rests on the ground. It knows nothing of arcs.
 */
export function heightWhenRolled(outline: readonly Point[], [px, pz]: Point, roll: number): number {
  const up = (x: number, z: number): number => z * Math.cos(roll) - x * Math.sin(roll);
  let lowest = Infinity;
  for (const [x, z] of outline) lowest = Math.min(lowest, up(x, z));
  return up(px, pz) - lowest;
}

/** Where the rolled outline touches the ground: the x of its lowest point before rolling. */
export function contactWhenRolled(outline: readonly Point[], roll: number): number {
  let lowest = Infinity, at = NaN;
  for (const [x, z] of outline) {
    const up = z * Math.cos(roll) - x * Math.sin(roll);
    if (up < lowest) { lowest = up; at = x; }
  }
  return at;
}

export const sampled = (face: GroundFace, from: number, to: number, steps = 60_000): Point[] =>
  Array.from({ length: steps + 1 }, (_, i): Point => { const x = from + ((to - from) * i) / steps; return [x, heightAt(face, x)]; });
