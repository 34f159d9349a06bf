import { BEYOND_PART } from '../../checks/making.ts';
import type { Finding } from '../../checks/finding.ts';
import { deg, fromHeel, mm, sentences } from '../../checks/say.ts';
import { over } from '../../checks/seen.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Making } from '../../fitting/making.ts';
import { inDegrees } from '../../geometry/units.ts';
import { partsOf, type Pair } from '../../pair/shoe.ts';
import { plannedBlock, type Blocked } from './block.ts';
import { depthsOf } from './floors.ts';
import { TAB_CLEAR, type LowWall, type Tab } from './tabs.ts';
import { facesReached, outlineReached, wallsReached } from './toolReached.ts';

/** What stands in the way of cutting the foam bodies from the block on the sheet with the cutter on the sheet. */
export function blockFindings({ shoes, fitting: { making } }: Pair): Finding[] {
  const blocked = shoes.flatMap((shoe): Blocked[] => {
    const parts = partsOf(shoe), plan = parts && plannedBlock(parts, making);
    return parts && plan ? [{ side: shoe.side, parts, making, plan }] : [];
  });
  const looked = [...BLOCK_CHECKS, ...CUTTER_CHECKS];
  return [...blocked.flatMap((one) => looked.flatMap((check) => check(one))), ...(blocked.length > 0 ? usualTool(making) : [])];
}

const FIELD = 'making.block', common = { unit: 'mm', where: 'foam body', basis: PRACTICE } as const;

const plan = ({ length, width }: { readonly length: number; readonly width: number }): string => `${mm(length, 0)} × ${mm(width, 0)}`;

function tooSmall({ side, plan: { order, length, width, tool } }: Blocked): Finding[] {
  const asked = { length: Math.max(order.length, order.width), width: Math.min(order.length, order.width) };
  if (length === asked.length && width === asked.width) return [];
  const [measured, limit] = length > asked.length ? [asked.length, length] : [asked.width, width];
  const dowels = order.faces === 'both faces' ? ', and the dowels it is turned over on,' : '';
  return [{
    ...common, code: 'BLOCK_TOO_SMALL', severity: 'warn', side, measured, limit,
    text: `The foam body with room for a cutter of ${mm(tool.diameter)} round it and a margin of ${mm(order.margin)}${dowels} does not go into a block of ${plan(asked)} (${FIELD}). A block of ${plan({ length, width })} takes it; the set-up is worked out for that one.`,
  }];
}

function tooThin({ side, plan: { order, sheets, sheetsNeeded, low, high } }: Blocked): Finding[] {
  if (order.sheets === undefined || order.sheets >= sheetsNeeded) return [];
  return [{
    ...common, code: 'BLOCK_TOO_THIN', severity: 'warn', side, measured: order.sheets * order.sheet, limit: sheets * order.sheet,
    text: `The foam body is ${mm(high - low)} high and does not go into ${told(order.sheets, 'sheet')} of ${mm(order.sheet)} (${FIELD}.sheets); ${told(sheetsNeeded, 'sheet')} ${sheetsNeeded === 1 ? 'takes' : 'take'} it, and the set-up is worked out for so many.`,
  }];
}

const told = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function turned({ side, plan: { lie: { turn }, length, width } }: Blocked): Finding[] {
  if (turn === 0) return [];
  return [{ ...common, code: 'BLOCK_TURNED', severity: 'note', side, measured: Math.abs(inDegrees(turn)), unit: 'deg', text: `The foam body goes into the block of ${plan({ length, width })} turned: long axis ${deg(Math.abs(inDegrees(turn)))} from the block's long side.` }];
}

/** A tab needs wall above and below it. */
function lowWalls({ side, plan: { order, tabs: { low, moved, hold } } }: Blocked): Finding[] {
  const [worst] = [...low].sort((a, b) => a.wall - b.wall);
  if (!worst) return [];
  const room = Math.floor((worst.wall - 2 * TAB_CLEAR) * 10 + 1e-6) / 10;
  const advice = room >= 1 ? `Tabs of ${mm(room)} (${FIELD}.tabHeight) stand everywhere.` : hold ? 'Hold the part down with double-sided film as well.' : 'Too few tabs stand to hold the part: hold it down from below, as the order of work on the set-up sheet says.';
  return [{
    ...common, code: 'BLOCK_TABS', severity: hold ? 'note' : 'warn', side, measured: worst.wall, limit: order.tab.height + 2 * TAB_CLEAR, at: worst.x, where: `wall, ${worst.place} ${worst.side}`,
    text: sentences(`A tab of ${mm(order.tab.height)} wants a wall of ${mm(order.tab.height + 2 * TAB_CLEAR)}, so that it touches neither the arcs nor the edge; the lowest (${worst.place}, ${worst.side} side) is ${mm(worst.wall)} high`, ...whatStands(low, moved), advice),
  }];
}

/** Which tabs are left out, which are lower, and which stand where none was wanted. */
function whatStands(low: readonly LowWall[], moved: readonly Tab[]): string[] {
  const out = low.filter(({ height }) => height === 0), lower = low.filter(({ height }) => height > 0);
  return [
    out.length ? `Left out: ${out.map(named).join(', ')}` : '',
    lower.length ? `Made lower: ${lower.map((one) => `${named(one)} (${mm(one.height)} high)`).join(', ')}` : '',
    moved.length ? `In their stead: ${moved.map((one) => `${named(one)}, ${fromHeel(one.x)} (${mm(one.to - one.from)} high)`).join('; ')}` : '',
  ];
}
const named = ({ place, side }: Pick<Tab, 'place' | 'side'>): string => `${place} ${side}`;

/** The cutter against what is really cut beside the part. */
function reach({ side, parts, making, plan: { tool, height, floors, order } }: Blocked): Finding[] {
  const depths = depthsOf(height, floors), needed = Math.max(...depths) + BEYOND_PART;
  if (!over(needed, tool.reach)) return [];
  const both = { ...making, block: { ...order, faces: 'both faces' as const } }, other = order.faces === 'upper face' ? plannedBlock(parts, both) : undefined;
  const eased = other && !over(Math.max(...depthsOf(other.height, other.floors)) + BEYOND_PART, tool.reach);
  const place = depths.indexOf(Math.max(...depths)) === 0 ? 'upper face' : 'ground face';
  return [{
    ...common, code: 'TOOL_REACH', severity: 'warn', side, measured: tool.reach, limit: needed, where: 'pocket round the foam body',
    text: `The pocket round the foam body is cut ${mm(needed - BEYOND_PART)} deep (${place}) and the cutter reaches ${mm(tool.reach)}; it needs ${mm(needed)} (depth and ${BEYOND_PART} mm), or its holder ploughs the block. Take a cutter that reaches ${mm(Math.ceil(needed - 1e-9), 0)} (making.tool.reach)${eased ? `, or cut from both faces (${FIELD}.faces)` : ''}.`,
  }];
}

const usualTool = ({ tool }: Making): Finding[] => tool ? [] : [{
  code: 'TOOL_USUAL', severity: 'note', unit: '', where: 'foam body', basis: PRACTICE,
  text: 'The sheet names no cutter, so the block is worked out for a ball end of 12 mm that reaches 75 mm. Enter the one in the machine (making.tool).',
}];

const BLOCK_CHECKS = [tooSmall, tooThin, turned, lowWalls, reach] as const;
const CUTTER_CHECKS = [facesReached, wallsReached, outlineReached] as const;
