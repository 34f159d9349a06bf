import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { rollX } from '../profile/rollLine.ts';
import { floorAt, placedAt, type RollBody } from './rollBody.ts';

/**
 * What the stiff shoe carries with it, [along the walking line, height] at rest: ankle pivot, hip (the leg held to the shoe)
 * and the place on the insole where the ball of the foot stands.
 */
export interface Carried { readonly pivot: Point; readonly hip: Point; readonly ball: Point }

export const carriedBy = ({ rocker: { pivot, hip, line }, last, stands }: Pick<RockerShoe, 'rocker' | 'last' | 'stands'>): Carried =>
  ({ pivot, hip, ball: [rollX(line, [last.tread, 0]), stands.ball] });

/**
 * Lever of the floor's upright push about a point of the shoe: how far ahead of it the contact lies, behind is negative.
 * It is also the rate at which the point rises with the roll, mm for each radian.
 * @throws RangeError
 */
export const leverAbout = (body: RollBody, point: Point, roll: Rad): Mm => floorAt(body, roll) - placedAt(body, point, roll)[0];
