import { fitArcs, type Path } from '../geometry/path.ts';
import type { Point, Point3 } from '../geometry/point.ts';
import { OUTLINE_GAP } from '../geometry/tolerances.ts';
import { sweptSurface, type SoleShape } from './soleShape.ts';
import { meetSurface, wallLine } from './wall.ts';

/** The lower edge of the walls: the point of the ground face under each place along the edge line, LEFT shoe. */
export function groundPoint(shape: SoleShape): (w: number) => Point3 {
  const surface = sweptSurface(shape.face, shape.line);
  return (w) => meetSurface(wallLine(shape, w), surface);
}

/** A closed line that goes with the edge line as tangent arcs: it may bend differently wherever the edge does. */
export const arcsRound = (shape: SoleShape, curve: (w: number) => Point): Path =>
  fitArcs(curve, Array.from({ length: shape.edge.length + 1 }, (_, w) => w), OUTLINE_GAP);

/** The ground line in plan. Under upright walls it is the edge line itself, exactly. */
export function groundLine(shape: SoleShape): Path {
  if (Object.values(shape.taper).every((lean) => lean === 0)) return shape.edge;
  const at = groundPoint(shape);
  return arcsRound(shape, (w) => { const [x, y] = at(w); return [x, y]; });
}
