import { beforeAll, describe, expect, test } from 'vitest';
import { layOn } from '../../src/checks/bedFit.ts';
import type { Finding } from '../../src/checks/finding.ts';
import type { MouldOrder } from '../../src/fitting/making.ts';
import { boundsOf, faultsOf, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import { pointAlong } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { CASTS } from '../../src/materials/materials.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { cavityShell, mouldOf, type Mould } from '../../src/making/mould.ts';
import { washerFor } from '../../src/making/mould/bolts.ts';
import { tightest } from '../../src/making/mould/cutter.ts';
import { draftFound } from '../../src/making/mould/draft.ts';
import { layoutOf, outlineOf } from '../../src/making/mould/layout.ts';
import { mixFor } from '../../src/making/mould/mix.ts';
import { wallsOf } from '../../src/making/mould/walls.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { designWith, type Part } from '../checks/support.ts';
import { shapes } from '../support/cases.ts';

const gap = 0.4;
const order: MouldOrder = {
  part: 'foam body', cast: { name: 'self-skinning PU', density: 0.5, densityBasis: 'x', shrinkBasis: 'x' }, by: 'routed', closing: 'bolts', bolt: 6.6, ledge: 20,
  draft: degrees(3), shrink: [1.01, 1.01, 1.01], rim: 20, floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false,
};
const pressed: Partial<MouldOrder> = { cast: { ...order.cast, name: 'pressed EVA', density: 0.25 }, rim: 28 };
const parts = Object.fromEntries(Object.entries(shapes).map(([name, given]) => { const { shape, bodies } = soleFrom(given); return [name, { shape, bodies, solids: solidsOf(bodies, gap) }]; }));
const flared = 'tapered heel, flared outside, uneven edge';
const changeFor = (name: string): Partial<MouldOrder> => (name === flared ? { split: true } : {});

let kernel: Booleans;
beforeAll(async () => { kernel = await loadBooleans(); });
const mould = (name: string, change: Partial<MouldOrder> = {}, bed?: { x: number; y: number; z: number }): Mould => mouldOf(parts[name]!, { ...order, ...changeFor(name), ...change }, gap, kernel, bed);
const meshesOf = ({ cavity, lid }: Mould): Mesh[] => [...cavity, ...lid].map(({ mesh }) => mesh);
const planOf = ({ positions }: Mesh): Point[] => Array.from({ length: positions.length / 3 }, (_, i): Point => [positions[i * 3]!, positions[i * 3 + 1]!]);
/** Holes right through a closed skin: Euler's number is 2 - 2 x holes. */
const throughHoles = ({ positions, triangles }: Mesh): number => 1 - (positions.length / 3 - triangles.length / 2 + triangles.length / 3) / 2;

describe.each(Object.keys(shapes))('bolts of the mould of %s', (name) => {
  const layout = layoutOf(parts[name]!.bodies.foam, { ...order, ...changeFor(name) }, gap), { bolts, dowels } = layout, washer = washerFor(6.6);

  test('have washers that lie on the rim, and walls to dowels', () => {
    const edges = [...outlineOf(layout, 'open'), ...layout.blocks.border];
    for (const { at } of bolts) {
      expect(Math.min(...edges.map((edge) => distance(edge, at)))).toBeGreaterThan(washer / 2);
      expect(Math.min(...dowels.map((dowel) => distance(dowel.at, at)))).toBeGreaterThanOrEqual((8 + 6.6) / 2 + 3 - 0.01);
      expect(Math.min(...bolts.filter((other) => other.at !== at).map((other) => distance(other.at, at)))).toBeGreaterThan(washer);
      for (const { x } of layout.joints) expect(Math.abs(at[0] - x)).toBeGreaterThan((8 + 6.6) / 2 + 2.9);
      if (layout.joints.length) expect(Math.abs(at[1])).toBeGreaterThan(washer / 2);
    }
  });

  test('leave no place of the rim far from one: a lid of board bows open beyond 80 mm, common practice', () => {
    const far = layout.blocks.border.map((at) => Math.min(...bolts.map((bolt) => distance(bolt.at, at))));
    expect(Math.max(...far)).toBeLessThan(layout.joints.length ? 80 : 62);
    expect(bolts.length).toBeLessThan(18);
  });
});

test('a washer is that of the bolt in ISO 7089, its hole that of ISO 273, both from memory', () => {
  expect([3.4, 4.5, 5.5, 6.6, 9, 11].map(washerFor)).toEqual([7, 9, 10, 12, 16, 20]);
});

test('bolts go through cavity and lid, and clamps leave no holes for them', () => {
  const { cavity, lid, layout } = mould('worked');
  expect([throughHoles(cavity[0]!.mesh), throughHoles(lid[0]!.mesh)]).toEqual([4 + layout.bolts.length, 4 + 3 + layout.bolts.length]);
  expect(throughHoles(mould('worked', { closing: 'clamps' }).lid[0]!.mesh)).toBe(4 + 3);
});

describe('the draft that is found on the solid', () => {
  test.each([1, 3, 5])('is the one asked for, %s°', (asked) => {
    const { draft } = mould('worked', { draft: degrees(asked) });
    expect(inDegrees(draft.least)).toBeGreaterThan(asked - 0.05);
    expect(inDegrees(draft.least)).toBeLessThan(asked + 0.2);
    expect(draft.facets).toBeGreaterThan(60);
  });
  test('is less than nothing where a wall flares, by the very angle', () => expect(inDegrees(mould(flared).draft.least)).toBeCloseTo(-8, 0));
  test('sees one wall that was pushed in', () => {
    const layout = layoutOf(parts['worked']!.bodies.foam, order, gap), sound = cavityShell(layout.rows, layout.base), open = layout.rows[8]!.inner.open;
    const positions = sound.positions.slice(), i = planOf(sound).findIndex((at, k) => distance(at, [open[0], open[1]]) < 1e-6 && Math.abs(positions[k * 3 + 2]! - open[2]) < 1e-6);
    positions[i * 3 + 1]! += 1.5;
    expect(draftFound(sound, layout).least).toBeGreaterThanOrEqual(order.draft - 1e-6);
    expect(draftFound({ positions, triangles: sound.triangles }, { ...layout, rows: layout.rows.map((row, k) => (k === 8 ? { ...row, inner: { ...row.inner, open: [open[0], open[1] + 1.5, open[2]] } } : row)) }).least).toBeLessThan(order.draft - degrees(1));
  });
});

describe('pressed foam', () => {
  test('has no holes to pour by, and a groove all round the rim', () => {
    const made = mould('worked', pressed), plain = mould('worked', { rim: 28 }), { layout } = made;
    expect([layout.pour, layout.vents]).toEqual([[], []]);
    for (const mesh of meshesOf(made)) expect(faultsOf(mesh)).toEqual([]);
    // By hand: 2.5 mm deep, 5 mm wide above and 4 below, along its middle 5.5 mm out of the cavity.
    const open = outlineOf(layout, 'open'), round = open.reduce((sum, at, i) => sum + distance(at, open.at(i - 1)!), 0) + 2 * Math.PI * 5.5;
    expect((volumeOf(plain.cavity[0]!.mesh) - volumeOf(made.cavity[0]!.mesh)) / (round * 2.5 * 4.5)).toBeCloseTo(1, 1);
    for (const { at } of [...layout.dowels, ...layout.bolts]) expect(Math.min(...open.map((edge) => distance(edge, at)))).toBeGreaterThan(8 + 6);
  });
});

describe('what is weighed out', () => {
  test('is the cast once shrunk, the holes it rises in, and a share for the cup', () => {
    const { fill, layout } = mould('worked'), { cast, holes, lost, total } = mixFor(fill, layout, order);
    expect(cast).toBeCloseTo(((fill / 1.01 ** 3) * 0.5) / 1000, 6);
    // By hand: 12 mm of lid and a little more where the face dips, over holes of 12 and twice 3 mm.
    const area = (Math.PI / 4) * (144 + 9 + 9);
    expect(holes).toBeGreaterThan((area * 12 * 0.5) / 1000);
    expect(holes).toBeLessThan((area * 30 * 0.5) / 1000);
    expect(lost / total).toBeCloseTo(0.05, 9);
    expect(mixFor(fill / 4, layout, order).lost).toBe(10);
    expect(total).toBeCloseTo(cast + holes + lost, 9);
    const foam = mixFor(fill, layout, { ...order, ...pressed });
    expect(foam.lost / foam.total).toBeCloseTo(0.05, 9);
  });
  test('presets lie in the windows of the trade: self-skinning 0.35 to 0.6 g/cm³, shrink 0.5 to 1.5 %, common practice', () => {
    for (const { density, shrink, way } of [CASTS['self-skinning PU'], CASTS['soft self-skinning PU']]) {
      expect(density).toBeGreaterThanOrEqual(0.35);
      expect(density).toBeLessThanOrEqual(0.6);
      expect(shrink).toBeGreaterThanOrEqual(0.005);
      expect(shrink).toBeLessThanOrEqual(0.015);
      expect(way).toBe('poured');
    }
  });
});

test('walls are told by their thinnest place: points of the cavity against points of the border', () => {
  const layout = layoutOf(parts['turned crest, edge all round']!.bodies.foam, order, gap), { side, floor, bores } = wallsOf(layout, order);
  const fine = (line: readonly Point[]): Point[] => line.flatMap((to, i) => { const from = line.at(i - 1)!; return Array.from({ length: 12 }, (_, k): Point => [from[0] + ((to[0] - from[0]) * k) / 12, from[1] + ((to[1] - from[1]) * k) / 12]); });
  const border = fine(layout.blocks.border), slow = Math.min(...[...outlineOf(layout, 'open'), ...outlineOf(layout, 'bottom')].map((at) => Math.min(...border.map((to) => distance(to, at)))));
  expect(side).toBeCloseTo(slow, 1);
  expect(side).toBeGreaterThan(19.5);
  expect(floor).toBe(12);
  expect(bores).toBeGreaterThan(5);
  expect(bores).toBeLessThan(6.1);
});

test('the tightest corner in plan is that of the line: circles, and an ellipse by b²/a', () => {
  const ellipse = (a: number, b: number): Point[] => Array.from({ length: 720 }, (_, i): Point => [a * Math.cos((i * Math.PI) / 360), b * Math.sin((i * Math.PI) / 360)]);
  expect(tightest(ellipse(30, 30)).radius).toBeCloseTo(30, 3);
  const { radius, at } = tightest(ellipse(60, 40));
  expect(radius / (1600 / 60)).toBeCloseTo(1, 1);
  expect(Math.abs(at[0])).toBeCloseTo(60, 1);
  expect(tightest(ellipse(30, 30).toReversed()).radius).toBe(Infinity);
});

describe('for a small bed', () => {
  const printed: Partial<MouldOrder> = { by: 'printed' };
  test.each([['worked', 220, 2], ['worked', 160, 3], [flared, 200, 2], ['turned crest, edge all round', 200, 2]] as const)('the mould of %s goes on %s mm in pieces that close, fit and add up', (name, size, count) => {
    const bed = { x: size, y: size, z: 200 }, whole = mould(name), made = mould(name, printed, bed);
    expect(made.layout.fits).toBe(true);
    expect(made.layout.cuts.cavity).toHaveLength(count - 1);
    for (const mesh of meshesOf(made)) {
      expect(faultsOf(mesh)).toEqual([]);
      expect(layOn(planOf(mesh), bed, 5).fits).toBe(true);
    }
    // Bores of dowels in the joints, and bolts that stand elsewhere, are all that differs.
    const sum = (pieces: Mould): number => meshesOf(pieces).reduce((all, mesh) => all + volumeOf(mesh), 0);
    expect(Math.abs(sum(made) / sum(whole) - 1)).toBeLessThan(0.015);
    for (const x of made.layout.cuts.cavity) for (const lid of made.layout.cuts.lid) expect(Math.abs(x - lid)).toBeGreaterThan(10);
  });

  test('a dowel lies along the shoe in each side of each joint', () => {
    const bed = { x: 220, y: 220, z: 200 }, { layout, cavity } = mould('worked', { ...printed, closing: 'clamps' }, bed);
    expect(layout.ties.map(({ x }) => x)).toEqual([layout.cuts.cavity[0], layout.cuts.cavity[0]]);
    const half = boundsOf(cavity[0]!.mesh).most[0];
    expect(half).toBeCloseTo(layout.cuts.cavity[0]!, 3);
    const bare = mould('worked', { ...printed, closing: 'clamps', dowel: 0.5 }, bed), bore = volumeOf(bare.cavity[0]!.mesh) - volumeOf(cavity[0]!.mesh);
    const upright = layout.dowels.filter(({ at: [x] }) => x < half).length;
    // Half of each tie, 15 mm, lies in the piece; the upright dowels of the piece go through 20 to 60 mm of rim.
    expect(bore).toBeGreaterThan((Math.PI / 4) * 63 * (2 * 15 + upright * 20));
    expect(bore).toBeLessThan((Math.PI / 4) * 64 * (2 * 15 + upright * 60));
  });
});

describe('what is found before a mould is made', () => {
  const withMould = (mould: Part, making: Part = {}): Part => ({ making: { chordGap: 0.5, mould, ...making }, right: undefined });
  const found = (code: string, mould: Part, making: Part = {}): Finding[] => designWith(withMould(mould, making)).findings.filter((finding) => finding.code === code);

  test('a draft below 2°, not one of 2', () => {
    expect(found('MOULD_DRAFT', { draft: 1.5 })[0]!.text).toMatch(/lean out by 1\.5° .*Take 2° to 3°/);
    expect(found('MOULD_DRAFT', { draft: 2 })).toEqual([]);
  });
  test('a rim narrower than the jaws of the clamps', () => {
    expect(found('MOULD_LEDGE', { closing: 'clamps', rim: 15 })).toHaveLength(1);
    expect(found('MOULD_LEDGE', { closing: 'clamps', rim: 20 })).toEqual([]);
  });
  test('a floor too thin for board, not for a print', () => {
    expect(found('MOULD_WALL', { floor: 5 })[0]).toMatchObject({ measured: 5, limit: 8, severity: 'warn' });
    expect(found('MOULD_WALL', { floor: 5, by: 'printed' })).toEqual([]);
  });
  test('too little wall beside a dowel where walls flare under the rim; the rim it names leaves enough, a step less does not', () => {
    const beside = (rim: number): Finding[] => designWith({ left: { order: { taper: { heelInner: -4, heelOuter: -8, foreInner: 0, foreOuter: -2 } } }, ...withMould({ split: true, rim, dowel: 8, closing: 'clamps' }) }).findings.filter(({ code }) => code === 'MOULD_BORES');
    const [one] = beside(14.5), wider = Number(/Take a rim of ([\d.]+) mm/.exec(one!.text)![1]);
    expect(one).toMatchObject({ severity: 'warn', limit: 3 });
    expect(one!.measured).toBeLessThan(3);
    expect(beside(wider)).toEqual([]);
    expect(beside(wider - 0.6)).toHaveLength(1);
    expect(found('MOULD_BORES', { rim: 14.5, dowel: 8, closing: 'clamps' })).toEqual([]);
  });
  test('a cutter too short, or whose ball end blunts the lower edge; and what it names works', () => {
    const tool = (diameter: number, reach: number, end = 'ball'): Part => ({ tool: { diameter, reach, end } });
    const needed = found('MOULD_REACH', {}, tool(6, 20))[0]!.limit!;
    expect(found('MOULD_REACH', {}, tool(6, needed + 0.001))).toEqual([]);
    expect(found('MOULD_REACH', {}, tool(6, Number(/one that reaches (\d+) mm/.exec(found('MOULD_REACH', {}, tool(6, 20))[0]!.text)![1])))).toEqual([]);
    const [blunt] = found('MOULD_FILLET', {}, tool(12, 100));
    // By hand: a circle of 6 mm in a corner of 93°, common practice 3° of draft.
    expect(blunt!.measured).toBeCloseTo(6 / Math.sin((46.5 * Math.PI) / 180) - 6, 6);
    expect(found('MOULD_FILLET', {}, tool(Number(/A ball end of ([\d.]+) mm leaves/.exec(blunt!.text)![1]), 100))).toEqual([]);
    expect(found('MOULD_FILLET', {}, tool(12, 100, 'flat'))).toEqual([]);
    const [corner] = found('MOULD_CORNER', {}, tool(90, 100));
    expect(found('MOULD_CORNER', {}, tool(Number(/Finish with one of ([\d.]+) mm/.exec(corner!.text)![1]), 100))).toEqual([]);
  });
  test('a bed too small even in pieces, with one that takes them', () => {
    const bed = (x: number, z = 200): Part => ({ printBed: { x, y: x, z } }), [small] = found('MOULD_BED', { by: 'printed' }, bed(100));
    const [, side, high] = /A bed of (\d+) × \d+ × (\d+) mm takes it in 4 pieces/.exec(small!.text)!.map(Number) as [number, number, number];
    expect(found('MOULD_BED', { by: 'printed' }, bed(side, high))).toEqual([]);
    expect(found('MOULD_BED', { by: 'printed' }, bed(side - 3, high))).toHaveLength(1);
    expect(found('MOULD_BED', { by: 'printed' }, bed(side, high - 2))).toHaveLength(1);
    expect(found('MOULD_PIECES', { by: 'printed' }, bed(220))).toHaveLength(1);
    expect(found('MOULD_PIECES', { by: 'printed' }, bed(500))).toEqual([]);
    expect(found('MOULD_PIECES', {}, bed(220))).toEqual([]);
  });
  test('a dowel too thick for the joints, with one that is not', () => {
    const bed: Part = { printBed: { x: 220, y: 220, z: 200 } }, [thick] = found('MOULD_JOINT', { by: 'printed', dowel: 13.5, closing: 'clamps' }, bed);
    const works = Number(/One of ([\d.]+) mm has/.exec(thick!.text)![1]);
    expect(found('MOULD_JOINT', { by: 'printed', dowel: works, closing: 'clamps' }, bed)).toEqual([]);
  });
  test('a cast that weighs other than the foam ordered', () => {
    expect(found('MOULD_WEIGHT', {})[0]!.text).toMatch(/self-skinning PU of 0\.50 g\/cm³/);
    expect(found('MOULD_WEIGHT', { material: 'pressed EVA', density: 0.21 })).toEqual([]);
  });
  test('bolts that have no room are a fault of the sheet, with the largest that has', () => {
    const faults = (mould: Part): readonly { path: string; rule: string }[] => designWith(withMould(mould)).mouldFaults, [fault] = faults({ bolt: 13 });
    expect(fault!.path).toBe('making.mould.bolt');
    expect(faults({ bolt: Number(/at most ([\d.]+) mm/.exec(fault!.rule)![1]) })).toEqual([]);
    expect(faults({ bolt: 13, closing: 'clamps' })).toEqual([]);
    expect(faults({ rim: 10, dowel: 4 })).toEqual([]);
  });
});

describe('a toe beside the plane that parts the halves', () => {
  const split = (last: Part, order: Part = {}): Finding[] => designWith({ left: { last, order }, right: undefined, making: { chordGap: 0.1, mould: { split: true, shrink: { length: 0, width: 0, height: 0 } } } }).findings.filter(({ code }) => code === 'MOULD_HOOK');
  test('is held by the half that reaches round it, as far as lines across the shoe find mould and then cast', () => {
    for (const last of [{ inflare: 9 }, { inflare: 9, toeShape: 'oblique' }]) {
      const [found] = split(last), shape = partsOf(designWith({ left: { last }, right: undefined }).shoes[0]!)!.shape;
      const ring = Array.from({ length: 1200 }, (_, i) => pointAlong(shape.edge, (i / 1200) * shape.edge.length));
      // Slow judge: at each place along, from the parting plane to the inner side; held where the cast comes after the mould.
      const held = (x: number): boolean => { const inside = Array.from({ length: 60 }, (_, i) => isIn(ring, [x, -0.01 - i])); return inside.some((now, i) => now && inside.slice(0, i).includes(false)); };
      const places = Array.from({ length: 130 }, (_, i) => 269 + i * 0.1).filter(held);
      expect(found).toMatchObject({ severity: 'warn', side: 'left', where: 'toe' });
      expect(found!.text).toContain('to the inner side');
      expect(Math.abs(places.length * 0.1 - found!.measured!)).toBeLessThan(0.3);
    }
  });
  test('is none on the long axis, nor in a cavity of one piece', () => {
    expect(split({ inflare: 0 })).toEqual([]);
    expect(designWith({ left: { last: { inflare: 9 } }, making: { mould: {} } }).findings.map(({ code }) => code)).not.toContain('MOULD_HOOK');
  });
});

/** Counts how often a ray to the side crosses a closed line. */
const isIn = (line: readonly Point[], [x, y]: Point): boolean =>
  line.filter(([ax, ay], i) => { const [bx, by] = line[(i + 1) % line.length]!; return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay); }).length % 2 === 1;
