import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { BoardOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { FlatPart } from '../flatPart.ts';
import { boardFor } from './boardFor.ts';
import { onBoards } from './onBoards.ts';

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
