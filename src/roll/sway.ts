import { distance } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { Carried } from './carried.ts';
import type { Turns } from './midArc.ts';
import { anglesCovered, floorAt, stretchAt, type RollBody } from './rollBody.ts';

/** How far the weight can be carried back and forward from over the contact under the hip, on a level floor, mm. */
export interface Reach { readonly back: Mm; readonly front: Mm }

/**
 * Standing still, the floor pushes up right under the weight, so the contact goes where the weight goes. Room to either side:
 * to the ends of the standing flat, before the shoe begins to roll; of the mid arc; and of the sole.
 */
export interface Sway { readonly flat: Reach; readonly mid: Reach; readonly sole: Reach }

export function swayOf(body: RollBody, { hip: [under] }: Carried, mid: Turns): Sway {
  const sole = anglesCovered(body);
  const reach = (from: Rad, to: Rad): Reach => ({ back: under - endsOnFloor(body, from)[0], front: endsOnFloor(body, to)[1] - under });
  return { flat: reach(0, 0), mid: reach(mid.from, mid.to), sole: reach(sole.from, sole.to) };
}

/** Rear and front end of what touches the floor at a roll angle, forward on the floor. */
function endsOnFloor(body: RollBody, roll: Rad): readonly [Mm, Mm] {
  const middle = floorAt(body, roll), half = distance(...stretchAt(body, roll)) / 2;
  return [middle - half, middle + half];
}
