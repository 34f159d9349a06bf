import type { BoardOrder } from '../../fitting/making.ts';
import { lengthOf } from '../../geometry/path.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { turnBetween } from './kerf.ts';

/** A slot is told by its end to this, after it was turned on its board. */
const SAME: Mm = 1e-6;
/** An inner corner turns to the right, by about a right angle. */
const INNER = -1;

/** Whether a part has a slot that takes the board it is cut from: an edge as long as board and clearance, between two inner corners. */
export function takesBoard({ outline, holes }: FlatPart, { thickness, clearance }: Pick<BoardOrder, 'thickness' | 'clearance'>): boolean {
  return [outline, ...holes].some((edge) => edge.some((piece, i) => piece.kind === 'line' && Math.abs(lengthOf(piece) - thickness - clearance) < SAME
    && turnBetween(edge.at(i - 1)!, piece) < INNER && turnBetween(piece, edge[(i + 1) % edge.length]!) < INNER));
}
