import { cross, subtract, unit } from '../geometry/point.ts';
import { clamp } from '../geometry/solve.ts';
import { atan2 } from '../geometry/trig.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { anglesCovered, contactAt, stretchAt, type RollBody } from './rollBody.ts';

/** Roll angles at which the shoe stands on its mid arc, the standing flat with it. */
export interface Turns { readonly from: Rad; readonly to: Rad }

export function midTurns({ rocker: { heelArc, apex } }: RockerShoe, body: RollBody): Turns {
  const { from, to } = anglesCovered(body);
  return { from: clamp(heelArc?.to ?? from, from, to), to: clamp(apex.angle, from, to) };
}

/** Where the turning comes from, strike to toe-off; the three add up to it. */
export interface Turning { readonly heel: Rad; readonly mid: Rad; readonly toe: Rad }

export function turningOf(body: RollBody, mid: Turns): Turning {
  const { from, to } = anglesCovered(body);
  return { heel: mid.from - from, mid: mid.to - mid.from, toe: to - mid.to };
}

/** How far the mid arc bulges below the straight line between its ends, exact. */
export function bulgeOf(body: RollBody, { from, to }: Turns): Mm {
  const [rear] = stretchAt(body, from), [, front] = stretchAt(body, to), chord = subtract(front, rear), [along, up] = chord;
  return -cross(unit(chord), subtract(contactAt(body, atan2(up, along)), rear));
}
