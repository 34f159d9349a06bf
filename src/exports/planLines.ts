import { crossings } from '../geometry/crossings.ts';
import { mirroredPath, type Path, type PathLine } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Side } from '../fitting/words.ts';
import type { Shoe } from '../pair/shoe.ts';
import { rollX } from '../profile/rollLine.ts';
import { groundLine } from '../solid/groundLine.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { isDrawn } from './sideProfile.ts';

/** What is drawn of a sole seen from above, on its own side (a right one mirrored), [x forward, y to the wearer's left], mm. */
export interface PlanLines {
  /** Where the upper turns into the bottom. */
  readonly feather: Path;
  /** The edge of the sole at its top. */
  readonly edge: Path;
  /** Where the walls end below. */
  readonly ground: Path;
  /** The line over which a rocker rolls, edge to edge. */
  readonly crest: PathLine | undefined;
  /** From the inner to the outer toe joint, on the feather line. */
  readonly ball: PathLine;
  readonly centre: PathLine;
}

export function planLines({ kind, side, last }: Shoe, shape: SoleShape): PlanLines {
  const { feather, edge, line } = shape, turn = (path: Path): Path => onSide(side, path.filter(isDrawn));
  const straight = (from: Point, to: Point): PathLine => onSide(side, [{ kind: 'line', from, to }])[0] as PathLine;
  const crest = (): PathLine => { const [a, b] = crossings(edge, (point) => rollX(line, point) - line.apexX); return straight(a!, b!); };
  return {
    feather: turn(feather), edge: turn(edge), ground: turn(groundLine(shape)),
    crest: kind === 'rocker' ? crest() : undefined,
    ball: straight(across(feather, last.innerBall, -1), across(feather, last.outerBall, 1)),
    centre: straight([0, 0], [last.length, 0]),
  };
}

export const onSide = (side: Side, path: Path): Path => side === 'left' ? path : mirroredPath(path);

/** Where a closed path crosses a place x, on the inner (-1) or the outer side. */
const across = (path: Path, x: Mm, sign: 1 | -1): Point => crossings(path, ([px]) => px - x).find(([, y]) => y * sign > 0)!;
