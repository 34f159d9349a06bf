import type { Mm } from '../../geometry/units.ts';
import { WALL, type JigFrame } from './frame.ts';

/**
 * A router with a guide bush lies on its side, spindle level and square across the shoe: its base slides on the outer ends of
 * the ribs, which lie in one plane, and its bush runs on the edge of the rail. It cuts from both sides, each time to the middle.
 */
export interface RouterReach {
  /** From the ends of the ribs, so from the base, to both faces of the rail: between them the bush must end. */
  readonly railFrom: Mm;
  readonly railTo: Mm;
  /** How far the cutter must stand out, from its base and from a bush that ends with the rail. */
  readonly fromBase: Mm;
  readonly fromBush: Mm;
}

/** Both cuts run past the middle by this, so that no ridge is left. Common practice of the trade. */
const OVER: Mm = 3;

export function routerReach({ railsAt: [low, high], slot }: JigFrame, thickness: Mm): RouterReach {
  const end = slot / 2 + WALL, half = (high - low) / 2, railTo = end + thickness / 2, fromBase = end + half + OVER;
  return { railFrom: end - thickness / 2, railTo, fromBase, fromBush: fromBase - railTo };
}
