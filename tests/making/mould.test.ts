import { beforeAll, describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { boundsOf, faultsOf, stretched, vertexAt, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point3 } from '../../src/geometry/point.ts';
import { pointAlong } from '../../src/geometry/path.ts';
import type { MouldOrder } from '../../src/fitting/fitting.ts';
import { loadBooleans, type Booleans } from '../../src/making/booleans.ts';
import { mouldRows } from '../../src/making/cavity.ts';
import type { Shoe } from '../../src/pair/shoe.ts';
import { fillShell, mouldFaults, mouldOf } from '../../src/making/mould.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { meetSurface, wallLine } from '../../src/solid/wall.ts';
import { foamFace, sweptSurface, upperSurface } from '../../src/solid/soleShape.ts';
import { shapes } from '../support/cases.ts';

const order: MouldOrder = { part: 'foam body', draft: degrees(3), shrink: [1.012, 1.012, 1.02], rim: 20, floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false };
const flared = 'tapered heel, flared outside, uneven edge';
const gap = 0.05;

let booleans: Booleans;
beforeAll(async () => { booleans = await loadBooleans(); });

const partsOf = (name: string) => { const { shape, bodies } = soleFrom(shapes[name]!); return { shape, bodies, solids: solidsOf(bodies, gap) }; };

describe.each(Object.keys(shapes).filter((name) => name !== flared))('the mould of %s', (name) => {
  const parts = partsOf(name);

  test('cavity and lid are closed skins with the outside out', () => {
    const { cavity, lid } = mouldOf(parts, order, gap, booleans);
    expect(cavity.map((half) => half.name)).toEqual(['cavity']);
    for (const mesh of [lid, ...cavity.map((half) => half.mesh)]) expect(faultsOf(mesh)).toEqual([]);
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
    const closed = boundsOf(lid).most[2] - boundsOf(cavity[0]!.mesh).least[2];
    const block = planArea(cavity[0]!.mesh) * closed;
    expect(Math.abs(volumeOf(cavity[0]!.mesh) + volumeOf(lid) + fill - block) / block).toBeLessThan(1e-5);
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
  for (const mesh of [lid, ...cavity.map((half) => half.mesh)]) expect(faultsOf(mesh)).toEqual([]);
  expect(boundsOf(cavity[0]!.mesh).most[1]).toBeCloseTo(0, 4);
  expect(boundsOf(cavity[1]!.mesh).least[1]).toBeCloseTo(0, 4);
  expect(Math.abs(wedge / part)).toBeLessThan(1e-4);
});

test('dowels, pour hole and vents go right through', () => {
  const { lid } = mouldOf(partsOf('worked'), order, gap, booleans);
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

/** Lean of each facet that is neither floor nor face: its angle off upright, positive when it opens upwards. */
function wallLeans(mesh: Mesh): number[] {
  const leans: number[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertexAt(mesh, mesh.triangles[i + k]!)) as [Point3, Point3, Point3];
    const u = b.map((value, k) => value - a[k as 0]!), v = c.map((value, k) => value - a[k as 0]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const size = Math.hypot(...n), up = n[2]! / size;
    if (size > 1e-6 && Math.abs(up) < 0.25) leans.push(Math.asin(-up));
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

describe('a mould that cannot be is refused before anything is made', () => {
  const shoe = (name: string): Shoe => ({ kind: 'rocker', side: 'left', ...partsOf(name) }) as unknown as Shoe;
  test('walls that flare, with the angle and the way out', () => {
    const [fault] = mouldFaults(shoe(flared), order);
    expect(fault!.path).toBe('making.mould.split');
    expect(fault!.text).toMatch(/flares out by 8\.0°.*split to true/);
    expect(mouldFaults(shoe(flared), { ...order, split: true })).toEqual([]);
    expect(mouldFaults(shoe('worked'), order)).toEqual([]);
  });
  test('a rim wider than the hollow of the waist, with the widest that works', () => {
    const [fault] = mouldFaults(shoe('worked'), { ...order, rim: 400 });
    expect(fault!.path).toBe('making.mould.rim');
    const widest = Number(/at most (\d+(?:\.\d)?) mm/.exec(fault!.rule)![1]);
    const parts = partsOf('worked'), { cavity } = mouldOf(parts, { ...order, rim: widest }, gap, booleans);
    expect(faultsOf(cavity[0]!.mesh)).toEqual([]);
    expect(mouldFaults(shoe('worked'), { ...order, rim: widest })).toEqual([]);
  });
});
