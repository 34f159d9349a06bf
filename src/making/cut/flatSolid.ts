import type { Mesh } from '../../geometry/mesh.ts';
import { lengthOf, pointOn, type Path, type PathPiece } from '../../geometry/path.ts';
import { cross, distance, dot, subtract, type Point } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';
import { asin } from '../../geometry/trig.ts';
import { extruded } from '../../solid/extruded.ts';
import type { FlatPart } from '../flatPart.ts';

/** A flat part as the solid it is once it is cut, lying on z = 0, closed. @param chordGap largest distance between a facet and an arc, mm */
export const flatSolid = ({ outline, holes }: FlatPart, thickness: Mm, chordGap: Mm): Mesh =>
  extruded([outline, ...holes].map((edge) => pointsAlong(edge, chordGap)), thickness);

/** Points of a closed path from which straight lines stay within a gap of it. */
export function pointsAlong(path: Path, chordGap: Mm): Point[] {
  const points = path.filter((piece) => lengthOf(piece) >= SAME_POINT).flatMap((piece) => {
    const count = stepsOf(piece, chordGap);
    return Array.from({ length: count }, (_, i) => pointOn(piece, i / count));
  });
  const apart = points.filter((point, i) => distance(point, points.at(i - 1)!) >= SAME_POINT);
  return apart.filter((point, i) => turns(apart.at(i - 1)!, point, apart[(i + 1) % apart.length]!));
}

/** A point on a straight line between its neighbours would leave a facet without area. */
const STRAIGHT = 1e-7;
function turns(before: Point, at: Point, after: Point): boolean {
  const arriving = subtract(at, before), leaving = subtract(after, at);
  return Math.abs(cross(arriving, leaving)) > STRAIGHT * distance(at, before) * distance(after, at) || dot(arriving, leaving) < 0;
}

/** The rise of a chord over its arc is r (1 - cos(step / 2)), which is 2 r sin²(step / 4). */
function stepsOf(piece: PathPiece, chordGap: Mm): number {
  if (piece.kind === 'line') return 1;
  const step = 4 * asin(Math.min(1, Math.sqrt(chordGap / (2 * piece.radius))));
  return Math.max(1, Math.ceil(Math.abs(piece.sweep) / step - 1e-9));
}
