import { smoothStep } from '../../src/geometry/solve.ts';
import { cos, sin, tan } from '../../src/geometry/trig.ts';
import type { Mesh } from '../../src/geometry/mesh.ts';
import type { Point, Point3 } from '../../src/geometry/point.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';

/** A left foot as it was drawn, standing flat on the floor: x from its heel, y to the outer side, z up, mm. */
export interface DrawnFoot {
  readonly length: Mm;
  readonly breadth: Mm;
  /** The ankle joint. */
  readonly ankle: Point;
  readonly ballInner: Mm;
  readonly positions: readonly number[];
  readonly triangles: readonly number[];
}

/**
 * The drawn foot as long as the client's, with ankle and ball where theirs are, as broad as the bottom of the last at the
 * ball, standing in the shoe: at the ankle tilted as the pitch has it, so that its joint is the pivot of the profile; below,
 * it lies on the insole all along. A left foot, ground at 0. It shows how a foot stands there; it is not the client's. Pure.
 */
export function standingFoot(drawn: DrawnFoot, { fitting, last, rocker: { stance: { tilt }, upper, build } }: RockerShoe): Mesh {
  // A rocker is only made for a foot that was measured.
  const { length, pivotForward, pivotHeight, ballInner } = fitting.foot!, { heelBack, pitch, seatLength, insole, tread } = last;
  const alongOf = stretching([[0, 0], [drawn.ankle[0], pivotForward.value], [drawn.ballInner, ballInner.value], [drawn.length, length.value]]);
  const wider = last.ballWidth / drawn.breadth, higher = pivotHeight.value / drawn.ankle[1], middle = middleOf(drawn);
  const back: Mm = pitch + (seatLength / 2) * tan(tilt);
  const stand = ([x, y, z]: Point3): Point3 => {
    const along = alongOf(x), over = insole + z * higher;
    const forward = along * cos(tilt) - heelBack + over * sin(tilt), tilted = back - along * sin(tilt) + over * cos(tilt);
    const sole = upper(along - heelBack, 0) + over;
    const asTilted = smoothStep((z * higher) / pivotHeight.value) * (1 - smoothStep((along - pivotForward.value) / (tread + heelBack - pivotForward.value)));
    // Ahead of the ball the foot lies level or goes up with the toe spring, so nothing of it is tilted forward there.
    return [along - heelBack + (forward - along + heelBack) * asTilted, (y - middle) * wider, build + sole + (tilted - sole) * asTilted];
  };
  const positions = Float64Array.from(triples(drawn.positions).flatMap(stand));
  return { positions, triangles: Uint32Array.from(drawn.triangles) };
}

const triples = (list: readonly number[]): Point3[] => Array.from({ length: list.length / 3 }, (_, i): Point3 => [list[3 * i]!, list[3 * i + 1]!, list[3 * i + 2]!]);

/** Half way between the inner and the outer side at the ball, y. */
function middleOf({ positions, ballInner }: DrawnFoot): Mm {
  const across = triples(positions).filter(([x, , z]) => Math.abs(x - ballInner) < 10 && z < 30).map(([, y]) => y);
  return (Math.min(...across) + Math.max(...across)) / 2;
}

/** Straight from place to place, and on beyond the last ones. */
function stretching(places: readonly Point[]): (x: Mm) => Mm {
  return (x) => {
    const next = Math.min(places.length - 1, Math.max(1, places.findIndex(([from]) => from > x) >>> 0)), [x0, to0] = places[next - 1]!, [x1, to1] = places[next]!;
    return to0 + ((x - x0) / (x1 - x0)) * (to1 - to0);
  };
}
