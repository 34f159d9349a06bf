import type { BoardOrder } from '../../fitting/making.ts';
import { windowRound } from '../../geometry/clip.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';

/** Nesting keeps up to this much more room than it is asked for. */
const ROOMY: Mm = 0.5;

/** The board as ordered, or the smallest in whole mm that takes every part, long side along long side. */
export function boardFor(parts: readonly FlatPart[], { length, width, apart, kerf }: BoardOrder): { readonly length: Mm; readonly width: Mm } {
  const sizes = parts.map(({ outline, around = outline }) => { const { least, most } = windowRound([around]), size = [most[0] - least[0], most[1] - least[1]] as const; return { long: Math.max(...size), wide: Math.min(...size) }; });
  const room = 2 * (Math.max(apart, kerf) + ROOMY), long = Math.max(length, width), wide = Math.min(length, width);
  const needed = { long: Math.max(...sizes.map((size) => size.long)) + room, wide: Math.max(...sizes.map((size) => size.wide)) + room };
  const grown = { long: needed.long > long ? Math.ceil(needed.long) : long, wide: needed.wide > wide ? Math.ceil(needed.wide) : wide };
  return length >= width ? { length: grown.long, width: grown.wide } : { length: grown.wide, width: grown.long };
}
