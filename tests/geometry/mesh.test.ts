import { describe, expect, test } from 'vitest';
import { boundsOf, faultsOf, mirrored, stretched, volumeOf, type Mesh } from '../../src/geometry/mesh.ts';

/** The cube printed in the 3MF core specification 1.4, appendix B.2; its volume is 39.998 x 40 x 39.998 = 63993.6002 mm³. */
const [a, b] = [100, 100 + 39.998], h = 40;
const cube: Mesh = {
  positions: Float64Array.from([a, a, 0, b, a, 0, b, b, 0, a, b, 0, a, a, h, b, a, h, b, b, h, a, b, h]),
  triangles: Uint32Array.from([3, 2, 1, 1, 0, 3, 4, 5, 6, 6, 7, 4, 0, 1, 5, 5, 4, 0, 1, 2, 6, 6, 5, 1, 2, 3, 7, 7, 6, 2, 3, 0, 4, 4, 7, 3]),
};

test('the cube of the 3MF specification holds 63993.6002 mm³', () => {
  expect(volumeOf(cube)).toBeCloseTo(39.998 * h * 39.998, 6);
  expect(volumeOf(cube)).toBeCloseTo(63993.6002, 3);
  expect(faultsOf(cube)).toEqual([]);
});

test('its mirror image holds the same, stretched by 2, 3, 4 it holds 24 times as much', () => {
  expect(volumeOf(mirrored(cube))).toBeCloseTo(volumeOf(cube), 6);
  expect(boundsOf(mirrored(cube)).most[1]).toBe(-a);
  expect(volumeOf(stretched(cube, [2, 3, 4])) / volumeOf(cube)).toBeCloseTo(24, 9);
  expect(() => stretched(cube, [1, -1, 1])).toThrow(/greater than 0/);
});

describe('the gate says what is wrong with', () => {
  const without = (skip: number): Uint32Array => cube.triangles.filter((_, i) => Math.floor(i / 3) !== skip);
  const flip = (index: number): Uint32Array => { const t = cube.triangles.slice(); [t[index * 3 + 1], t[index * 3 + 2]] = [t[index * 3 + 2]!, t[index * 3 + 1]!]; return t; };
  test.each<readonly [string, Mesh, RegExp]>([
    ['a hole', { ...cube, triangles: without(4) }, /edges are open/],
    ['one triangle turned over', { ...cube, triangles: flip(4) }, /more than two|open/],
    ['all turned over', { ...cube, triangles: Uint32Array.from([...cube.triangles].reverse()) }, /inside out/],
    ['a triangle twice', { ...cube, triangles: Uint32Array.from([...cube.triangles, 3, 2, 1]) }, /more than two/],
    ['a collapsed triangle', { ...cube, triangles: Uint32Array.from([...cube.triangles, 1, 1, 2]) }, /two corners/],
    ['a vertex that is no number', { ...cube, positions: cube.positions.map((v, i) => (i === 4 ? NaN : v)) }, /vertex 1 is not/],
    ['nothing at all', { positions: new Float64Array(), triangles: new Uint32Array() }, /empty/],
  ])('%s', (_, mesh, words) => { expect(faultsOf(mesh).join('; ')).toMatch(words); });
});
