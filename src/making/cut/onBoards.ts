import type { BoardOrder } from '../../fitting/making.ts';
import { degrees } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { nest } from '../nest/nest.ts';
import { boardFor } from './boardFor.ts';
import type { Placed } from './placed.ts';

/** Parts on boards. @property board as ordered, or larger where a part has no room on that one */
export interface OnBoards { readonly placed: readonly Placed[]; readonly board: BoardOrder }

const QUARTERS = [0, 90, 180, 270].map(degrees);

/** Lays parts on as few boards as it finds. Between two parts there is room for two cuts, however near they may lie. */
export function onBoards(parts: readonly FlatPart[], ordered: BoardOrder): OnBoards {
  const apart = Math.max(ordered.apart, ordered.kerf), board = { ...ordered, ...boardFor(parts, ordered) };
  const { placed } = nest(parts, board, { apart, turns: QUARTERS });
  return { board, placed: placed.map(({ part, ...where }) => ({ ...where, part: parts[part]! })) };
}
