import { endsOf } from '../geometry/clip.ts';
import { fitArcs, lengthOf, moved, pointOn, reversed, type Path, type PathLine, type PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { OUTLINE_GAP, SAME_POINT } from '../geometry/tolerances.ts';
import type { Mm } from '../geometry/units.ts';
import { facePath } from '../profile/facePath.ts';
import type { GroundFace } from '../profile/groundFace.ts';
import { rollX } from '../profile/rollLine.ts';
import { foamFace, sweptSurface, type SoleShape } from '../solid/soleShape.ts';
import { meetSurface, wallLine, type WallLine } from '../solid/wall.ts';

/**
 * A sole from the side, [way along the walking line, height above the ground], mm: what lies on the long axis, run out to
 * the rearmost and the foremost place of the edge. Seen square to the walking line, so the arcs are true circles and
 * heights are true; where the crest is turned, lengths along the long axis stand shortened by the cosine of the turn.
 * All paths run heel to toe, `back` and `tip` upwards.
 */
export interface SideProfile {
  readonly upper: Path;
  /** Underside of the stiffener; none where there is no stiffener. */
  readonly stiffener: Path | undefined;
  readonly foam: Path;
  readonly ground: Path;
  readonly back: PathLine;
  readonly tip: PathLine;
  /** Way along the walking line of a place on the long axis. */
  readonly along: (x: Mm) => Mm;
  /** The places of the edge where the profile ends, on the long axis. */
  readonly from: Mm;
  readonly to: Mm;
}

export function sideProfile(shape: SoleShape): SideProfile {
  const known = drawnOf.get(shape) ?? drawProfile(shape);
  drawnOf.set(shape, known);
  return known;
}

/** The scale of a drawing, its picture and its pins all ask for the profile of the same sole. */
const drawnOf = new WeakMap<SoleShape, SideProfile>();

function drawProfile(shape: SoleShape): SideProfile {
  const { last, line, face } = shape, along = (x: Mm): Mm => rollX(line, [x, 0]);
  const { rear, fore } = endsOf(shape.edge), back = endWall(shape, rear), tip = endWall(shape, fore), from = back.top[0], to = tip.top[0];
  const cutBy = (lower: GroundFace, end: WallLine): Point => { const [x, , z] = meetSurface(end, sweptSurface(lower, line)); return [along(x), z]; };
  const rolled = (lower: GroundFace): Path => facePath(lower, cutBy(lower, back)[0], cutBy(lower, tip)[0]);
  const breaks = [from, ...[last.seatLength, last.tread, last.length].filter((x) => x > from + SAME_POINT && x < to - SAME_POINT), to];
  const upper = fitArcs((x) => [along(x), shape.upper(x, 0) + shape.build], breaks, OUTLINE_GAP).filter(isDrawn), ground = rolled(face);
  const wall = (foot: Point, head: Point): PathLine => ({ kind: 'line', from: foot, to: head });
  return {
    upper, ground, foam: rolled(foamFace(shape)), stiffener: shape.stiffener > 0 ? moved(upper, [0, -shape.stiffener]) : undefined, along, from, to,
    back: wall(pointOn(ground[0]!, 0), pointOn(upper[0]!, 0)), tip: wall(pointOn(ground.at(-1)!, 1), pointOn(upper.at(-1)!, 1)),
  };
}

/** The outline of the sole from the side as one closed chain, counter-clockwise from the back's foot. */
export function sideOutline({ ground, tip, upper, back }: SideProfile): Path {
  return [...ground, tip, ...reversed(upper), { kind: 'line', from: back.to, to: back.from }];
}

/** Drawing programs refuse pieces without length. */
export const isDrawn = (piece: PathPiece): boolean => lengthOf(piece) >= SAME_POINT;

/** The wall at an end of the sole, set on the long axis. */
function endWall(shape: SoleShape, w: number): WallLine {
  const { upper, build } = shape, { top: [x], outward, run } = wallLine(shape, w);
  return { top: [x, 0, upper(x, 0) + build], outward: [Math.sign(outward[0]), 0], run };
}
