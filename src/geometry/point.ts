import type { Mm, Rad } from './units.ts';
import { cos, sin } from './trig.ts';

/**
 * A point of a plane, mm. In the side view [x, z]: x forward from the rearmost point of the last's bottom,
 * z up from the ground. In plan [x, y]: y to the wearer's left.
 */
export type Point = readonly [Mm, Mm];

/** A point in space, mm: x forward, y to the wearer's left, z up from the ground. */
export type Point3 = readonly [Mm, Mm, Mm];

export const add = ([ax, ay]: Point, [bx, by]: Point): Point => [ax + bx, ay + by];
export const subtract = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by];
export const scale = ([x, y]: Point, k: number): Point => [x * k, y * k];
export const dot = ([ax, ay]: Point, [bx, by]: Point): number => ax * bx + ay * by;
/** Positive when b lies to the left of a. */
export const cross = ([ax, ay]: Point, [bx, by]: Point): number => ax * by - ay * bx;
export const distance = ([ax, ay]: Point, [bx, by]: Point): Mm => Math.hypot(ax - bx, ay - by);
export const along = (angle: Rad): Point => [cos(angle), sin(angle)];
/** Quarter turn to the left. */
export const turnLeft = ([x, y]: Point): Point => [-y, x];
/** @throws RangeError for a vector without a direction */
export function unit([x, y]: Point): Point {
  const size = Math.hypot(x, y);
  if (!(size > 0)) throw new RangeError(`a direction must have a length greater than 0, got ${size}`);
  return [x / size, y / size];
}
/** The point a fraction t of the way from a to b. */
export const between = ([ax, ay]: Point, [bx, by]: Point, t: number): Point => [ax + (bx - ax) * t, ay + (by - ay) * t];
