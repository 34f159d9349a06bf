import type { Mm } from '../geometry/units.ts';
import type { ShoeBlock } from '../making/made.ts';
import { blockLines } from './blockLines.ts';
import { lettered, path, sheet, straight } from './dxfSheets.ts';

/** How far the axis runs past the block. */
const PAST: Mm = 10;

/**
 * Block, pocket, dowels, tabs and the outline of the part as one set-up sees them from above, full size; zero is the middle
 * of the block's heel end, as in the solid of the same name.
 * @param name job and side, for the lettering
 */
export function blockSheet(shoe: ShoeBlock, setUp: number, name: string): string {
  const { block, pocket, edge, ground, dowels, tabs } = blockLines(shoe, setUp), { plan, setUps } = shoe.block;
  return sheet([
    ...path('BLOCK', block), ...path('POCKET', pocket), ...path('EDGE_LINE', edge), ...(ground ? path('GROUND_LINE', ground) : []),
    ...dowels.flatMap((line) => path('DOWELS', line)), ...tabs.flatMap((line) => path('TABS', line)),
    ...straight('TURN_AXIS', [-PAST, 0], [plan.length + PAST, 0]),
    ...lettered([`${name} block, set-up ${setUp + 1}: ${setUps[setUp]!.face} up, seen from above mm`, 'zero: middle of the heel end; Z on the bed'], [0, -plan.width / 2 - PAST]),
  ]);
}
