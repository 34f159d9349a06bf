import { mirroredPath, type Path } from '../../geometry/path.ts';
import { turnedPath } from '../../geometry/turned.ts';
import { degrees } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { wide } from './letters.ts';

/** A part as it is drawn for its other face: left and right change places, up stays up, lettering stays readable. */
export function turnedOver({ name, outline, holes, marks, letters }: FlatPart): FlatPart {
  const over = (path: Path): Path => turnedPath(mirroredPath(path), degrees(180));
  return {
    name, outline: over(outline), holes: holes.map(over), marks: marks.map(({ of, path }) => ({ of, path: over(path) })),
    letters: letters.map((line) => ({ ...line, at: [-line.at[0] - wide(line.text, line.size), line.at[1]] })),
  };
}
