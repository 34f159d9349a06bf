import type { Point, Point3 } from '../../geometry/point.ts';
import { rootBetween } from '../../geometry/solve.ts';
import { tableOf } from '../../geometry/table.ts';
import { atan, tan } from '../../geometry/trig.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { upperSurface, type SoleShape } from '../../solid/soleShape.ts';

/**
 * Where a point of the foam lies when every layer is bent to the face above it: how far along that face the foot of its
 * square on the face is, from the back of the last's bottom, its place across, and how deep it lies below it, mm.
 */
export interface BentPlace { readonly along: Mm; readonly y: Mm; readonly depth: Mm }

/**
 * The face the first layer is cemented to, laid flat. It bends along the shoe; its dish across is the same all along, and
 * so slight that laying it flat costs less than the trim.
 */
export interface BentFace {
  readonly placeOf: (point: Point3) => BentPlace;
  /** Length along the face to the place under an x of the plan. */
  readonly along: (x: Mm) => Mm;
  /**
   * Length along a layer whose middle runs at a depth below the face: where the face is hollow towards the foot, as under
   * the ball, a lower layer runs a longer way round.
   */
  readonly flat: (along: Mm, depth: Mm) => Mm;
}

/** Fineness of the table of the face, and how far it reaches beyond both ends of the last. */
const STEP: Mm = 0.5, BEYOND: Mm = 100;

export function bentFace(shape: SoleShape): BentFace {
  const height = upperSurface(shape, shape.stiffener), from = -BEYOND, count = Math.ceil((shape.last.length + 2 * BEYOND) / STEP);
  const xs = Array.from({ length: count + 1 }, (_, i) => from + i * STEP), zs = xs.map((x) => height(x, 0));
  const slopes = xs.map((_, i): Rad => atan((zs[Math.min(count, i + 1)]! - zs[Math.max(0, i - 1)]!) / (STEP * (Math.min(count, i + 1) - Math.max(0, i - 1)))));
  const lengths = lengthsOf(zs), slopeOver = tableOf(xs, slopes), lengthOver = tableOf(xs, lengths), slopeAlong = tableOf(lengths, slopes);
  const zero = lengthOver(0), slopeAtZero = slopeOver(0);
  return {
    placeOf: ([x, y, z]) => {
      const foot = footOf([x, z], (at) => height(at, y), slopeOver), up = height(foot, y) - z;
      return { along: lengthOver(foot) - zero, y, depth: Math.sign(up) * Math.hypot(foot - x, up) };
    },
    along: (x) => lengthOver(x) - zero,
    flat: (along, depth) => along + depth * (slopeAlong(along + zero) - slopeAtZero),
  };
}

function lengthsOf(zs: readonly Mm[]): Mm[] {
  let sum = 0;
  return zs.map((z, i) => { sum += i === 0 ? 0 : Math.hypot(STEP, z - zs[i - 1]!); return sum; });
}

/** The x of the foot of a square from a point on the face: nearest where the face bends no tighter than the point is deep, else straight above. */
function footOf([x, z]: Point, height: (x: Mm) => Mm, slope: (x: Mm) => Rad): Mm {
  const off = (at: Mm): number => at - x + (height(at) - z) * tan(slope(at)), reach = Math.abs(height(x) - z) + 1;
  return off(x - reach) < 0 && off(x + reach) > 0 ? rootBetween(off, x - reach, x + reach, 1e-7) : x;
}
