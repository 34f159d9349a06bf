import { directionOn, isTooTight, parallelPiece, pointOn, type Path, type PathPiece } from '../../geometry/path.ts';
import { add, cross, dot, scale, turnLeft, type Point } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { atan2 } from '../../geometry/trig.ts';
import { fromPath, withoutLoops } from '../setOut.ts';

/**
 * The line the middle of the beam or cutter follows so that a closed edge comes out true: half the kerf away from it, on
 * the side of the waste (to the right: outside an outline, inside a hole), in exact arcs. It runs round outer corners in
 * an arc, so they stay sharp; an inner corner keeps a round of half the kerf. A slot narrower than the kerf is left out.
 * @returns no pieces where the kerf leaves nothing to follow, as in a hole smaller than the cutter
 */
export function cutLine(edge: Path, halfKerf: Mm): Path {
  if (halfKerf === 0) return edge;
  const raw = edge.flatMap((piece, i) => [...roundCorner(edge.at(i - 1)!, piece, halfKerf), parallelPiece(piece, halfKerf)]);
  const line = needsTrimming(edge, halfKerf) ? withoutLoops(raw, edge, halfKerf) : raw;
  return line.every((piece) => fromPath(edge, pointOn(piece, 0.5)) >= halfKerf - SAME_POINT) ? line : [];
}

const needsTrimming = (edge: Path, halfKerf: Mm): boolean =>
  edge.some((piece, i) => isTooTight(piece, halfKerf) || turnBetween(edge.at(i - 1)!, piece) < -STRAIGHT_ON);

/** A bend of less than this is the last digit of two tangent pieces. */
const STRAIGHT_ON: Rad = 1e-7;

/** How far the direction turns to the left from the end of one piece to the start of the next. */
export function turnBetween(before: PathPiece, piece: PathPiece): Rad {
  const arriving = directionOn(before, 1), leaving = directionOn(piece, 0);
  return atan2(cross(arriving, leaving), dot(arriving, leaving));
}

/**
 * What joins the parallels of two pieces at their corner: an arc about an outer corner; at an inner one a way through the
 * corner itself, nearer to the edge than the line may run, which is cut off with the loop it closes.
 */
function roundCorner(before: PathPiece, piece: PathPiece, away: Mm): PathPiece[] {
  const turn = turnBetween(before, piece), corner = pointOn(piece, 0), rightOf = (direction: Point): Point => scale(turnLeft(direction), -1);
  if (Math.abs(turn) <= STRAIGHT_ON) return [];
  const [x, y] = rightOf(directionOn(before, 1));
  if (turn > 0) return [{ kind: 'arc', centre: corner, radius: away, start: atan2(y, x), sweep: turn }];
  return [
    { kind: 'line', from: add(corner, scale([x, y], away)), to: corner },
    { kind: 'line', from: corner, to: add(corner, scale(rightOf(directionOn(piece, 0)), away)) },
  ];
}
