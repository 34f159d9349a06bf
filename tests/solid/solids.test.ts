import { describe, expect, test } from 'vitest';
import { CHORD_GAP } from '../../src/geometry/tolerances.ts';
import { boundsOf, faultsOf, mirrored, triangleCount, vertexAt, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';
import type { Point3 } from '../../src/geometry/point.ts';
import { endOf, heightAt, startOf, type GroundFace } from '../../src/profile/groundFace.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { solidsOf } from '../../src/solid/solids.ts';
import { foamFace, sweptSurface, upperSurface } from '../../src/solid/soleShape.ts';
import { volumeBySlices } from '../judges/columns.ts';
import { circleThrough } from '../judges/circle.ts';
import { shapes } from '../support/cases.ts';

const vertices = (mesh: Mesh): Point3[] => Array.from({ length: mesh.positions.length / 3 }, (_, i) => vertexAt(mesh, i));

describe.each(Object.entries(shapes))('the solids of %s', (_, given) => {
  const { shape, bodies, rocker } = soleFrom(given), solids = solidsOf(bodies, CHORD_GAP);
  const inner = foamFace(shape);

  test.each([0.3, 0.05, 0.02])('are closed skins with the outside out at a chord gap of %f', (gap) => {
    for (const mesh of Object.values(solidsOf(bodies, gap))) expect(faultsOf(mesh)).toEqual([]);
  });

  test('hold the volume of the exact shape within 0.2 %', () => {
    const ground = sweptSurface(shape.face, shape.line), under = sweptSurface(inner, shape.line);
    const exact = {
      whole: volumeBySlices(shape, upperSurface(shape, 0), ground, 2, 4),
      foam: volumeBySlices(shape, upperSurface(shape, shape.stiffener), under, 2, 4),
      outsole: volumeBySlices(shape, under, ground, 1, 4),
    };
    for (const part of ['whole', 'foam', 'outsole'] as const) expect(Math.abs(volumeOf(solids[part]) / exact[part] - 1)).toBeLessThan(0.002);
  }, 20_000);

  test('every vertex of the underside lies on the exact face', () => {
    for (const [mesh, face] of [[solids.whole, shape.face], [solids.foam, inner]] as const) {
      const off = undersideOf(mesh).map((point) => Math.abs(point[2] - heightAt(face, rollX(shape.line, [point[0], point[1]]))));
      expect(off.length).toBeGreaterThan(100);
      expect(Math.max(...off)).toBeLessThan(0.005);
    }
  });

  test('each arc gives back its radius from a cut square to the crest', () => {
    for (const [mesh, face] of [[solids.whole, shape.face], [solids.foam, inner]] as const) {
      for (const { found, radius, run } of radiiOf(mesh, face)) {
        const fine = radius > 400 ? 0.5 : 0.05;
        expect(Math.abs(found - radius)).toBeLessThan(Math.max(fine, (0.008 * radius * radius) / (run * run)));
      }
    }
  });

  test('is as thin as asked at the thinnest place, and nowhere thinner', () => {
    const { minimum, thickness } = rocker.thinnest;
    expect(thickness).toBeCloseTo(minimum, 6);
    const tops = vertices(solids.whole).filter((point) => Math.abs(point[2] - upperSurface(shape, 0)(point[0], point[1])) < 1e-9);
    const thicknesses = tops.map(([x, y, z]) => z - heightAt(shape.face, rollX(shape.line, [x, y])));
    expect(Math.min(...thicknesses)).toBeGreaterThan(Math.min(...Object.values(given.order.minima)) - 0.02);
  });

  test('a right shoe holds the same and is its mirror image', () => {
    const right = mirrored(solids.foam);
    expect(faultsOf(right)).toEqual([]);
    expect(volumeOf(right)).toBeCloseTo(volumeOf(solids.foam), 5);
    expect(boundsOf(right).least[1]).toBeCloseTo(-boundsOf(solids.foam).most[1], 12);
  });

  /** Cut near the middle: rows are straight across, so their ends interpolate exactly. */
  function radiiOf(mesh: Mesh, face: GroundFace): Array<{ found: number; radius: number; run: number }> {
    const rows = rowsAcross(mesh, face);
    return face.pieces.flatMap((piece) => {
      if (piece.kind !== 'arc') return [];
      const [from] = startOf(piece), [to] = endOf(piece);
      const points = rows.filter(([s]) => s >= from - 1e-7 && s <= to + 1e-7), run = piece.radius * (piece.to - piece.from);
      return run < 15 || points.length < 4 ? [] : [{ found: circleThrough(points).radius, radius: piece.radius, run }];
    });
  }

  /** Way along the walking line and height of each row of the underside. */
  function rowsAcross(mesh: Mesh, face: GroundFace): Array<readonly [number, number]> {
    const rows = new Map<string, readonly [number, number]>();
    for (const [x, y, z] of vertices(mesh)) {
      const s = rollX(shape.line, [x, y]);
      if (Math.abs(z - heightAt(face, s)) < 1e-6) rows.set(s.toFixed(6), [s, z]);
    }
    return [...rows.values()].sort((a, b) => a[0] - b[0]);
  }

  function undersideOf(mesh: Mesh): Point3[] {
    const found = new Map<number, Point3>();
    const { triangles: t } = mesh;
    for (let i = 0; i < t.length; i += 3) {
      const [a, b, c] = [vertexAt(mesh, t[i]!), vertexAt(mesh, t[i + 1]!), vertexAt(mesh, t[i + 2]!)];
      const up = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      const size = Math.hypot((b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1]), (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]), up);
      if (up / size < -0.3) for (const k of [0, 1, 2]) found.set(t[i + k]!, vertexAt(mesh, t[i + k]!));
    }
    return [...found.values()];
  }
});

test('finer gaps give more facets and a volume that settles', () => {
  const { bodies } = soleFrom(shapes['cambered last']!);
  const [coarse, fine, finest] = [0.2, 0.05, 0.01].map((gap) => solidsOf(bodies, gap).whole);
  expect(triangleCount(coarse!)).toBeLessThan(triangleCount(fine!));
  /** Hollow and round facets err in opposite ways, so the errors are bounded, not ordered. */
  const off = (mesh: Mesh): number => Math.abs(volumeOf(mesh) / volumeOf(finest!) - 1);
  expect(off(coarse!)).toBeLessThan(4e-4);
  expect(off(fine!)).toBeLessThan(1e-4);
});
