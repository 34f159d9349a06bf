import { lowestBetween, rootBetween } from '../geometry/solve.ts';
import type { Mm } from '../geometry/units.ts';
import { heightAt, type GroundFace } from '../profile/groundFace.ts';
import { Infeasible } from '../profile/infeasible.ts';
import { rollX } from '../profile/rollLine.ts';
import { sweptSurface, type SoleShape } from './soleShape.ts';
import { meetSurface, wallLine, wallPoint } from './wall.ts';

/** Where the walls meet a rolled face: one closed line, told by places along the edge line above it. */
export interface GroundRim {
  /** Places of the rearmost and the foremost point along the walking line, and how far along it they lie. */
  readonly heel: number;
  readonly toe: number;
  readonly start: Mm;
  readonly end: Mm;
  readonly inner: Flank;
  readonly outer: Flank;
  readonly shape: SoleShape;
  readonly face: GroundFace;
}

/** One side of the line, heel to toe: places along the edge line with their rising way along the walking line. */
interface Flank { readonly places: readonly number[]; readonly along: readonly Mm[] }

/** Places looked at all round, about 4 mm apart on a common sole. */
const ROUND = 192;

/** @throws Infeasible when the face does not reach under the whole edge, or the walls would cross above it */
export function groundRim(shape: SoleShape, face: GroundFace): GroundRim {
  const surface = sweptSurface(face, shape.line), turns = shape.edge.length, step = turns / ROUND;
  const alongAt = (w: number): Mm => {
    const [x, y] = meetSurface(wallLine(shape, w), surface);
    return rollX(shape.line, [x, y]);
  };
  const table = Array.from({ length: ROUND }, (_, i) => alongAt(i * step));
  if (table.some((along) => !Number.isFinite(along))) {
    throw new Infeasible('TOE_ARC_TOO_SHORT', 'the toe arc stands upright before it has passed under the whole edge', ['toe.radius', 'toe.toeSpring', 'toe.toeOff', 'apexX']);
  }
  const rearmost = table.indexOf(Math.min(...table)), foremost = table.indexOf(Math.max(...table));
  const heel = lowestBetween(alongAt, (rearmost - 1) * step, (rearmost + 1) * step, 1e-9);
  const toeNear = lowestBetween((w) => -alongAt(w), (foremost - 1) * step, (foremost + 1) * step, 1e-9);
  const toe = toeNear < heel ? toeNear + turns : toeNear;
  const start = alongAt(heel), end = alongAt(toe);
  const between = (from: number, to: number): Flank => {
    const places: number[] = [];
    for (let i = Math.floor(from / step) + 1; i * step < to - 1e-6; i++) if (i * step > from + 1e-6) places.push(i);
    return { places: [from, ...places.map((i) => i * step), to], along: [alongAt(from), ...places.map((i) => table[((i % ROUND) + ROUND) % ROUND]!), alongAt(to)] };
  };
  const back = between(toe, heel + turns);
  const rim: GroundRim = { shape, face, heel, toe, start, end, inner: between(heel, toe), outer: { places: [...back.places].reverse(), along: [...back.along].reverse() } };
  requireOneLine(rim);
  return rim;
}

function requireOneLine({ inner, outer, shape: { taper } }: GroundRim): void {
  const goesBack = ({ along }: Flank): boolean => along.some((x, i) => i > 0 && x < along[i - 1]! - 1e-9);
  if (!goesBack(inner) && !goesBack(outer)) return;
  if (Object.values(taper).every((lean) => lean === 0))
    throw new Infeasible('OUTLINE_FOLDS', 'the outline of the last folds over itself: its ball, its widths and its inflare do not go together', []);
  throw new Infeasible('WALLS_MEET', 'the walls lean so far that the ground line crosses itself', ['taper']);
}

/**
 * The place along the edge line whose wall meets the face at a way along the walking line, on one side. The face has one
 * height there, so each wall line need only be followed down to that height.
 */
export function placeOn({ shape, face, ...rim }: GroundRim, side: 'inner' | 'outer', wanted: Mm): number {
  const { places, along } = rim[side], height = heightAt(face, wanted);
  let low = 0, high = along.length - 1;
  while (high - low > 1) { const middle = (low + high) >> 1; if (along[middle]! <= wanted) low = middle; else high = middle; }
  const missed = (w: number): Mm => {
    const wall = wallLine(shape, w), [x, y] = wallPoint(wall, wall.top[2] - height);
    return rollX(shape.line, [x, y]) - wanted;
  };
  return rootBetween(missed, places[low]!, places[high]!, 1e-10);
}
