import { pointOn, type Path } from '../../geometry/path.ts';
import { lengthOf } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder } from '../../fitting/making.ts';
import type { Hole } from '../places.ts';
import { flipDowels } from './dowels.ts';
import { extentOf, laidPath, lieIn, type Lie } from './lie.ts';

/** What of a part matters in plan, in the shoe's frame: its outline, the pocket round it, and what is kept free round the outline. */
export interface Footprint { readonly outline: readonly Point[]; readonly pocket: Path; readonly around: Mm }

interface Plan { readonly length: Mm; readonly width: Mm }
/** A block that takes the part, and how the part and the dowels lie in it. */
interface Settled extends Plan { readonly lie: Lie; readonly dowels: readonly Hole[] }

/** Blocks that are offered instead are told in steps a maker saws to. */
const SAWN: Mm = 5;
const TRIES = 60;

/** The block ordered where the part goes in with its dowels; else the nearest larger one, found by trying. */
export function settle(print: Footprint, order: BlockOrder): Settled {
  const asked = { length: Math.max(order.length, order.width), width: Math.min(order.length, order.width) };
  for (const size of sizes(print, asked)) {
    const lie = lieIn(print.outline, size, print.around);
    if (!lie) continue;
    const dowels = order.faces === 'both faces' ? flipDowels(alongPath(laidPath(lie, print.pocket)), size, order) : [];
    if (dowels) return { ...size, lie, dowels };
  }
  throw new Error(`no block was found for a part of ${print.outline.length} points; this is a fault of the program`);
}

/** First the one asked for, then as large as the part lies straight, then longer or wider step by step. */
function* sizes({ outline, around }: Footprint, asked: Plan): Generator<Plan> {
  yield asked;
  const { least, most } = extentOf(outline), sawn = (size: Mm): Mm => Math.ceil((size + 2 * around) / SAWN - 1e-9) * SAWN;
  const length = Math.max(asked.length, sawn(most[0] - least[0])), width = Math.max(asked.width, sawn(most[1] - least[1]));
  yield { length, width };
  for (let i = 1; i <= TRIES; i++) {
    yield { length: length + i * SAWN, width };
    yield { length, width: width + i * SAWN };
  }
}

/** Points along a path, no further apart than 2 mm. */
const alongPath = (path: Path): Point[] => path.flatMap((piece) => {
  const steps = Math.max(1, Math.ceil(lengthOf(piece) / 2));
  return Array.from({ length: steps }, (_, i) => pointOn(piece, i / steps));
});
