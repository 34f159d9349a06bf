import type { Mesh } from '../../geometry/mesh.ts';
import { add, scale, turnLeft, type Point, type Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { columnsFor, pointsAcross, rowsOf, type Body, type Cut } from '../../solid/body.ts';
import type { Bar, Booleans } from '../booleans.ts';
import { shell, stripOver, stripUnder } from '../shell.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import { laidMesh, turnedOver, type Lie } from './lie.ts';
import { cornersOf, type BlockPlan } from './plan.ts';
import type { Tab } from './tabs.ts';

/** Solids that cut right through reach this much past the block. */
const BEYOND: Mm = 2;
/** A tab reaches this far into the part and the frame, so that it is one with them. */
const ROOTED: Mm = 3;

/**
 * The block as it stands on the bed after each set-up, in the frame of that set-up. The second lies turned over: all round
 * the part the two pockets have met, and tabs are all that holds it.
 */
export function setUpMeshes(plan: BlockPlan, { bodies: { foam }, solids }: SoleParts, chordGap: Mm, booleans: Booleans): Mesh[] {
  const { length, width, height, floors: { fromAbove, fromBelow }, tabs: { tabs } } = plan, half = width / 2, low = -2 * BEYOND;
  const block = drilled(plan, booleans.prism([[0, -half], [length, -half], [length, half], [0, half]], 0, height), booleans);
  const corners = cornersOf(plan.pocket, chordGap), pocket = (from: Mm): Mesh => booleans.prism(corners, from, height + BEYOND);
  const bridge = (tab: Tab, from: Mm): Mesh => booleans.prism(tabCorners(tab, plan.pocketWidth), from, tab.to);
  const first = booleans.carve(block, [pocket(fromAbove === 0 ? -BEYOND : fromAbove)], [shadowBelow(foam, plan.lie, chordGap, low), ...tabs.map((tab) => bridge(tab, low))]);
  if (fromBelow === undefined) return [first];
  const second = booleans.carve(block, [pocket(-BEYOND)], [laidMesh(plan.lie, solids.foam), ...tabs.map((tab) => bridge(tab, tab.from))]);
  return [first, turnedOver(second, height)];
}

function drilled({ dowels, height }: BlockPlan, block: Mesh, booleans: Booleans): Mesh {
  const bars = dowels.map(({ at: [x, y], diameter }): Bar => ({ from: [x, y, -BEYOND], axis: 'up', length: height + 2 * BEYOND, diameter }));
  return bars.length ? booleans.drill(block, bars) : block;
}

/** A tab in plan, counter-clockwise: from inside the part to inside the frame. */
export function tabCorners({ at, outward, width }: Tab, pocketWidth: Mm): Point[] {
  const from = add(at, scale(outward, -ROOTED)), to = add(at, scale(outward, pocketWidth + ROOTED)), aside = scale(turnLeft(outward), width / 2);
  return [add(from, scale(aside, -1)), add(to, scale(aside, -1)), add(to, aside), add(from, aside)];
}

const at = ([x, y]: Point3, z: Mm): Point3 => [x, y, z];
const standsOut = ({ top, bottom, outward: [ox, oy] }: Cut): boolean => (bottom[0] - top[0]) * ox + (bottom[1] - top[1]) * oy > 0;
/** Where the widest outline of a wall comes down to the ground line. */
const footOf = (cut: Cut): Point3 => (standsOut(cut) ? cut.bottom : at(cut.top, cut.bottom[2]));

/** What an upright cutter leaves when it comes from above: the part, and all that lies under its widest outline. */
export function shadowBelow(body: Body, lie: Lie, chordGap: Mm, base: Mm): Mesh {
  const rows = rowsOf(body, chordGap), columns = columnsFor(body, rows, chordGap), made = shell();
  const lines = rows.map((row) => {
    const inner = footOf(row.inner), outer = footOf(row.outer);
    return [at(inner, base), inner, ...pointsAcross(body, row, columns).upper, outer, at(outer, base)];
  });
  for (let i = 0; i + 1 < lines.length; i++) {
    const [line, next] = [lines[i]!, lines[i + 1]!];
    stripOver(made, line, next);
    stripUnder(made, [line[0]!, line.at(-1)!], [next[0]!, next.at(-1)!]);
  }
  return laidMesh(lie, made.mesh());
}
