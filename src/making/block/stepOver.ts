import { laidWay, type Lie } from './lie.ts';
import type { Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Tool } from '../../fitting/making.ts';
import type { Surface } from '../../solid/soleShape.ts';

/** How steep a face is at most along and across the passes, mm a mm. */
export interface Steepness { readonly along: number; readonly across: number }

/**
 * Step between two passes of a ball that leaves ridges of a height on a level face; measured along the face.
 * Source: plain geometry, two circles of the radius side by side: height r - √(r² - (step / 2)²).
 */
export const ballStep = (diameter: Mm, scallop: Mm): Mm => 2 * Math.sqrt(Math.max(0, scallop * (diameter - scallop)));
export const ballScallop = (diameter: Mm, step: Mm): Mm => diameter / 2 - Math.sqrt(Math.max(0, (diameter * diameter - step * step) / 4));

/** Passes lie no further apart than this share of the cutter, however flat the face is. */
const WIDEST = 0.5;

/**
 * Step-over in plan for passes that run along the block. A ball leaves the same ridges however steep the passes climb; a
 * slope across them draws the passes apart. A flat end that climbs touches with its round edge, which leaves ridges, and
 * leaves a stair on a slope across.
 */
export function stepOver({ diameter, end }: Tool, scallop: Mm, { along, across }: Steepness): Mm {
  const widest = WIDEST * diameter;
  if (end === 'ball') return Math.min(widest, ballStep(diameter, Math.min(scallop, diameter / 2)) / Math.hypot(1, across));
  const ridge = along > 0 ? ballStep(diameter, Math.min(scallop / along, diameter / 2)) : widest, stair = across > 0 ? scallop / across : widest;
  return Math.min(widest, ridge, stair);
}

/** A face is looked at on a grid of about 6 mm. */
const LOOK: Mm = 6, NUDGE: Mm = 0.01;

/** Steepest places of a face inside the walls, along and across the block. @param edge corners along the edge, in order round */
export function steepnessOf(face: Surface, edge: readonly Point3[], lie: Lie): Steepness {
  const half = edge.length / 2;
  let [steepAlong, steepAcross] = [0, 0];
  for (let i = 0; i < half; i++) {
    const a = edge[i]!, b = edge[(edge.length - i) % edge.length]!, steps = Math.max(1, Math.round(Math.hypot(a[0] - b[0], a[1] - b[1]) / LOOK));
    for (let k = 0; k <= steps; k++) {
      const x = a[0] + ((b[0] - a[0]) * k) / steps, y = a[1] + ((b[1] - a[1]) * k) / steps;
      const slope = [(face(x + NUDGE, y) - face(x - NUDGE, y)) / (2 * NUDGE), (face(x, y + NUDGE) - face(x, y - NUDGE)) / (2 * NUDGE)] as const, [along, across] = laidWay(lie, slope);
      if (Math.abs(along) > steepAlong) steepAlong = Math.abs(along);
      if (Math.abs(across) > steepAcross) steepAcross = Math.abs(across);
    }
  }
  return { along: steepAlong, across: steepAcross };
}
