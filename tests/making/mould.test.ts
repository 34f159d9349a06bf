import { beforeAll, describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { boundsOf, faultsOf, stretched, vertexAt, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point3 } from '../../src/geometry/point.ts';
import { pointAlong } from '../../src/geometry/path.ts';
import type { Fault } from '../../src/fitting/faults.ts';
import type { MouldOrder } from '../../src/fitting/making.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { mouldRows, type MouldRow } from '../../src/making/cavity.ts';
import type { Pair, Shoe } from '../../src/pair/shoe.ts';
import { fillShell, mouldOf } from '../../src/making/mould.ts';
import { mouldFaults } from '../../src/making/mouldFaults.ts';
import { baseOf, holes, jointRooms } from '../../src/making/places.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { meetSurface, wallLine } from '../../src/solid/wall.ts';
import { foamFace, sweptSurface, upperSurface } from '../../src/solid/soleShape.ts';
import { shapes, withLast, withOrder, workedCase } from '../support/cases.ts';

const order: MouldOrder = {
  part: 'foam body', cast: { name: 'self-skinning PU', density: 0.5, densityBasis: 'as on the sheet', shrinkBasis: 'as on the sheet' }, by: 'routed', closing: 'clamps', bolt: 6.6, ledge: 20,
  draft: degrees(3), shrink: [1.012, 1.012, 1.02], rim: 20, floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false,
};
const flared = 'tapered heel, flared outside, uneven edge';
const gap = 0.05;

let booleans: Booleans;
beforeAll(async () => { booleans = await loadBooleans(); });

const madeOf = (given: RockerCase) => { const { shape, bodies } = soleFrom(given); return { shape, bodies, solids: solidsOf(bodies, gap) }; };
const partsOf = (name: string) => madeOf(shapes[name]!);

describe.each(Object.keys(shapes).filter((name) => name !== flared))('the mould of %s', (name) => {
  const parts = partsOf(name);

  test('cavity and lid are closed skins with the outside out', () => {
    const { cavity, lid } = mouldOf(parts, order, gap, booleans);
    expect(cavity.map((half) => half.name)).toEqual(['cavity']);
    for (const mesh of [...cavity, ...lid].map((piece) => piece.mesh)) expect(faultsOf(mesh)).toEqual([]);
  });

  test('is filled by the stretched part and the wedge of the draft, within 0.2 %', () => {
    const { fill, part, wedge } = mouldOf(parts, order, gap, booleans);
    expect(part).toBeCloseTo(volumeOf(stretched(parts.solids.foam, order.shrink)), 6);
    expect(wedge).toBeGreaterThan(0);
    expect(Math.abs(fill / (part + wedgeByHand(parts.shape, order)) - 1)).toBeLessThan(0.002);
  });

  test('holds no wall steeper than the draft, and no undercut', () => {
    for (const lean of wallLeans(fillShell(mouldRows(parts.bodies.foam, gap, order)))) expect(lean).toBeGreaterThanOrEqual(order.draft - 1e-9);
  });

  test('rim and lid lie on each other: block and hollow add up', () => {
    const plain = { ...order, dowel: 0.001, pourHole: 0.001, ventHole: 0.001 };
    const { cavity, lid, fill } = mouldOf(parts, plain, gap, booleans);
    const closed = boundsOf(lid[0]!.mesh).most[2] - boundsOf(cavity[0]!.mesh).least[2];
    const block = planArea(cavity[0]!.mesh) * closed;
    expect(Math.abs(volumeOf(cavity[0]!.mesh) + volumeOf(lid[0]!.mesh) + fill - block) / block).toBeLessThan(1e-5);
  });
});

test('without draft or shrink the hollow is the part itself', () => {
  const parts = partsOf('worked'), { fill, part, wedge } = mouldOf(parts, { ...order, draft: 0, shrink: [1, 1, 1] }, gap, booleans);
  expect(part).toBeCloseTo(volumeOf(parts.solids.foam), 6);
  expect(wedge / part).toBeLessThan(1e-4);
  expect(fill / part).toBeCloseTo(1, 4);
});

test('a flared sole comes in two closed halves that part along the long axis', () => {
  const parts = partsOf(flared), { cavity, lid, wedge, part } = mouldOf(parts, { ...order, split: true, part: 'whole sole' }, gap, booleans);
  expect(cavity.map((half) => half.name)).toEqual(['cavity-inner', 'cavity-outer']);
  for (const mesh of [...cavity, ...lid].map((piece) => piece.mesh)) expect(faultsOf(mesh)).toEqual([]);
  expect(boundsOf(cavity[0]!.mesh).most[1]).toBeCloseTo(0, 4);
  expect(boundsOf(cavity[1]!.mesh).least[1]).toBeCloseTo(0, 4);
  expect(Math.abs(wedge / part)).toBeLessThan(1e-4);
});

test('dowels, pour hole and vents go right through', () => {
  const lid = mouldOf(partsOf('worked'), order, gap, booleans).lid[0]!.mesh;
  // Seven holes through one lid: Euler's number of a closed skin is 2 - 2 x holes.
  const edges = lid.triangles.length / 2;
  expect(lid.positions.length / 3 - edges + lid.triangles.length / 3).toBe(2 - 2 * 7);
});

/** The wedge between the part's wall and the leaning one: a triangle of depth squared times the lean over two, carried round. */
function wedgeByHand(shape: ReturnType<typeof partsOf>['shape'], { draft, shrink: [fx, fy, fz] }: MouldOrder): number {
  const top = upperSurface(shape, shape.stiffener), under = sweptSurface(foamFace(shape), shape.line), steps = 4000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const w = (i * shape.edge.length) / steps, wall = wallLine(shape, w), next = pointAlong(shape.edge, ((i + 1) * shape.edge.length) / steps);
    const [, , z] = meetSurface(wall, top), bottom = meetSurface(wall, under), depth = (z - bottom[2]) * fz;
    const run = Math.max(0, Math.tan(draft) - wall.run);
    sum += ((depth * depth * run) / 2) * Math.hypot((next[0] - wall.top[0]) * fx, (next[1] - wall.top[1]) * fy);
  }
  return sum;
}

/** Lean of each facet of the walls, those that are neither floor nor face unless told: its angle off upright, positive when it opens upwards. */
function wallLeans(mesh: Mesh, isWall = (_: readonly Point3[], up: number): boolean => Math.abs(up) < 0.25): number[] {
  const leans: number[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertexAt(mesh, mesh.triangles[i + k]!)) as [Point3, Point3, Point3];
    const u = b.map((value, k) => value - a[k as 0]!), v = c.map((value, k) => value - a[k as 0]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const size = Math.hypot(...n), up = n[2]! / size;
    if (size > 1e-6 && isWall([a, b, c], up)) leans.push(Math.asin(-up));
  }
  return leans;
}

/** Area of the level base, seen from above. */
function planArea(mesh: Mesh): number {
  const base = boundsOf(mesh).least[2];
  let twice = 0;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertexAt(mesh, mesh.triangles[i + k]!)) as [Point3, Point3, Point3];
    if ([a, b, c].every((point) => Math.abs(point[2]! - base) < 1e-4)) twice += Math.abs((b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!));
  }
  return twice / 2;
}

/** Points along a line of the mould, both sides, a quarter of a millimetre apart or less. */
const sampledRound = (rows: readonly MouldRow[], on: 'open' | 'border' | 'edge'): Point3[] => (['inner', 'outer'] as const).flatMap((side) => rows.slice(1).flatMap((row, i) => {
  const a = rows[i]![side][on], b = row[side][on], count = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) * 4) + 1;
  return Array.from({ length: count + 1 }, (_, k): Point3 => [a[0] + ((b[0] - a[0]) * k) / count, a[1] + ((b[1] - a[1]) * k) / count, a[2] + ((b[2] - a[2]) * k) / count]);
}));

describe('a mould that cannot be is refused before anything is made', () => {
  const pairOf = (parts: ReturnType<typeof partsOf>, mould: MouldOrder, units: 'mm' | 'in' = 'mm'): Pair =>
    ({ fitting: { units, making: { chordGap: gap, mould } }, shoes: [{ kind: 'rocker', side: 'left', ...parts } as unknown as Shoe] }) as unknown as Pair;
  const worked = partsOf('worked'), flares = partsOf(flared);
  const faults = (change: Partial<MouldOrder>, parts = worked, units: 'mm' | 'in' = 'mm'): Fault[] => mouldFaults(pairOf(parts, { ...order, ...change }, units));
  const most = ([fault]: Fault[]): number => Number(/must be at most ([\d.]+)/.exec(fault!.rule)![1]);
  const paths = (found: Fault[]): string[] => found.map(({ path }) => path);
  const closed = (change: Partial<MouldOrder>, parts = worked): void => {
    const { cavity, lid } = mouldOf(parts, { ...order, ...change }, gap, booleans);
    for (const mesh of [...cavity, ...lid].map((piece) => piece.mesh)) expect(faultsOf(mesh)).toEqual([]);
  };

  test('an ordinary one is not', () => expect(faults({})).toEqual([]));

  test('walls that flare, with the angle and the way out', () => {
    const [fault] = faults({}, flares);
    expect(fault!.path).toBe('making.mould.split');
    expect(fault!.text).toMatch(/flares out by 8\.0°.*split to true/);
    expect(faults({ split: true }, flares)).toEqual([]);
  });

  test('a rim wider than the hollow of the waist, with the widest that works', () => {
    const found = faults({ rim: 400 });
    expect(paths(found)).toEqual(['making.mould.rim']);
    closed({ rim: most(found) });
    expect(faults({ rim: most(found) })).toEqual([]);
  });

  test('a dowel wider than its rim, with the widest dowel and the rim it needs', () => {
    const [fault] = faults({ rim: 5, dowel: 30 });
    expect([fault!.path, fault!.value]).toEqual(['making.mould.dowel', '30']);
    expect(fault!.text).toMatch(/has no room on the rim.*3 mm of wall on both sides; this dowel needs a rim of 36 mm/);
    expect(faults({ rim: 36, dowel: 30 })).toEqual([]);
    const found = faults({ rim: 14, dowel: 8.1 });
    expect(most(found)).toBe(8);
    expect(faults({ rim: 14, dowel: 8 })).toEqual([]);
  });

  test('in inches on a sheet in inches, and what it names works there', () => {
    const [fault] = faults({ rim: 20, dowel: 25.4 }, worked, 'in');
    expect(fault!.rule).toBe('must be at most 0.55 in');
    expect(fault!.text).toMatch(/got 1\..*rim of 0.79 in with 0.12 in of wall.*needs a rim of 1.24 in/);
    expect(fault!.text).not.toContain('mm');
    expect(faults({ rim: 20, dowel: 0.55 * 25.4 }, worked, 'in')).toEqual([]);
  });

  test('a dowel too thick for rim and joint alike is told once, with the lesser room', () => {
    expect(paths(faults({ split: true, rim: 16, floor: 3, dowel: 14 }, flares))).toEqual(['making.mould.dowel']);
  });
  test('a dowel across the joint needs 3 mm above, below and towards the cavity', () => {
    const low = { split: true, rim: 60, floor: 3, dowel: 30 }, found = faults(low, flares);
    expect(paths(found)).toEqual(['making.mould.dowel']);
    const dowel = most(found);
    expect(faults({ ...low, dowel }, flares)).toEqual([]);
    expect(paths(faults({ ...low, dowel: dowel + 0.2 }, flares))).toEqual(['making.mould.dowel']);
    const rows = mouldRows(flares.bodies.foam, gap, { ...order, ...low, dowel }), base = baseOf(rows, { ...order, ...low });
    // Slow judge: no point of cavity or border, and no rim above the bar, nearer than 3 mm to the bar's skin.
    const open = sampledRound(rows, 'open'), border = sampledRound(rows, 'border').filter(([, y]) => Math.abs(y) < 0.5);
    for (const { end, x, z } of jointRooms(rows, base)) {
      const way = end === 'heel' ? -1 : 1;
      expect(Math.min(...open.map((at) => way * (x - at[0])))).toBeGreaterThan(dowel / 2 + 3 - 0.06);
      expect(Math.max(...border.map((at) => way * (at[0] - x)))).toBeGreaterThan(dowel / 2 + 3 - 0.06);
      expect(z - base).toBeGreaterThan(dowel / 2 + 3 - 0.06);
      const over = sampledRound(rows, 'border').filter((at) => way * (at[0] - x) > -dowel / 2);
      expect(Math.min(...over.map((at) => at[2] - z))).toBeGreaterThan(dowel / 2 + 3 - 0.06);
    }
    closed({ ...low, dowel }, flares);
  });

  test.each(['pourHole', 'ventHole'] as const)('a %s that runs over the edge of the face, with the widest that does not', (field) => {
    const found = faults({ [field]: field === 'pourHole' ? 80 : 60 });
    expect(paths(found)).toEqual([`making.mould.${field}`]);
    const widest = most(found), rows = mouldRows(worked.bodies.foam, gap, order), edge = sampledRound(rows, 'edge');
    const where = field === 'pourHole' ? [holes(rows, order)[0]] : holes(rows, order).slice(1);
    const room = Math.min(...where.flatMap(({ at }) => edge.map((point) => Math.hypot(point[0] - at[0], point[1] - at[1]))));
    expect(Math.abs(room - widest / 2 - 3)).toBeLessThan(0.06);
    expect(paths(faults({ [field]: widest, ...(field === 'ventHole' ? { pourHole: 2 } : {}) }))).toEqual([]);
  });

  test('a pour hole that runs into the vent beside it', () => {
    const wide = madeOf(withLast(workedCase, { heelWidth: 94, ballWidth: 104 })), vent = most(faults({ ventHole: 60 }, wide)), pour = most(faults({ pourHole: 120, ventHole: 2 }, wide));
    const found = faults({ pourHole: pour, ventHole: vent }, wide);
    expect(paths(found)).toEqual(['making.mould.pourHole']);
    expect(faults({ pourHole: most(found), ventHole: vent }, wide)).toEqual([]);
    const [one, other] = holes(mouldRows(wide.bodies.foam, gap, order), order);
    expect(Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]) - (most(found) + vent) / 2).toBeGreaterThan(3 - 1e-6);
  });

  test('a draft too great for a steep ground line, with the greatest that works', () => {
    const steep = madeOf(withOrder(workedCase, { toe: { rule: 'for-toe-off', toeOff: degrees(75) }, apexX: 200 })), asked = degrees(45), found = faults({ draft: asked }, steep);
    expect(paths(found)).toEqual(['making.mould.draft']);
    expect(found[0]!.text).toMatch(/must be at most \d+(\.\d)? °; got 45\. The ground line of the left sole is too steep/);
    const draft = degrees(most(found));
    expect(faults({ draft }, steep)).toEqual([]);
    const rows = mouldRows(steep.bodies.foam, gap, { ...order, draft }), stations = rows.flatMap(({ inner, outer }) => [inner, outer]);
    const key = (point: Point3): string => point.map((value) => value.toFixed(6)).join(' '), top = new Set(stations.map(({ open }) => key(open))), foot = new Set(stations.map(({ bottom }) => key(bottom)));
    const leans = wallLeans(fillShell(rows), (corners) => corners.some((point) => top.has(key(point))) && corners.some((point) => foot.has(key(point))));
    expect(leans.length).toBeGreaterThan(100);
    for (const lean of leans) expect(lean).toBeGreaterThanOrEqual(draft - 1e-9);
    expect(paths(faults({ draft: draft + degrees(0.1) }, steep))).toEqual(['making.mould.draft']);
    expect(() => mouldRows(steep.bodies.foam, gap, { ...order, draft: asked })).toThrow(/draft of 45/);
    expect(faults({ draft: asked, split: true }, steep)).toEqual([]);
  });
});
