import type { Finding } from '../../checks/finding.ts';
import { fromHeel, mm } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { BlockOrder, Tool } from '../../fitting/making.ts';
import { lengthOf, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import { plannedBlock, type Blocked } from './block.ts';
import { leftBeyond } from './hollows.ts';
import { leftInOutline, leftOnWalls } from './wallLeft.ts';

/** A face under a last may miss it by half a millimetre, an arc its form by a third; an outline may be off by half. Common practice. */
const FACE_MOST: Mm = 0.3, WALL_MOST: Mm = 0.5;

/** Diameters that are on sale. Common practice of the trade. */
const ON_SALE: readonly Mm[] = [50, 40, 32, 25, 20, 16, 12, 10, 8, 6, 5, 4, 3, 2, 1];

const common = { severity: 'warn', unit: 'mm', basis: PRACTICE } as const;
const place = ([x, y]: Point): string => `${fromHeel(x)}, ${Math.abs(y) < 5 ? 'in the middle' : y > 0 ? 'outer side' : 'inner side'}`;
const endOf = ({ end, diameter }: Tool): string => `${end === 'ball' ? 'ball end' : 'flat end'} of ${mm(diameter)}`;

/** Hollows of the face under the last. The ground face has none: all its arcs bulge outwards. */
export function facesReached(blocked: Blocked): Finding[] {
  const { side, parts, plan: { tool, walls } } = blocked, { foam } = parts.bodies, edge = walls.map(({ on }) => on), { left, at } = leftBeyond(FACE_MOST, foam.upper, edge, tool);
  if (left <= FACE_MOST) return [];
  const works = toolThatWorks(blocked, tool.end === 'flat' ? ['ball', 'flat'] : [tool.end]);
  return [{
    ...common, code: 'TOOL_HOLLOW', side, measured: left, limit: FACE_MOST, where: 'upper face of the foam', at: at[0],
    text: `A ${endOf(tool)} does not reach the bottom of a hollow of the upper face: it leaves ${mm(left, 2)} ${place(at)}.${works ? ` A ${endOf(works)} reaches it, the walls and the outline (making.tool).` : ' Finish it by hand.'}`,
  }];
}

/** Walls undercut from above, and the foot of a wall that a ball end leaves round. */
export function wallsReached(blocked: Blocked): Finding[] {
  const { side, plan } = blocked, { left, wall } = leftOnWalls(plan), { tool, order } = plan;
  if (left <= WALL_MOST || !wall) return [];
  const works = ways(blocked).find(({ block, tool: one }) => reachesAll(blocked, block, one));
  const undercut = order.faces === 'upper face' && wall.run > 0;
  const why = undercut ? 'A wall that leans in towards the ground is undercut from above' : `The round of a ${endOf(tool)} does not come down to the foot of a wall`;
  return [{
    ...common, code: undercut ? 'TOOL_UNDERCUT' : 'TOOL_WALL_FOOT', side, measured: left, limit: WALL_MOST, where: 'wall of the foam body', at: wall.on[0],
    text: `${why}: ${mm(left)} stays ${place(wall.on)}. ${works ? `${works.words} takes it off.` : 'Grind it off by hand.'}`,
  }];
}

interface Way { readonly words: string; readonly block: BlockOrder; readonly tool: Tool }

/** What may take off what stays on a wall, the least change first. */
function ways({ plan: { order, tool, sheets } }: Blocked): Way[] {
  const both: BlockOrder = { ...order, faces: 'both faces' }, flat = { ...tool, end: 'flat' as const };
  const narrower = (end: Tool['end']): Way[] => narrowerThan(tool).map((diameter) => { const one = { ...tool, diameter, end }; return { words: `A ${endOf(one)} (making.tool)`, block: order, tool: one }; });
  return [
    ...(order.faces === 'upper face' ? [{ words: 'Cutting from both faces (making.block.faces)', block: both, tool }] : []),
    ...(tool.end === 'ball' ? [{ words: 'A flat end for the walls (making.tool.end)', block: order, tool: flat }] : []),
    { words: `One sheet more (making.block.sheets ${sheets + 1})`, block: { ...order, sheets: sheets + 1 }, tool },
    ...narrower(tool.end), ...(tool.end === 'ball' ? narrower('flat') : []),
  ];
}

/** Hollows of the outline in plan, at the waist. */
export function outlineReached(blocked: Blocked): Finding[] {
  const { side, parts: { shape }, plan: { tool } } = blocked, { left, at } = leftInOutline(outlineOf(shape), tool.diameter / 2);
  if (left <= WALL_MOST) return [];
  const works = toolThatWorks(blocked, [tool.end, tool.end === 'ball' ? 'flat' : 'ball']);
  return [{
    ...common, code: 'TOOL_OUTLINE', side, measured: left, limit: WALL_MOST, where: 'outline of the foam body', at: at[0],
    text: `A cutter of ${mm(tool.diameter)} does not go into the hollow of the outline: it leaves ${mm(left)} ${place(at)}.${works ? ` A ${endOf(works)} does, and reaches faces and walls (making.tool).` : ''}`,
  }];
}

const narrowerThan = ({ diameter }: Tool): Mm[] => ON_SALE.filter((one) => one < diameter);
const outlineOf = ({ edge }: SoleShape): Path => edge.filter((piece) => lengthOf(piece) >= SAME_POINT);

/** The nearest cutter that leaves nothing anywhere: the other end first where it may be changed, then narrower ones. */
function toolThatWorks(blocked: Blocked, ends: readonly Tool['end'][]): Tool | undefined {
  const { tool, order } = blocked.plan, tools = ends.flatMap((end) => [...(end === tool.end ? [] : [tool.diameter]), ...narrowerThan(tool)].map((diameter): Tool => ({ ...tool, end, diameter })));
  return [...tools].sort((a, b) => b.diameter - a.diameter).find((one) => reachesAll(blocked, order, one));
}

/** Whether a cutter in a block passes all three looks, what is quickly seen first: advice for one must not fail another. */
function reachesAll({ parts, making }: Blocked, block: BlockOrder, tool: Tool): boolean {
  if (leftInOutline(outlineOf(parts.shape), tool.diameter / 2).left > WALL_MOST) return false;
  const plan = plannedBlock(parts, { ...making, block, tool });
  return plan !== undefined && leftOnWalls(plan).left <= WALL_MOST && leftBeyond(FACE_MOST, parts.bodies.foam.upper, plan.walls.map(({ on }) => on), tool).left <= FACE_MOST;
}
