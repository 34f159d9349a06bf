import { lengthOf, type Path, type PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { SAME_POINT } from '../geometry/tolerances.ts';
import { asin } from '../geometry/trig.ts';
import type { Mm } from '../geometry/units.ts';
import { endOf, startOf, type GroundFace, type GroundPiece } from './groundFace.ts';

/** The ground face between two places along the walking line as arcs and straight pieces, heel to toe, exact; the end pieces run on. */
export function facePath({ pieces }: GroundFace, from: Mm, to: Mm): Path {
  const last = pieces.length - 1;
  return pieces.flatMap((piece, i): Path => {
    const a = i === 0 ? from : Math.max(from, startOf(piece)[0]), b = i === last ? to : Math.min(to, endOf(piece)[0]);
    return a < b ? [between(piece, a, b)].filter((part) => lengthOf(part) >= SAME_POINT) : [];
  });
}

/** Angles of the face are counted from straight down, those of a path from the first axis. */
function between(piece: GroundPiece, a: Mm, b: Mm): PathPiece {
  if (piece.kind === 'straight') {
    const [x0, z0] = piece.from, slope = (piece.to[1] - z0) / (piece.to[0] - x0), at = (x: Mm): Point => [x, z0 + (x - x0) * slope];
    return { kind: 'line', from: at(a), to: at(b) };
  }
  const { centre, radius } = piece, angle = (x: Mm): number => asin((x - centre[0]) / radius);
  return { kind: 'arc', centre, radius, start: angle(a) - Math.PI / 2, sweep: angle(b) - angle(a) };
}
