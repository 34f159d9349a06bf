import { beforeAll, describe, expect, test } from 'vitest';
import { readMaking } from '../../src/fitting/readMaking.ts';
import type { BlockOrder, Tool } from '../../src/fitting/making.ts';
import { boundsOf, faultsOf, vertexAt, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import { enclosedArea, pathLength, pointAlong, type Path } from '../../src/geometry/path.ts';
import { distance, type Point, type Point3 } from '../../src/geometry/point.ts';
import { degrees } from '../../src/geometry/units.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { laid, shoePlace } from '../../src/making/block/lie.ts';
import { blockPlan, USUAL_TOOL, type BlockPlan } from '../../src/making/block/plan.ts';
import { setUpMeshes, tabCorners } from '../../src/making/block/setUps.ts';
import { ballScallop, ballStep, stepOver } from '../../src/making/block/stepOver.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { sweptSurface } from '../../src/solid/soleShape.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { shapes, withLast, withOrder, workedCase } from '../support/cases.ts';
import { chanceFrom } from '../support/random.ts';

const GAP = 1, FLARED = 'tapered heel, flared outside, uneven edge';
const orderWith = (change: Partial<BlockOrder> = {}): BlockOrder => ({ ...readMaking({ block: {} }).block!, ...change });
const partsOf = (given: RockerCase, gap = GAP) => { const { shape, bodies } = soleFrom(given); return { shape, bodies, solids: solidsOf(bodies, gap) }; };
const planOf = (given: RockerCase, change: Partial<BlockOrder> = {}, tool: Tool = USUAL_TOOL): BlockPlan => blockPlan(partsOf(given), orderWith(change), tool);

/** Slow judge: upright columns over a grid of cells inside a closed line. */
function columns(edge: Path, high: (x: number, y: number) => number): number {
  const cell = 1, corners = Array.from({ length: 1500 }, (_, i) => pointAlong(edge, (i / 1500) * edge.length));
  let sum = 0;
  for (let x = -20.5; x < 320; x += cell) {
    const cuts = corners.flatMap(([x0, y0], i) => { const [x1, y1] = corners[(i + 1) % corners.length]!; return x0 < x !== x1 < x ? [y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)] : []; }).sort((a, b) => a - b);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const n = Math.ceil((cuts[k + 1]! - cuts[k]!) / cell), dy = (cuts[k + 1]! - cuts[k]!) / n;
      for (let j = 0; j < n; j++) sum += high(x, cuts[k]! + (j + 0.5) * dy) * dy * cell;
    }
  }
  return sum;
}

/** The highest place of a mesh over a place in plan. */
function topAt(mesh: Mesh, [x, y]: Point): number {
  let top = -Infinity;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertexAt(mesh, mesh.triangles[i + k]!)) as [Point3, Point3, Point3], area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    const s = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / area, t = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / area;
    if (s >= 0 && t >= 0 && s + t <= 1) top = Math.max(top, a[2] + s * (b[2] - a[2]) + t * (c[2] - a[2]));
  }
  return top;
}

let kernel: Booleans;
beforeAll(async () => { kernel = await loadBooleans(); });

describe('the block after each set-up', () => {
  test.each([FLARED, 'cambered last, turned crest'])('%s: closed skins with the outside out, cut from both faces or from one', (name) => {
    const parts = partsOf(shapes[name]!);
    for (const faces of ['both faces', 'upper face'] as const) {
      const plan = blockPlan(parts, orderWith({ faces }), USUAL_TOOL), meshes = setUpMeshes(plan, parts, GAP, kernel);
      expect(meshes).toHaveLength(faces === 'both faces' ? 2 : 1);
      for (const mesh of meshes) {
        expect(faultsOf(mesh)).toEqual([]);
        const { least, most } = boundsOf(mesh);
        expect([...least, ...most].map((value) => Number(value.toFixed(3)))).toEqual([0, -plan.width / 2, 0, plan.length, plan.width / 2, plan.height]);
      }
    }
  });

  test('holds what columns, the area round the outline and the cut depths say', () => {
    const parts = partsOf(shapes['cambered last']!), { shape, bodies: { foam } } = parts, plan = blockPlan(parts, orderWith(), USUAL_TOOL), [first, second] = setUpMeshes(plan, parts, GAP, kernel).map(volumeOf);
    const { length, width, height, pocketWidth, floors: { fromAbove }, lie: { shift }, tabs: { tabs }, order } = plan;
    // Area round a closed line: A + P d + π d² (J. Steiner 1840, from memory). No hollow of the outline is tighter than the pocket is wide.
    const pocket = enclosedArea(shape.edge) + pathLength(shape.edge) * pocketWidth + Math.PI * pocketWidth ** 2;
    const holes = 4 * Math.PI * (order.dowel / 2) ** 2 * height, bridge = (high: number): number => order.tab.width * high * pocketWidth, under = sweptSurface(foam.lower, shape.line);
    const afterFirst = length * width * height - holes - pocket * (height - fromAbove) + columns(shape.edge, (x, y) => foam.upper(x, y) + shift[2] - fromAbove) + tabs.reduce((sum, { to }) => sum + bridge(to - fromAbove), 0);
    const afterSecond = length * width * height - holes - pocket * height + columns(shape.edge, (x, y) => foam.upper(x, y) - under(x, y)) + tabs.reduce((sum, { from, to }) => sum + bridge(to - from), 0);
    expect(tabs).toHaveLength(4);
    expect(Math.abs(first! / afterFirst - 1)).toBeLessThan(0.002);
    expect(Math.abs(second! / afterSecond - 1)).toBeLessThan(0.003);
  });

  test.each([{}, { sheets: 5 }])('shows its upper face in set-up 1 and, turned over about the middle line, its ground face in set-up 2, however thick the block (%o)', (change) => {
    const parts = partsOf(shapes[FLARED]!, 0.05), plan = blockPlan(parts, orderWith(change), USUAL_TOOL), [first, second] = setUpMeshes(plan, parts, 0.05, kernel), { shape, bodies: { foam } } = parts, under = sweptSurface(foam.lower, shape.line);
    for (const [sx, sy] of [[30, 10], [120, -15], [200, 25], [262, -5]] as const) {
      const [x, y, up] = laid(plan.lie, [sx, sy, foam.upper(sx, sy)]), [, , ground] = laid(plan.lie, [sx, sy, under(sx, sy)]);
      expect(Math.abs(topAt(first!, [x, y]) - up)).toBeLessThan(0.06);
      expect(Math.abs(topAt(second!, [x, -y]) - (plan.height - ground))).toBeLessThan(0.06);
    }
    // Half way down a wall that flares, set-up 1 shows the wall.
    const { top, bottom } = plan.walls.reduce((most, wall) => (wall.run < most.run ? wall : most));
    expect(Math.abs(topAt(first!, [(top[0] + bottom[0]) / 2, (top[1] + bottom[1]) / 2]) - (top[2] + bottom[2]) / 2)).toBeLessThan(0.5);
  });

  test('the same twice', () => {
    const parts = partsOf(workedCase), make = () => setUpMeshes(blockPlan(parts, orderWith({ faces: 'upper face' }), USUAL_TOOL), parts, GAP, kernel);
    expect(make()).toEqual(make());
  });
});

/** A heel of 55 mm under a pointed foot: the tread lies far below the seat. */
const highHeel = { ...withLast(workedCase, { pitch: 55 }), foot: { ...workedCase.foot, stance: { kind: 'locked', ankleAngle: degrees(-13.5) } } } as const;

/** Points all round a path. */
const round = (path: Path, count: number): Point[] => Array.from({ length: count }, (_, i) => pointAlong(path, (i / count) * path.length));

describe('the part in the block', () => {
  const chance = chanceFrom(20260311);
  const cases = Array.from({ length: 8 }, (_, i) => {
    const given = withLast(withOrder(shapes[chance.oneOf(Object.keys(shapes))]!, {}), { ballWidth: chance.between(88, 104) });
    const change = { length: chance.between(250, 420), width: chance.between(110, 300), sheet: chance.between(8, 40), margin: chance.between(0, 15), dowel: chance.between(4, 12), faces: i % 3 ? 'both faces' : 'upper face' } as const;
    return { given, change, tool: { diameter: chance.between(4, 25), reach: 75, end: chance.oneOf(['ball', 'flat'] as const) } };
  });

  test('has room for the cutter and its margin all round, above and below; dowels stand clear and fit one way only', () => {
    for (const { given, change, tool } of cases) {
      const plan = planOf(given, change, tool), { length, width, height, pocket, dowels, walls, order } = plan, around = round(pocket, 240);
      for (const [x, y] of around) { expect(Math.min(x, length - x, width / 2 - Math.abs(y))).toBeGreaterThan(order.margin - 0.6); }
      for (const { top, bottom } of walls) for (const point of [top, bottom]) {
        expect(Math.min(...around.map((at) => distance(at, [point[0], point[1]])))).toBeGreaterThan(tool.diameter);
        expect(point[2]).toBeGreaterThan(0.9);
        expect(point[2]).toBeLessThan(height - 0.9);
      }
      expect(dowels.length).toBe(change.faces === 'both faces' ? dowels.length : 0);
      if (change.faces === 'upper face') continue;
      expect(dowels.length).toBeGreaterThanOrEqual(3);
      for (const { at: [x, y], diameter } of dowels) {
        expect(Math.min(x, length - x, width / 2 - Math.abs(y)) - diameter / 2).toBeGreaterThanOrEqual(Math.max(3, order.margin) - 1e-9);
        expect(Math.min(...around.map((at) => distance(at, [x, y]))) - diameter / 2).toBeGreaterThan(Math.max(3, order.margin) - 0.5);
        expect(dowels.some(({ at }) => distance(at, [x, -y]) < 1e-9)).toBe(true);
        expect(dowels.some(({ at }) => distance(at, [length - x, -y]) < diameter - 1e-9)).toBe(false);
      }
    }
  });

  test('tabs join the walls only, clear of the arcs below and of the edge above', () => {
    for (const { given, change, tool } of cases.filter((one) => one.change.faces === 'both faces')) {
      const parts = partsOf(given), plan = blockPlan(parts, orderWith(change), tool), { shape, bodies: { foam } } = parts, under = sweptSurface(foam.lower, shape.line);
      expect(plan.tabs.tabs).toHaveLength(4);
      for (const tab of plan.tabs.tabs) for (const corner of tabCorners(tab, plan.pocketWidth).filter((_, i) => i === 0 || i === 3)) {
        const [x, y] = shoePlace(plan.lie, corner), lift = plan.lie.shift[2];
        expect(tab.from).toBeGreaterThan(under(x, y) + lift + 0.5);
        expect(tab.to).toBeLessThan(foam.upper(x, y) + lift - 0.5);
      }
    }
  });

  test('lies straight where it goes in, else turned, and is where its own frame says', () => {
    const straight = planOf(workedCase, { length: 380, width: 170 }), across = planOf(workedCase, { length: 300, width: 290, margin: 3 });
    expect(straight.lie.turn).toBe(0);
    expect([across.length, across.width]).toEqual([300, 290]);
    expect(Math.abs(across.lie.turn)).toBeGreaterThan(degrees(10));
    const [x, y] = laid(across.lie, [100, 12, 5]);
    expect(distance(shoePlace(across.lie, [x, y]), [100, 12])).toBeLessThan(1e-9);
  });

  test('takes the fewest sheets that hold it, or those given', () => {
    const { high, low, sheets, height } = planOf(workedCase, { sheet: 9 });
    expect((sheets - 1) * 9).toBeLessThan(high - low + 2);
    expect(height).toBeGreaterThanOrEqual(high - low + 2);
    expect(planOf(workedCase, { sheet: 9, sheets: 7 }).sheets).toBe(7);
  });

  test.each([[highHeel, {}], [workedCase, {}], [workedCase, { sheets: 5 }]] as const)('each set-up comes down to all of its own face', (given, change) => {
    const parts = partsOf(given), { floors, lie: { shift } } = blockPlan(parts, orderWith(change), USUAL_TOOL), { foam } = parts.bodies, under = sweptSurface(foam.lower, parts.shape.line);
    for (let x = 1; x < 282; x += 7) {
      expect(floors.fromAbove).toBeLessThan(foam.upper(x, 0) + shift[2] + 0.05);
      expect(floors.fromBelow!).toBeGreaterThan(under(x, 0) + shift[2] - 0.05);
    }
  });

  test('a wall that flares is cut from above all the way, one that leans in from below; upright ones are shared', () => {
    const lean = (heel: number) => withOrder(workedCase, { taper: { heelInner: heel, heelOuter: heel, foreInner: 0, foreOuter: 0 } });
    const upright = planOf(workedCase), flared = planOf(lean(degrees(-5))), leaning = planOf(lean(degrees(5)));
    expect(upright.height - upright.floors.fromAbove).toBeLessThan(upright.height * 0.7);
    expect(flared.floors.fromAbove).toBeLessThan(flared.low);
    expect(flared.floors.fromBelow!).toBeLessThan(flared.high);
    expect(leaning.floors.fromBelow!).toBeGreaterThanOrEqual(leaning.high);
    expect(leaning.floors.fromAbove).toBeGreaterThan(leaning.low);
  });
});

describe('step-over', () => {
  test.each([[12, 2, 0.08], [12, 3, 0.19], [6, 1, 0.04], [6, 2, 0.17], [20, 3, 0.11]])('a ball of %d mm at a step of %d mm leaves %d mm (plain geometry, rounded as workshops quote it)', (diameter, step, scallop) => {
    expect(ballScallop(diameter, step)).toBeCloseTo(scallop, 2);
    expect(ballStep(diameter, ballScallop(diameter, step))).toBeCloseTo(step, 9);
  });

  /** Slow judge: cutters side by side on a tilted plane, lowered until they touch it; the highest ridge between them. */
  function ridge({ diameter, end }: Tool, step: number, along: number, across: number): number {
    const r = diameter / 2, plane = (x: number, y: number): number => along * x + across * y, n = 60;
    const under = Array.from({ length: 2 * n + 1 }, (_, i) => (i / n - 1) * r), up = (d2: number): number => (end === 'ball' ? r - Math.sqrt(Math.max(0, r * r - d2)) : 0);
    const tip = (cy: number): number => Math.max(...under.flatMap((x) => under.flatMap((y) => (x * x + y * y <= r * r + 1e-9 ? [plane(x, cy + y) - up(x * x + y * y)] : []))));
    const tips = [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((pass) => ({ cy: pass * step, z: tip(pass * step) }));
    // Each pass sweeps along the slope: at a place y the lowest surface over all positions along it.
    const left = (y: number): number => Math.min(...tips.flatMap(({ cy, z }) => under.flatMap((s) => (s * s + (y - cy) ** 2 <= r * r + 1e-9 ? [z + up(s * s + (y - cy) ** 2) - plane(s, y)] : []))));
    return Math.max(...Array.from({ length: 21 }, (_, i) => left((step * i) / 20))) / Math.hypot(1, along, across);
  }

  test.each([['ball', 0, 0], ['ball', 0.5, 0], ['ball', 0.2, 0.6], ['flat', 0.5, 0]] as const)('a %s end on a slope of %d along and %d across leaves what was asked for', (end, along, across) => {
    const tool: Tool = { diameter: 12, reach: 75, end }, step = stepOver(tool, 0.1, { along, across });
    const left = ridge(tool, step, along, across);
    expect(left).toBeLessThan(0.115);
    expect(left).toBeGreaterThan(0.07);
  });
});
