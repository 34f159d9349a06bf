import type { Design } from '../../checks/design.ts';
import type { BoardOrder, JigOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import { partsOf } from '../../pair/shoe.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import { onBoards, type OnBoards } from '../cut/onBoards.ts';
import { jigOf, type Jig, type JigPart } from './jig.ts';
import { turnedOver } from './turnedOver.ts';

/** A jig by the shoe it is for, still that of a left shoe; its parts on boards are those of its own side. */
export interface ShoeJig { readonly side: Side; readonly shape: SoleShape; readonly order: JigOrder; readonly board: BoardOrder; readonly jig: Jig; readonly boards: OnBoards }

/** A jig for each sole that is made, where the sheet orders them. */
export function jigsFor({ shoes, fitting: { job: { reference, date }, making: { jig: order, board } } }: Design): ShoeJig[] {
  if (!order) return [];
  return shoes.flatMap((shoe) => {
    const { side } = shoe, shape = partsOf(shoe)?.shape, jig = jigOf(shoe, order, board, `${reference} ${side} ${date}`);
    return jig && shape ? [{ side, shape, order, board, jig, boards: onBoards(jig.parts.map((part) => partFor(part, side)), board) }] : [];
  });
}

/** A part of the jig for a shoe's own side: a right one's is the mirror image, which is the other face of the same board. */
export const partFor = ({ part }: JigPart, side: Side): JigPart['part'] => (side === 'right' ? turnedOver(part) : part);
