import type { Mm } from '../../src/geometry/units.ts';
import { raiseShape } from '../../src/pair/raise.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { Infeasible, orInfeasible } from '../../src/profile/infeasible.ts';
import { bodiesOf, solidsOf, type Solids } from '../../src/solid/solids.ts';

/** An ordinary sole is this thick from ball to tip, with its walking sole, mm; common practice of the trade, from memory. */
const EVEN: Mm = 8;
/** Of these a thin walking sole, mm. */
const WALKING: Mm = 3;

/**
 * A plain sole under the outline and the last of a shoe: even thickness to the ball, and the heel that this last's pitch
 * asks for. A left shoe. None where the last leaves no such shape.
 */
export function ordinarySole({ last, order }: Shoe, chordGap: Mm): Solids | undefined {
  const plain = { ...order, kind: 'match', seatHeightNow: NOTHING, ballHeightNow: NOTHING, outsole: { ...order.outsole, thickness: WALKING } } as const;
  const solids = orInfeasible(() => solidsOf(bodiesOf(raiseShape(last, plain, { seat: EVEN + last.pitch, ball: EVEN }, EVEN)), chordGap));
  return solids instanceof Infeasible ? undefined : solids;
}

const NOTHING = { value: 0, origin: 'default', rule: 'stands on the floor' } as const;
