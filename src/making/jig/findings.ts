import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { over, under } from '../../checks/seen.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { BoardOrder, JigOrder, Tool } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import { partsOf, type Pair, type Shoe } from '../../pair/shoe.ts';
import type { Lot } from '../cut/beyondBoard.ts';
import { USUAL_CUTTER } from '../cut/boardFindings.ts';
import { bushWorks, largestOffset, offsetFor } from './bush.ts';
import { jigFrame, leastApart } from './frame.ts';
import { jigOf } from './jig.ts';
import { routerReach } from './routerReach.ts';

/** What stands in the way of a jig that goes together and cuts the right line. */
export function jigFindings({ fitting: { making: { jig: order, board, tool } }, shoes }: Pair): Finding[] {
  if (!order) return [];
  return [...kerfOfCutter(board), ...boardTooThin(order, board), ...bushTooSmall(order, shoes), ...ribsTooClose(order, board), ...shoes.flatMap((shoe) => ofShoe(shoe, order, board, tool))];
}

function ofShoe(shoe: Shoe, order: JigOrder, board: BoardOrder, tool: Tool | undefined): Finding[] {
  return [...bushTooLarge(shoe, order), ...outsoleLeft(shoe, order), ...cutterTooShort(shoe, order, tool, board)];
}

/** The parts of each jig, as they are laid on boards. */
export const jigLots = ({ fitting: { making: { jig: order, board } }, shoes }: Pair): Lot[] => !order ? [] : shoes.flatMap((shoe) => {
  const jig = jigOf(shoe, order, board, '');
  return jig ? [{ side: shoe.side, what: 'parts of the jig', parts: jig.parts.map(({ part }) => part) }] : [];
});

const common = { unit: 'mm', basis: PRACTICE } as const;

/** A cutter goes both ways through a slot, so it is narrower by a hair at least. */
const PASSES = 0.01;

/** A kerf that slots still take, but that only a stout cutter leaves. */
function kerfOfCutter({ thickness, clearance, kerf }: BoardOrder): Finding[] {
  if (!over(kerf, USUAL_CUTTER) || kerf > thickness + clearance - PASSES) return [];
  return [{
    ...common, code: 'KERF_OF_CUTTER', severity: 'note', measured: kerf, limit: USUAL_CUTTER, where: 'slots of the jig',
    text: `A cut of ${mm(kerf, 2)} is that of a router's cutter, no beam's. Inner corners are relieved with round bites for it; where wood is too narrow for a bite a corner keeps its round: file it square. Take ${mm(USUAL_CUTTER)} or less for small bites (making.board.kerf).`,
  }];
}

/** Thinner rails bend under what runs on them, and have no edge to run on. Common practice of the trade. */
const LEAST_BOARD = { router: 4, other: 3 } as const satisfies Record<string, Mm>;

function boardTooThin({ bush }: JigOrder, { thickness }: BoardOrder): Finding[] {
  const least = bush ? LEAST_BOARD.router : LEAST_BOARD.other;
  if (!under(thickness, least)) return [];
  return [{
    ...common, code: 'JIG_BOARD_THIN', severity: 'warn', measured: thickness, limit: least, where: 'board of the jig',
    text: `Rails of a board of ${mm(thickness)} bend and wear under ${bush ? 'a router that runs on them' : 'what runs on them'}, and the cut follows. Take a board of ${mm(least)} at least (making.board.thickness).`,
  }];
}

function bushTooSmall(order: JigOrder, shoes: readonly Shoe[]): Finding[] {
  const { bush } = order;
  if (!bush || bush.diameter > bush.cutter) return [];
  return [{
    ...common, code: 'BUSH_TOO_SMALL', severity: 'stop', measured: bush.diameter, limit: bush.cutter, where: 'rails of the jig',
    text: `A guide bush of ${mm(bush.diameter)} does not let a cutter of ${mm(bush.cutter)} through. ${swapped(order, bush, shoes)}`,
  }];
}

/** That the two are swapped is offered only where all arcs take it. */
function swapped(order: JigOrder, { diameter, cutter }: NonNullable<JigOrder['bush']>, shoes: readonly Shoe[]): string {
  const bush = { diameter: cutter, cutter: diameter }, works = shoes.every((shoe) => { const shape = partsOf(shoe)?.shape; return !shape || bushWorks(shape, { ...order, bush }); });
  return works ? `If the two are swapped, a bush of ${mm(cutter)} with a cutter of ${mm(diameter)} works: the rails then lie ${mm(offsetFor(bush))} inside (making.jig.bush).` : 'Take a bush wider than its cutter (making.jig.bush.diameter).';
}

function bushTooLarge(shoe: Shoe, order: JigOrder): Finding[] {
  const shape = partsOf(shoe)?.shape, { bush } = order;
  if (!shape || !bush || offsetFor(bush) <= largestOffset(shape, order)) return [];
  const widest = Math.floor((bush.cutter + 2 * largestOffset(shape, order)) * 10) / 10;
  return [{
    ...common, code: 'BUSH_TOO_LARGE', severity: 'stop', side: shoe.side, measured: bush.diameter, limit: widest, where: 'rails of the jig',
    text: `Rails ${mm(offsetFor(bush))} inside the ground face leave nothing of its tightest arc. With this cutter the bush may be ${mm(widest)} at most (making.jig.bush.diameter).`,
  }];
}

/** Rails for the ground face need a cutter that can be set lower than they are, or the outsole comes on top. */
function outsoleLeft(shoe: Shoe, { face, bush }: JigOrder): Finding[] {
  const outsole = partsOf(shoe)?.shape.outsole ?? 0;
  if (!bush || face === 'foam body' || outsole === 0) return [];
  return [{
    ...common, code: 'OUTSOLE_ON_TOP', severity: 'warn', side: shoe.side, measured: outsole, where: 'rails of the jig',
    text: `The rails carry the ground face, and a guide bush cannot be set below them: foam cut along them, with the outsole of ${mm(outsole)} glued on after, stands that much too high. For foam order rails for the foam body (making.jig.face).`,
  }];
}

/** A bush is of use only where its cutter comes to the middle of the shoe; told too where nobody said which cutter it is. */
function cutterTooShort(shoe: Shoe, order: JigOrder, tool: Tool | undefined, board: BoardOrder): Finding[] {
  const { side } = shoe, shape = partsOf(shoe)?.shape;
  if (!shape || !bushWorks(shape, order)) return [];
  const { fromBase, fromBush } = routerReach(jigFrame(shape, order, board), board.thickness);
  if (tool && !over(fromBase, tool.reach)) return [];
  return [{
    ...common, code: 'JIG_REACH', severity: 'warn', side, ...(tool && { measured: tool.reach }), limit: fromBase, where: 'rails of the jig',
    text: `With a guide bush the router lies on its side against the ribs and cuts to the middle from both sides: the cutter must stand out ${mm(fromBase)} from the base, ${mm(fromBush)} beyond the bush, and ${tool ? `the one on the sheet reaches ${mm(tool.reach)}` : 'there is none on the sheet'}. Take one that reaches ${mm(Math.ceil(fromBase - 1e-9), 0)} (making.tool.reach), or leave the bush out (making.jig.bush) and cut with a sled over both rails: its cutter stands upright and need not reach far.`,
  }];
}

function ribsTooClose({ ribsApart }: JigOrder, board: BoardOrder): Finding[] {
  const least = Math.ceil(leastApart(board) * 10 - 1e-6) / 10;
  if (ribsApart >= leastApart(board)) return [];
  return [{
    ...common, code: 'RIBS_TOO_CLOSE', severity: 'warn', measured: ribsApart, limit: least, where: 'ribs of the jig',
    text: `Ribs of a board of ${mm(board.thickness)} cannot stand every ${mm(ribsApart)}; they are set about ${mm(least)} apart (making.jig.ribsApart).`,
  }];
}
