import { enclosedArea } from '../../geometry/path.ts';
import type { Mesh } from '../../geometry/mesh.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Making } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import { sweptSurface } from '../../solid/soleShape.ts';
import type { Booleans } from '../booleans.ts';
import { BEYOND_PART } from '../../checks/making.ts';
import { depthsOf } from './floors.ts';
import { blockPlan, USUAL_TOOL, type BlockPlan } from './plan.ts';
import { setUpMeshes } from './setUps.ts';
import { steepnessOf, stepOver } from './stepOver.ts';
import { wallsRound } from './walls.ts';

/** A block with a foam body in it, LEFT shoe, in the block's own frame (see Lie), mm. */
export interface Block {
  readonly plan: BlockPlan;
  /** The sheet names no cutter, so the usual one is taken. */
  readonly usualTool: boolean;
  readonly setUps: readonly SetUp[];
}

/** One clamping of the block. The second is turned over about the middle line: y and z count from the new bed. */
export interface SetUp {
  readonly face: 'upper face' | 'ground face';
  /** The block as it stands when this set-up is done. */
  readonly mesh: Mesh;
  /** How deep the pocket is cut, and how far it stays over the bed. */
  readonly depth: Mm;
  readonly floor: Mm;
  /** The cutter must stick out of its holder so far at least. */
  readonly stickOut: Mm;
  /** Distance between passes along the block that leaves the scallop ordered. */
  readonly stepOver: Mm;
  /** Length of all passes over the face, mm. */
  readonly passes: Mm;
}

/** One shoe's foam body as it is planned to lie in its block. */
export interface Blocked { readonly side: Side; readonly parts: SoleParts; readonly making: Making; readonly plan: BlockPlan }

/** A plan for each sole, with the cutter on the sheet or the usual one; none where no block is ordered. */
export const plannedBlock = (parts: SoleParts, { block, tool = USUAL_TOOL }: Making): BlockPlan | undefined => block && blockPlan(parts, block, tool);

/** Meshes the block after each set-up. @param kernel the one that cuts solids */
export function blockOf(parts: SoleParts, plan: BlockPlan, { tool, chordGap }: Making, kernel: Booleans): Block {
  const { shape, bodies: { foam } } = parts, edge = wallsRound(foam).map(({ top }) => top), area = enclosedArea(shape.edge);
  const faces = [{ face: 'upper face', surface: foam.upper }, { face: 'ground face', surface: sweptSurface(foam.lower, shape.line) }] as const, depths = depthsOf(plan.height, plan.floors);
  const setUps = setUpMeshes(plan, parts, chordGap, kernel).map((mesh, i): SetUp => {
    const { face, surface } = faces[i]!, depth = depths[i]!, step = stepOver(plan.tool, plan.order.scallop, steepnessOf(surface, edge, plan.lie));
    return { face, mesh, depth, floor: plan.height - depth, stickOut: depth + BEYOND_PART, stepOver: step, passes: area / step };
  });
  return { plan, usualTool: tool === undefined, setUps };
}
