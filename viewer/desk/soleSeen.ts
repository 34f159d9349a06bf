import type { PlanSole } from '../../src/exports/planDrawing.ts';
import { lengthOf, pointOn } from '../../src/geometry/path.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { SoleSeen } from './protocol.ts';

/** Points around the outline lie no farther apart than this. */
const APART: Mm = 2;

/** A sole as a footprint is laid out on it. Pure. */
export const soleSeen = ({ shoe, lines: { feather, ball }, view }: PlanSole): SoleSeen => ({
  side: shoe.side, view, foot: footOn(shoe), ball: [ball.from, ball.to],
  outline: feather.flatMap((piece) => {
    const steps = Math.max(1, Math.ceil(lengthOf(piece) / APART));
    return Array.from({ length: steps }, (_, i) => pointOn(piece, i / steps));
  }),
});

/** How much of a last the foot leaves free at the toes where no foot was measured. Common practice of the trade, from memory. */
const TOE_ROOM: Mm = 12;

function footOn({ fitting: { foot, last } }: Shoe): readonly [Mm, Mm] {
  const heel = -last.heelBack.value;
  return [heel, foot ? heel + foot.length.value : last.length.value - TOE_ROOM];
}
