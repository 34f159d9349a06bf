import { mirroredPath, type Path } from '../../geometry/path.ts';
import { degrees, type Mm } from '../../geometry/units.ts';
import { turnedPath } from '../nest/outline.ts';
import type { FlatPart } from '../flatPart.ts';

/** How wide a letter runs at most, as a share of its height. */
const LETTER_WIDTH = 0.9;

/** A part as it is drawn for its other face: left and right change places, up stays up, lettering stays readable. */
export function turnedOver({ name, outline, holes, marks, letters }: FlatPart): FlatPart {
  const over = (path: Path): Path => turnedPath(mirroredPath(path), degrees(180)), width = (text: string, size: Mm): Mm => text.length * size * LETTER_WIDTH;
  return {
    name, outline: over(outline), holes: holes.map(over), marks: marks.map(({ of, path }) => ({ of, path: over(path) })),
    letters: letters.map((line) => ({ ...line, at: [-line.at[0] - width(line.text, line.size), line.at[1]] })),
  };
}
