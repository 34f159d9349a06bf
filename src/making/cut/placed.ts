import type { Path, PathPiece } from '../../geometry/path.ts';
import { add, type Point } from '../../geometry/point.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { cos, sin } from '../../geometry/trig.ts';
import type { FlatPart, PartLetters } from '../flatPart.ts';

/** Where a part lies: on which board, counted from 0, turned about its own zero to the left and then moved, mm. */
export interface Placed { readonly part: FlatPart; readonly sheet: number; readonly turn: Rad; readonly at: Point }

/** A part as it lies on its board; its lettering turns with it. */
export interface LaidPart extends Omit<FlatPart, 'letters'> { readonly letters: readonly LaidLetters[] }
export interface LaidLetters extends PartLetters { readonly turn: Rad }

export function laid({ part: { name, outline, holes, marks, letters }, turn, at }: Placed): LaidPart {
  const put = movement(turn, at), on = (path: Path): Path => laidPath(path, turn, at);
  return {
    name, outline: on(outline), holes: holes.map(on), marks: marks.map(({ of, path }) => ({ of, path: on(path) })),
    letters: letters.map((line) => ({ ...line, at: put(line.at), turn })),
  };
}

/** A path turned about zero to the left, then moved. */
export function laidPath(path: Path, turn: Rad, at: Point): Path {
  const put = movement(turn, at);
  return path.map((piece): PathPiece => piece.kind === 'line'
    ? { kind: 'line', from: put(piece.from), to: put(piece.to) }
    : { ...piece, centre: put(piece.centre), start: piece.start + turn });
}

/** Quarter turns are exact: a part laid along the board has edges along the board. */
function movement(turn: Rad, at: Point): (point: Point) => Point {
  const c = whole(cos(turn)), s = whole(sin(turn));
  return ([x, y]) => add([x * c - y * s, x * s + y * c], at);
}

const LAST_DIGITS = 1e-15;
const whole = (value: Mm): Mm => (Math.abs(value - Math.round(value)) < LAST_DIGITS ? Math.round(value) : value);
