import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder, Tool } from '../../fitting/making.ts';
import type { Tab } from './tabs.ts';
import { flares, leansIn, type BlockWall } from './walls.ts';

/** Taken off above and below the part at least, so that both its faces are cut ones; and the skin left under a pocket. */
export const SKIM: Mm = 1;
/** How far the two pockets run past each other, so that the ring falls out. */
const PAST: Mm = 0.5;
/** Under a part cut from above only, a ball end may want so much more room at most. */
const FOOT_MOST: Mm = 8;

/** The round of a ball end leaves a fillet this high at the foot of a wall. */
export const footOf = ({ diameter, end }: Tool): Mm => (end === 'ball' ? diameter / 2 : 0);

/** Room under a part cut from above only: for its tabs, and for the round of the cutter to pass the ground line. */
export const footRoom = ({ tab }: Pick<BlockOrder, 'tab'>, tool: Tool): Mm => Math.max(tab.height + SKIM, Math.min(footOf(tool), FOOT_MOST));

/**
 * How deep the pocket round the part is cut, as heights over the bed before the block is turned over: from above down to
 * `fromAbove`, from below up to `fromBelow`. From above alone it goes right through.
 */
export interface Floors { readonly fromAbove: Mm; readonly fromBelow?: Mm }

/** @property hollow lowest place of the upper face  @property crown highest place of the ground face: each set-up must come down to its own face */
interface Lying { readonly height: Mm; readonly low: Mm; readonly high: Mm; readonly hollow: Mm; readonly crown: Mm; readonly walls: readonly BlockWall[]; readonly tabs: readonly Tab[] }

/**
 * Upright walls are shared: each set-up cuts half, so the cutter need not reach far. A wall that flares can be cut from
 * above only and one that leans in from below only, so where there is one that set-up goes all the way.
 */
export function floorsFor({ height, low, high, hollow, crown, walls, tabs }: Lying, { faces }: Pick<BlockOrder, 'faces'>, tool: Tool): Floors {
  if (faces === 'upper face') return { fromAbove: 0 };
  const past = footOf(tool) + PAST;
  const fromAbove = walls.some(flares) ? low - past : height / 2 - past, fromBelow = walls.some(leansIn) ? high + past : height / 2 + past;
  return {
    fromAbove: Math.min(Math.max(SKIM, fromAbove), hollow, ...tabs.map(({ to }) => to)),
    fromBelow: Math.max(Math.min(height - SKIM, fromBelow), crown, ...tabs.map(({ from }) => from)),
  };
}

/** How deep each set-up cuts beside the part, from the top of the block as it lies. */
export const depthsOf = (height: Mm, { fromAbove, fromBelow }: Floors): Mm[] => [height - fromAbove, ...(fromBelow === undefined ? [] : [fromBelow])];
