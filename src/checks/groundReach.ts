import { lowestBetween } from '../geometry/solve.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { SoleParts } from '../pair/shoe.ts';
import { angleAt } from '../profile/groundFace.ts';
import { groundPoint } from '../solid/groundLine.ts';

/** What the ground line (where the walls meet the ground face) lets a shoe do. */
export interface GroundReach {
  /** Its ends along the walking line, and the roll angles at which they are on the ground. */
  readonly back: Mm;
  readonly front: Mm;
  readonly backAngle: Rad;
  readonly frontAngle: Rad;
  /** The lesser half width about the long axis, at its widest under the seat. */
  readonly halfBase: Mm;
}

export function groundReachOf({ shape, bodies: { whole: { rim } } }: SoleParts): GroundReach {
  const at = groundPoint(shape);
  const widest = (places: readonly number[], sign: 1 | -1): Mm => {
    const inward = (w: number): Mm => { const [x, y] = at(w); return x <= shape.last.seatLength ? -sign * y : 0; };
    const values = places.map(inward), best = values.indexOf(Math.min(...values));
    const from = places[Math.max(best - 1, 0)]!, to = places[Math.min(best + 1, places.length - 1)]!;
    return -Math.min(values[best]!, inward(lowestBetween(inward, Math.min(from, to), Math.max(from, to), 1e-6)));
  };
  return {
    back: rim.start, front: rim.end, backAngle: angleAt(shape.face, rim.start), frontAngle: angleAt(shape.face, rim.end),
    halfBase: Math.min(widest(rim.inner.places, -1), widest(rim.outer.places, 1)),
  };
}
