import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { BoardOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair } from '../../pair/shoe.ts';
import type { FlatPart } from '../flatPart.ts';
import { boardFor } from './boardFor.ts';
import { onBoards } from './onBoards.ts';

/** Slots, of a jig and of the heel block among the gauges of a rocker shoe, are cut to the thickness of the board, and a label is up to 10 % off it. Source: figures makers publish, common practice. */
export function boardNotMeasured({ shoes, fitting: { making: { board, jig, gauges } } }: Pair): Finding[] {
  if (!(jig || (gauges && shoes.some(({ kind }) => kind === 'rocker'))) || board.measured) return [];
  return [{
    code: 'BOARD_NOT_MEASURED', severity: 'warn', measured: board.thickness, unit: 'mm', where: 'board',
    text: `Slots are cut for a board of ${mm(board.thickness)} that nobody measured; boards are up to 10 % off their label, and then nothing goes together. Measure the board and enter it (making.board.thickness).`, basis: PRACTICE,
  }];
}

/** A cutter goes both ways through a slot, so it is narrower by a hair at least. */
const PASSES = 0.01;

/** What slots of board are usually cut with, at most. Common practice of the trade. */
export const USUAL_CUTTER: Mm = 3;

/** A slot that takes no cutter is left out of the line to cut; and parts without slots do not go together. */
export function kerfTooWide({ shoes, fitting: { making: { board: { thickness, clearance, kerf }, jig, gauges } } }: Pair): Finding[] {
  const slot = thickness + clearance, widest = Math.floor((slot - PASSES) * 100 + 1e-6) / 100, heelBlocks = gauges && shoes.some(({ kind }) => kind === 'rocker');
  if ((!jig && !heelBlocks) || kerf <= widest) return [];
  return [{
    code: 'KERF_WIDER_THAN_SLOT', severity: 'stop', measured: kerf, limit: widest, unit: 'mm', where: jig ? 'slots of the jig' : 'slots of the heel block', basis: PRACTICE,
    text: `A cut of ${mm(kerf, 2)} cannot make slots of ${mm(slot, 2)}, so the parts would have none. Take a beam or a cutter of ${mm(Math.min(USUAL_CUTTER, widest), 2)} (making.board.kerf), or a thicker board; ${mm(widest, 2)} just goes through.`,
  }];
}

/** Parts that are laid on boards together. @property what they are, in the plural, like `gauges` or `parts of the jig` */
export interface Lot { readonly side: Side; readonly what: string; readonly parts: readonly FlatPart[] }

/**
 * Lots with parts that the board on the sheet does not take: each is laid on a larger one all the same, and one board is
 * named that takes the parts of every lot, for the sheet has but one.
 */
export function beyondBoard(lots: readonly Lot[], board: BoardOrder): Finding[] {
  const all = boardFor(lots.flatMap(({ parts }) => parts), board);
  return lots.flatMap(({ side, what, parts }): Finding[] => {
    const own = boardFor(parts, board), first = parts.find((part) => isLarger(boardFor([part], board), board));
    if (!first) return [];
    const [measured, limit] = all.length > board.length ? [board.length, all.length] : [board.width, all.width], many = onBoards(parts, { ...board, ...own }).placed.reduce((most, { sheet }) => Math.max(most, sheet + 1), 1), one = many === 1 ? `on one of ${size(own)} instead` : `on ${many} boards of ${size(own)} instead`;
    return [{
      code: 'BEYOND_BOARD', severity: 'warn', side, measured, limit, unit: 'mm', where: what, basis: PRACTICE,
      text: `A board of ${size(board)} with ${mm(board.apart)} kept free all round has no room for this: ${first.name}. All ${what} are laid ${one}${isLarger(all, own) ? `; boards of ${size(all)} take all that is cut for this job` : ''} (making.board.length, making.board.width).`,
    }];
  });
}

type Size = Pick<BoardOrder, 'length' | 'width'>;
const size = ({ length, width }: Size): string => `${mm(length, 0)} by ${mm(width, 0)}`;
const isLarger = (one: Size, other: Size): boolean => one.length > other.length || one.width > other.width;
