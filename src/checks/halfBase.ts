import { lowestBetween } from '../geometry/solve.ts';
import type { Mm } from '../geometry/units.ts';
import type { SoleParts } from '../pair/shoe.ts';
import { groundPoint } from '../solid/groundLine.ts';

/** The lesser half width of the ground line about the long axis, at its widest under the seat. */
export function halfBaseOf({ shape, bodies: { whole: { rim } } }: SoleParts): Mm {
  const at = groundPoint(shape);
  const widest = (places: readonly number[], sign: 1 | -1): Mm => {
    const inward = (w: number): Mm => { const [x, y] = at(w); return x <= shape.last.seatLength ? -sign * y : 0; };
    const values = places.map(inward), best = values.indexOf(Math.min(...values));
    const from = places[Math.max(best - 1, 0)]!, to = places[Math.min(best + 1, places.length - 1)]!;
    return -Math.min(values[best]!, inward(lowestBetween(inward, Math.min(from, to), Math.max(from, to), 1e-6)));
  };
  return Math.min(widest(rim.inner.places, -1), widest(rim.outer.places, 1));
}
