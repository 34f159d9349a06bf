import type { Path } from './path.ts';
import type { Point } from './point.ts';
import { cos, sin } from './trig.ts';
import type { Rad } from './units.ts';

/** A turn in a plane, with the four quarters exact. */
export function turnedBy(turn: Rad): (point: Point) => Point {
  const [c, s] = [cos(turn), sin(turn)].map((value) => (Math.abs(value - Math.round(value)) < 1e-12 ? Math.round(value) : value));
  return ([x, y]) => [x * c! - y * s!, x * s! + y * c!];
}

/** A path turned about the origin, exact. */
export function turnedPath(path: Path, turn: Rad): Path {
  const round = turnedBy(turn);
  return path.map((piece) => piece.kind === 'line' ? { ...piece, from: round(piece.from), to: round(piece.to) }
    : { ...piece, centre: round(piece.centre), start: piece.start + turn });
}
