import { boundsOf, type Mesh } from '../geometry/mesh.ts';
import type { Mm } from '../geometry/units.ts';
import { partsOf } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { mm } from './say.ts';
import { over, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** The cutter must stick out this much further than the part is high, or its holder ploughs the block. */
export const BEYOND_PART: Mm = 5;

/**
 * The rule of thumb for a cutter without a block; where a block is ordered, what is cut in it is known, and looked at there.
 * Where something else is ordered that a cutter makes, the cutter on the sheet is taken to be for that.
 */
export function toolReach({ shoe, fitting: { making: { tool, block, card, jig, mould, gauges, wedges } } }: Seen): Finding[] {
  const parts = partsOf(shoe), meant = card?.way === 'router block' || !(jig || mould || gauges || wedges);
  if (!tool || block || !meant || !parts) return [];
  const height = heightOf(parts.solids.foam), needed = height + BEYOND_PART;
  if (!over(needed, tool.reach)) return [];
  return [{
    code: 'TOOL_REACH', severity: 'warn', side: shoe.side, measured: tool.reach, limit: needed, unit: 'mm', where: 'foam body',
    text: `The foam body is ${mm(height)} high and the cutter reaches ${mm(tool.reach)}; cut from one side out of solid foam it needs ${mm(needed)} (part and ${BEYOND_PART} mm). Take one that reaches ${mm(Math.ceil(needed - 1e-9), 0)} (making.tool.reach), or order a block (making.block), which is worked out for both faces.`, basis: PRACTICE,
  }];
}

function heightOf(mesh: Mesh): Mm {
  const { least, most } = boundsOf(mesh);
  return most[2] - least[2];
}
