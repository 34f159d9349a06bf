import { rootBetween } from '../../geometry/solve.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { rollX, rollY, type RollLine } from '../../profile/rollLine.ts';
import { placeOn, type GroundRim } from '../../solid/groundRim.ts';
import { sweptSurface } from '../../solid/soleShape.ts';
import { meetSurface, wallLine, wallPoint } from '../../solid/wall.ts';

/**
 * A sole cut by an upright plane along the walking line, so square to its crest: every such cut shows the same ground face,
 * and only where it begins and ends is its own.
 * @property across place of the plane across the walking line, positive to the outer side
 * @property from where the ground face begins behind and ends ahead, along the walking line
 * @property back place along the edge line of the wall it begins at
 */
export interface Slice { readonly across: Mm; readonly from: Mm; readonly to: Mm; readonly back: number }

/** Places looked at along the sole. */
const LOOKS = 96;

/** Where a wall meets the face at a way along the walking line, told across it. */
function acrossOn(rim: GroundRim, side: 'inner' | 'outer', along: Mm): Mm {
  const { shape, face } = rim, [x, y] = meetSurface(wallLine(shape, placeOn(rim, side, along)), sweptSurface(face, shape.line));
  return rollY(shape.line, [x, y]);
}

/** Across the walking line, the room that all planes share that run over the whole sole from the middle of the seat to the tread. */
export interface Band { readonly inner: Mm; readonly outer: Mm }

export function bandOf(rim: GroundRim): Band {
  const { shape: { last, line } } = rim, from = rollX(line, [last.seatLength / 2, 0]), to = rollX(line, [last.tread, 0]);
  const places = Array.from({ length: LOOKS / 4 + 1 }, (_, i) => from + ((to - from) * i) / (LOOKS / 4));
  return {
    inner: Math.max(...places.map((along) => acrossOn(rim, 'inner', along))),
    outer: Math.min(...places.map((along) => acrossOn(rim, 'outer', along))),
  };
}

/** @throws RangeError for a plane that passes beside the sole, which is a fault of the program */
export function sliceAt(rim: GroundRim, across: Mm): Slice {
  const back = endOn(rim, across, rim.start, rim.end, rim.heel), tip = endOn(rim, across, rim.end, rim.start, rim.toe);
  return { across, from: back.along, to: tip.along, back: back.place };
}

/** Less than a millionth of a millimetre inside the end. */
const NEAR_END = 1e-9;

/** The first place from one end on where the plane comes under the sole. */
function endOn(rim: GroundRim, across: Mm, end: Mm, far: Mm, pole: number): { readonly along: Mm; readonly place: number } {
  const { shape, face } = rim, [x, y] = meetSurface(wallLine(shape, pole), sweptSurface(face, shape.line)), aside = across - rollY(shape.line, [x, y]);
  if (aside === 0) return { along: end, place: pole };
  const side = aside > 0 ? 'outer' : 'inner', missed = (along: Mm): Mm => Math.sign(aside) * (acrossOn(rim, side, along) - across);
  // Wider steps towards the middle: near its ends the outline runs across. The very end has no place on one side of it.
  const at = (i: number): Mm => end + (far - end) * Math.max(NEAR_END, (i / LOOKS) ** 2);
  for (let i = 0; i < LOOKS; i++) {
    if (missed(at(i)) < 0) continue;
    const along = i === 0 ? at(0) : rootBetween(missed, Math.min(at(i - 1), at(i)), Math.max(at(i - 1), at(i)));
    return { along, place: placeOn(rim, side, along) };
  }
  throw new RangeError(`a plane ${across} mm across the walking line passes beside the sole`);
}

/**
 * The wall at the back of a slice: its foot on the ground face and its place so much higher, [along the walking line, height].
 * The wall is followed up at the foot and along the edge back into the plane, which is off by less than 0.01 mm over a few.
 */
export function backWall({ shape, face }: GroundRim, { across, back }: Slice, higher: Mm): readonly [foot: Point, head: Point] {
  const { line } = shape, wall = wallLine(shape, back), [x, y, z] = meetSurface(wall, sweptSurface(face, line)), along = rollX(line, [x, y]);
  const [hx, hy] = wallPoint(wall, wall.top[2] - z - higher), [ox, oy] = wall.outward, edgewise = planTurned([-oy, ox], line);
  const strayed = rollY(line, [hx, hy]) - across;
  return [[along, z], [rollX(line, [hx, hy]) - (strayed * edgewise[0]) / edgewise[1], z + higher]];
}

/** A direction in plan, told along and across the walking line. */
const planTurned = ([dx, dy]: Point, { cosine, sine }: RollLine): Point => [dx * cosine + dy * sine, dy * cosine - dx * sine];
