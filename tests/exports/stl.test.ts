import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stlBytes } from '../../src/exports/stl.ts';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import { boundsOf, faultsOf, mirrored, triangleCount, vertexAt, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point3 } from '../../src/geometry/point.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { toGeom3 } from '../../src/solid/jscad.ts';
import { designOf, JOBS } from './jobs.ts';

const { serialize } = createRequire(import.meta.url)('@jscad/stl-serializer') as { serialize: (options: object, ...solids: unknown[]) => ArrayBuffer[] };

const MESHES = Object.entries(JOBS).flatMap(([name, fitting]) => designOf(fitting).shoes.flatMap((shoe) =>
  Object.entries(partsOf(shoe)?.solids ?? {}).map(([part, mesh]) => ({ name: `${name} ${shoe.side} ${part}`, mesh: shoe.side === 'right' ? mirrored(mesh) : mesh }))));

/** A box as six faces of two triangles, counter-clockwise from outside. */
function box([w, d, h]: Point3): Mesh {
  const positions = Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [i & 1 ? w : 0, i & 2 ? d : 0, i & 4 ? h : 0]));
  return { positions, triangles: Uint32Array.from([0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5]) };
}

/* A reader of its own, straight from the format. */
function read(bytes: Uint8Array): { count: number; triangles: { normal: Point3; corners: [Point3, Point3, Point3] }[] } {
  const view = new DataView(bytes.buffer, bytes.byteOffset), count = view.getUint32(80, true);
  const point = (at: number): Point3 => [view.getFloat32(at, true), view.getFloat32(at + 4, true), view.getFloat32(at + 8, true)];
  return { count, triangles: Array.from({ length: count }, (_, i) => { const at = 84 + 50 * i; return { normal: point(at), corners: [point(at + 12), point(at + 24), point(at + 36)] }; }) };
}
const apart = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('binary STL', () => {
  test.each(MESHES)('$name: 84 bytes and 50 a triangle, nothing moved, closed when read back', ({ mesh, name }) => {
    const bytes = stlBytes(mesh, name), { count, triangles } = read(bytes);
    expect(bytes.length).toBe(84 + 50 * triangleCount(mesh));
    expect(count).toBe(triangleCount(mesh));
    const worst = Math.max(...triangles.flatMap(({ corners }, i) => corners.map((corner, k) => apart(corner, vertexAt(mesh, mesh.triangles[3 * i + k]!)))));
    // A float32 near 300 mm has steps of 0.00003 mm.
    expect(worst).toBeLessThan(4e-5);
    expect(faultsOf(weldedStl(bytes))).toEqual([]);
    expect(volumeOf(weldedStl(bytes))).toBeCloseTo(volumeOf(mesh), 0);
  });

  test('the header names part and unit and cannot be taken for a text file', () => {
    const header = (name: string): string => String.fromCharCode(...stlBytes(box([1, 2, 3]), name).subarray(0, 80));
    expect(header('K-204_left_sole')).toBe('mm K-204_left_sole'.padEnd(80));
    expect(header('solid-1_left_sole')).toMatch(/^mm solid-1_left_sole/);
    expect(header('Größe')).toBe('mm Gr??e'.padEnd(80));
    expect(header('x'.repeat(200))).toHaveLength(80);
  });

  test('normals are of length one and point outwards', () => {
    const { triangles } = read(stlBytes(box([10, 20, 30]), 'box'));
    for (const { normal, corners: [a, b, c] } of triangles) {
      expect(Math.hypot(...normal)).toBeCloseTo(1, 6);
      const middle = [0, 1, 2].map((k) => (a[k]! + b[k]! + c[k]!) / 3), outwards = [5, 10, 15].map((centre, k) => (middle[k]! - centre) * normal[k]!);
      expect(outwards.reduce((sum, x) => sum + x)).toBeGreaterThan(0);
    }
  });

  test('no number is minus nought, which some readers take for another point', () => {
    const shifted = box([4, 4, 4]);
    const { triangles } = read(stlBytes({ ...shifted, positions: shifted.positions.map((x) => (x === 0 ? -1e-9 : x)) }, 'box'));
    expect(triangles.flatMap(({ corners }) => corners.flat()).some((x) => Object.is(x, -0))).toBe(false);
  });

  test('a mesh that would not be closed never leaves', () => {
    const open = box([1, 2, 3]);
    expect(() => stlBytes({ ...open, triangles: open.triangles.slice(3) }, 'K-1_left_sole')).toThrow(/K-1_left_sole would not be closed.*3 edges are open/);
    expect(() => stlBytes({ ...open, triangles: open.triangles.slice().reverse() }, 'x')).toThrow(/inside out/);
    expect(() => stlBytes(open, 'x')).not.toThrow();
  });

  test('an edge too short for the file closes up, its two triangles fall away', () => {
    const { positions, triangles } = box([1, 2, 3]), near = Float64Array.from([...positions, 1 - 1e-9, 0, 0]);
    // On the front face corner 1 has a twin, a millionth of a thousandth of a mm away, with two slivers between them.
    const sliver = { positions: near, triangles: Uint32Array.from([...triangles].map((vertex, i) => (i === 13 || i === 15 ? 8 : vertex)).concat([0, 1, 8, 8, 1, 5])) };
    expect(faultsOf(sliver)).toEqual([]);
    const bytes = stlBytes(sliver, 'box');
    expect(bytes.length).toBe(84 + 50 * 12);
    expect(faultsOf(weldedStl(bytes))).toEqual([]);
  });

  test('the same mesh gives the same bytes', () => {
    const { mesh } = MESHES[0]!;
    expect(stlBytes(mesh, 'a')).toEqual(stlBytes(mesh, 'a'));
  });
});

describe('against @jscad/stl-serializer', () => {
  /** The serializer sets corners to a grid of 1e-5 of the mean of the three sizes; half a step each way, along three axes. */
  const snap = (mesh: Mesh): number => { const { least, most } = boundsOf(mesh); return 1e-5 * ((most[0] - least[0] + most[1] - least[1] + most[2] - least[2]) / 3); };

  test.each(MESHES)('$name: the same triangles in the same order, within its snapping', ({ mesh, name }) => {
    const theirs = Buffer.concat(serialize({ binary: true }, toGeom3(mesh)).map((buffer) => Buffer.from(buffer)));
    const own = read(stlBytes(mesh, name)), other = read(theirs);
    expect(own.count).toBe(other.count);
    const worst = Math.max(...own.triangles.flatMap(({ corners }, i) => corners.map((corner, k) => apart(corner, other.triangles[i]!.corners[k]!))));
    expect(worst).toBeLessThan(snap(mesh) * 0.87);
    expect(worst).toBeGreaterThan(1e-5);
  });
});

test('any box of any size comes back whole', () => {
  const size = fc.double({ min: 0.01, max: 400, noNaN: true });
  fc.assert(fc.property(size, size, size, (w, d, h) => {
    const mesh = box([w, d, h]), back = weldedStl(stlBytes(mesh, 'box'));
    expect(back.positions).toHaveLength(24);
    expect(Math.abs(volumeOf(back) / volumeOf(mesh) - 1)).toBeLessThan(1e-3);
  }), { seed: 20250301, numRuns: 100 });
});
