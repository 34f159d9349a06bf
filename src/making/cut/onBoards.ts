import type { BoardOrder } from '../../fitting/making.ts';
import { degrees, type Mm } from '../../geometry/units.ts';
import { boxOfPath } from './box.ts';
import type { FlatPart } from '../flatPart.ts';
import { nest } from '../nest/nest.ts';
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

/** Nesting keeps up to this much more room than it is asked for. */
const ROOMY: Mm = 0.5;

/** The board as ordered, or the smallest in whole mm that takes every part, long side along long side. */
export function boardFor(parts: readonly FlatPart[], { length, width, apart, kerf }: BoardOrder): { readonly length: Mm; readonly width: Mm } {
  const sizes = parts.map(({ outline }) => { const { least, most } = boxOfPath(outline), size = [most[0] - least[0], most[1] - least[1]] as const; return { long: Math.max(...size), wide: Math.min(...size) }; });
  const room = 2 * (Math.max(apart, kerf) + ROOMY), long = Math.max(length, width), wide = Math.min(length, width);
  const needed = { long: Math.max(...sizes.map((size) => size.long)) + room, wide: Math.max(...sizes.map((size) => size.wide)) + room };
  const grown = { long: needed.long > long ? Math.ceil(needed.long) : long, wide: needed.wide > wide ? Math.ceil(needed.wide) : wide };
  return length >= width ? { length: grown.long, width: grown.wide } : { length: grown.wide, width: grown.long };
}
