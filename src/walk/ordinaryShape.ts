import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Shoe } from '../pair/shoe.ts';
import { laid, type Place } from './frame.ts';

/** The side of a sole that bends at the ball, at rest: heel and waist, and the forepart; both from the ball's lower corner, heights above the floor. */
export interface OrdinaryShape { readonly ball: Point; readonly rear: readonly Point[]; readonly fore: readonly Point[] }

/** As high under heel and ball as the shoe it is compared with, flat below. @param along from the back to the ball to the tip, along the walking line */
export function ordinaryShape({ stands: { seat, ball }, last: { insole, seatLength } }: Shoe, [back, at, tip]: readonly [Mm, Mm, Mm]): OrdinaryShape {
  const high = seat - insole, low = ball - insole, foot: Point = [at, 0];
  return {
    ball: foot, rear: [foot, [at, low], [back + seatLength, high], [back, high], [back, 0]],
    fore: [foot, [tip, 0], [tip, low * 0.7], [tip - 6, low], [at, low]],
  };
}

/** Where its forepart comes to lie: toes up it goes with the rest, heel up it stays level under the ball. */
export function forePlace({ ball }: Pick<OrdinaryShape, 'ball'>, place: Place): Place {
  if (place.turn <= 0) return place;
  const [x, z] = laid(place, ball);
  return { turn: 0, x: x - ball[0], z: z - ball[1] };
}

/** Where its two parts come to lie. */
export function laidOrdinary(shape: OrdinaryShape, place: Place): { readonly rear: readonly Point[]; readonly fore: readonly Point[] } {
  const front = forePlace(shape, place);
  return { rear: shape.rear.map((point) => laid(place, point)), fore: shape.fore.map((point) => laid(front, point)) };
}
