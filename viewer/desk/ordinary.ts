import type { Mm } from '../../src/geometry/units.ts';
import { raiseShape } from '../../src/pair/raise.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { Infeasible, orInfeasible } from '../../src/profile/infeasible.ts';
import { bodiesOf, solidsOf, type Solids } from '../../src/solid/solids.ts';

/** An ordinary sole is this thick from ball to tip, with its walking sole, mm; common practice of the trade, from memory. */
const EVEN: Mm = 8;
/** Of these a thin walking sole, mm. */
const WALKING: Mm = 3;

export interface OrdinarySole {
  readonly solids: Solids;
  /** Floor to the face it is glued to, at the centre of the seat. */
  readonly seatHeight: Mm;
}

/**
 * A plain sole under the outline and the last of a shoe: even thickness to the ball, and the heel that this last's pitch
 * asks for. A left shoe. None where the last leaves no such shape.
 */
export function ordinarySole({ last, order }: Shoe, chordGap: Mm): OrdinarySole | undefined {
  const plain = { ...order, kind: 'match', seatHeightNow: NOTHING, ballHeightNow: NOTHING, outsole: { ...order.outsole, thickness: WALKING } } as const;
  const seatHeight = EVEN + last.pitch, solids = orInfeasible(() => solidsOf(bodiesOf(raiseShape(last, plain, { seat: seatHeight, ball: EVEN }, EVEN)), chordGap));
  return solids instanceof Infeasible ? undefined : { solids, seatHeight };
}

const NOTHING = { value: 0, origin: 'default', rule: 'stands on the floor' } as const;
