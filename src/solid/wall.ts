import { frameAlong } from '../geometry/path.ts';
import { smoothStep, zeroNear } from '../geometry/solve.ts';
import type { Point, Point3 } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { tan } from '../geometry/trig.ts';
import type { Tapers } from '../fitting/fitting.ts';
import type { Last } from '../last/last.ts';
import type { SoleShape, Surface } from './soleShape.ts';

/**
 * One straight line of the side wall: from the edge of the upper face down, leaning in by `run` mm for each mm of depth
 * (out where negative).
 */
export interface WallLine { readonly top: Point3; readonly outward: Point; readonly run: number }

/** Between these shares of the length the heel's lean gives way to the forepart's. */
const HEEL_ENDS = 0.3, FORE_BEGINS = 0.6;

/** Lean of the wall at a place: heel to forepart along the length, inner to outer by where the wall faces. */
function leanAt(taper: Tapers, last: Last, x: Mm, outward: Point): Rad {
  const fore = smoothStep((x / last.length - HEEL_ENDS) / (FORE_BEGINS - HEEL_ENDS)), outer = (1 + outward[1]) / 2;
  const heel = taper.heelInner + (taper.heelOuter - taper.heelInner) * outer;
  const forepart = taper.foreInner + (taper.foreOuter - taper.foreInner) * outer;
  return heel + (forepart - heel) * fore;
}

/** The wall line at a place along the edge line. */
export function wallLine(shape: SoleShape, w: number): WallLine {
  const { at: [x, y], direction: [dx, dy] } = frameAlong(shape.edge, w), outward: Point = [dy, -dx];
  return { top: [x, y, shape.upper(x, y) + shape.build], outward, run: tan(leanAt(shape.taper, shape.last, x, outward)) };
}

export const wallPoint = ({ top: [x, y, z], outward, run }: WallLine, depth: Mm): Point3 =>
  [x - outward[0] * run * depth, y - outward[1] * run * depth, z - depth];

/** Where a wall line meets a surface below it. */
export function meetSurface(wall: WallLine, surface: Surface): Point3 {
  const [x, y, z] = wall.top;
  if (wall.run === 0) return [x, y, surface(x, y)];
  const missed = (depth: Mm): Mm => {
    const [px, py, pz] = wallPoint(wall, depth);
    return pz - surface(px, py);
  };
  const [px, py] = wallPoint(wall, zeroNear(missed, z - surface(x, y)));
  return [px, py, surface(px, py)];
}
