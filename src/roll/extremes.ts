import { cross, dot, subtract, type Point } from '../geometry/point.ts';
import { atan2, cos, sin } from '../geometry/trig.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { beginsAt, endsAt, type RollBody, type RollingArc, type RollingCorner } from './rollBody.ts';

/** A value with the roll angle at which it is taken. */
export interface Taken { readonly roll: Rad; readonly value: Mm }

/** Turning about a corner is rolling on an arc without radius. */
type RolledOn = Pick<RollingArc, 'centre' | 'radius' | 'from' | 'to'>;
const asArc = (piece: RollingArc | RollingCorner): RolledOn => (piece.kind === 'arc' ? piece : { ...piece, centre: piece.at, radius: 0 });

const heightOn = ({ centre, radius }: RolledOn, point: Point, roll: Rad): Mm => radius + cross([cos(roll), sin(roll)], subtract(point, centre));
const leverOn = ({ centre }: RolledOn, point: Point, roll: Rad): Mm => -dot([cos(roll), sin(roll)], subtract(point, centre));

/** The stretches of roll between two angles on one piece each. */
function rolledBetween({ pieces }: RollBody, from: Rad, to: Rad): RolledOn[] {
  return pieces.flatMap((piece) => {
    if (piece.kind === 'edge' || endsAt(piece) < from || beginsAt(piece) > to) return [];
    const on = asArc(piece);
    return [{ ...on, from: Math.max(on.from, from), to: Math.min(on.to, to) }];
  });
}

/** Roll angles inside a stretch at which a fixed line through its centre stands so or so, and both its ends. */
const looked = ({ from, to }: RolledOn, level: Rad): Rad[] =>
  [from, ...[-2, -1, 0, 1, 2].map((half) => level + half * Math.PI).filter((roll) => roll > from && roll < to), to];

const extreme = (found: readonly Taken[], sign: 1 | -1): Taken => found.reduce((best, one) => (sign * one.value > sign * best.value ? one : best));

/** Highest or lowest that a point of the shoe gets between two roll angles: at the end of a piece, or right over its centre. Exact. */
export function heightExtreme(body: RollBody, point: Point, [from, to]: readonly [Rad, Rad], sign: 1 | -1): Taken {
  return extreme(rolledBetween(body, from, to).flatMap((on) => {
    const [x, z] = subtract(point, on.centre);
    return looked(on, atan2(-x, z)).map((roll) => ({ roll, value: heightOn(on, point, roll) }));
  }), sign);
}

/** Furthest ahead (1) or behind (-1) of a point that the floor pushes between two roll angles; beside a straight stretch both its ends count. Exact. */
export function leverExtreme(body: RollBody, point: Point, [from, to]: readonly [Rad, Rad], sign: 1 | -1): Taken {
  return extreme(rolledBetween(body, from, to).flatMap((on) => {
    const [x, z] = subtract(point, on.centre);
    return looked(on, atan2(z, x)).map((roll) => ({ roll, value: leverOn(on, point, roll) }));
  }), sign);
}
