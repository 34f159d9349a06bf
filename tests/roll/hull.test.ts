import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../src/geometry/mesh.ts';
import type { Point } from '../../src/geometry/point.ts';
import { degrees } from '../../src/geometry/units.ts';
import { rollLine } from '../../src/profile/rollLine.ts';
import { carriedBy } from '../../src/roll/carried.ts';
import { hullBody, silhouetteOf } from '../../src/roll/hull.ts';
import { dropAcross, jumpsOf } from '../../src/roll/jumps.ts';
import { rollBodyOf } from '../../src/roll/ofSole.ts';
import { anglesCovered, contactAt, cornersOf, edgesOf, placedAt, travelled } from '../../src/roll/rollBody.ts';
import { CHORD_GAP } from '../../src/geometry/tolerances.ts';
import { ROLLED, rockersOf } from './support.ts';

describe.each(Object.keys(ROLLED))('the exported sole of the %s, rolled on its facets', (name) => {
  test.each(rockersOf(name).map((shoe) => [shoe.side, shoe] as const))('%s: as the exact one', (_, shoe) => {
    const exact = rollBodyOf(shoe), carried = carriedBy(shoe), { from, to } = anglesCovered(exact), { whole } = shoe.solids;
    const hull = hullBody(silhouetteOf(whole, shoe.rocker.line)), longest = Math.max(...edgesOf(hull).map((edge) => edge.to[0] - edge.from[0]));
    const off = { height: 0, contact: 0, way: 0 };
    for (let roll = from - 0.2; roll < to + 0.2; roll += 0.031) {
      for (const point of [carried.pivot, carried.hip]) off.height = Math.max(off.height, Math.abs(placedAt(hull, point, roll)[1] - placedAt(exact, point, roll)[1]));
      off.contact = Math.max(off.contact, Math.abs(contactAt(hull, roll)[0] - contactAt(exact, roll)[0]));
      off.way = Math.max(off.way, Math.abs(travelled(hull, roll) - travelled(exact, roll)));
    }
    expect([off.height < CHORD_GAP + 1e-6, off.contact < longest / 2 + 1e-6, off.way < longest + 0.1, off.contact > 0.1]).toEqual([true, true, true, true]);
    expect(jumpsOf(hull, whole, shoe.rocker.line)).toEqual([]);
  });
});

/** A wall of facets under an upper face at 60, of an underside in the side view; its ends are left open, which no rolling sees. */
function strip(under: readonly Point[]): Mesh {
  const positions: number[] = [], triangles: number[] = [];
  for (const [x, z] of under) for (const [y, up] of [[-30, z], [30, z], [-30, 60], [30, 60]] as const) positions.push(x, y, up);
  for (let i = 0; i + 1 < under.length; i++) for (const [a, b] of [[0, 1], [3, 2], [2, 0], [1, 3]] as const) {
    const p = i * 4 + a, q = i * 4 + b;
    triangles.push(p, p + 4, q, q, p + 4, q + 4);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A mid arc of 900 under the hip from -60 to 60 with a waist of 50 mm cut 6 mm up into it. */
const arc = (x: number): number => 900 - Math.sqrt(900 * 900 - x * x);
const waisted = (rear: number, front: number): Mesh => strip([
  ...Array.from({ length: 61 }, (_, i): Point => [-60 + ((rear + 60) * i) / 60, arc(-60 + ((rear + 60) * i) / 60)]), [rear + 0.001, 8], [front - 0.001, 8],
  ...Array.from({ length: 61 }, (_, i): Point => [front + ((60 - front) * i) / 60, arc(front + ((60 - front) * i) / 60)]),
]);

describe('a waist cut out of a mid arc of 900', () => {
  const line = rollLine(0, Math.PI / 2);
  test('of 50 mm under the hip is one jump of 50 mm, and the hip dips by the arc it misses: 0.347 mm', () => {
    const mesh = waisted(-25, 25), body = hullBody(silhouetteOf(mesh, line)), [jump, ...others] = jumpsOf(body, mesh, line);
    expect(others).toEqual([]);
    expect([jump!.length, jump!.bridge.angle]).toEqual([expect.closeTo(50, 6), expect.closeTo(0, 9)]);
    expect(jump!.deep).toBeCloseTo(8 - arc(25), 6);
    // Sagitta of a chord of 50 on a circle of 900.
    expect(dropAcross(body, jump!, [0, 900])).toBeCloseTo(900 - Math.sqrt(900 ** 2 - 25 ** 2), 6);
    expect(dropAcross(body, jump!, [0, 900])).toBeCloseTo(0.347, 3);
  });
  test('ahead of the hip it is fallen across at the slope of its bridge, and dips as much', () => {
    const mesh = waisted(10, 50), body = hullBody(silhouetteOf(mesh, line)), [jump] = jumpsOf(body, mesh, line);
    expect(jump!.bridge.angle).toBeCloseTo(Math.atan2(arc(50) - arc(10), 40), 9);
    expect(dropAcross(body, jump!, [0, 900])).toBeCloseTo(900 - Math.sqrt(900 ** 2 - (jump!.length / 2) ** 2), 5);
    expect(dropAcross(body, jump!, [-200, 900])).toBe(0);
  });
  test('facets alone are no gap', () => { const mesh = waisted(-1e-3, 1e-3); expect(jumpsOf(hullBody(silhouetteOf(mesh, line)), mesh, line)).toEqual([]); });
});

test('a square block stands on its edge and turns over its corners; its walls count', () => {
  const body = hullBody([[0, 0], [100, 0], [0, 30], [100, 30], [-5, 30]]);
  expect(edgesOf(body)).toHaveLength(2);
  expect(cornersOf(body).map(({ at }) => at)).toEqual([[-5, 30], [0, 0], [100, 0]]);
  expect(placedAt(body, [0, 30], degrees(-30))[1]).toBeCloseTo(30 * Math.cos(degrees(30)), 9);
});
