import { moved, type Path } from '../../geometry/path.ts';
import { add } from '../../geometry/point.ts';
import type { FlatPart } from '../flatPart.ts';
import type { Placing } from './nest.ts';
import { turnedBy, turnedPath } from '../../geometry/turned.ts';

/** A part where it lies on its sheet, with its holes, marks and lettering. */
export function laidPart({ name, outline, holes, marks, letters }: FlatPart, { turn, at }: Placing): FlatPart {
  const laid = (path: Path): Path => moved(turnedPath(path, turn), at), point = turnedBy(turn);
  return {
    name, outline: laid(outline), holes: holes.map(laid), marks: marks.map(({ of, path }) => ({ of, path: laid(path) })),
    letters: letters.map((line) => ({ ...line, at: add(point(line.at), at), turn: (line.turn ?? 0) + turn })),
  };
}
