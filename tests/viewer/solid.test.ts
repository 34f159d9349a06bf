import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { cornerAt, type Body } from '../../viewer/parts/solid/body.ts';
import { creases, facetNormals, flatNormals, smoothNormals, spread } from '../../viewer/parts/solid/facets.ts';
import { shadeFor, STEPS, stepWords } from '../../viewer/parts/solid/shades.ts';
import { fillOf, hatchOf, outlineOn, standing, type Axis } from '../../viewer/parts/solid/slices.ts';
import { isUpper, thicknessUnder } from '../../viewer/parts/solid/thickness.ts';
import { wayWords } from '../../viewer/parts/solid/wayWords.ts';
import { SAMPLES } from '../exports/jobs.ts';

const BOTTOM = [0, 2, 1, 0, 3, 2], TOP = [4, 5, 6, 4, 6, 7], RIGHT = [0, 1, 5, 0, 5, 4], FRONT = [1, 2, 6, 1, 6, 5], LEFT = [2, 3, 7, 2, 7, 6], BACK = [3, 0, 4, 3, 4, 7];
const sixFaces = (...corners: readonly number[]): Body => ({ positions: Float32Array.from(corners), triangles: Uint32Array.from([BOTTOM, TOP, RIGHT, FRONT, LEFT, BACK].flat()) });
/** 100 long, 40 wide, level below, rising from 10 to 30: worked by hand. */
const wedge = sixFaces(0, -20, 0, 100, -20, 0, 100, 20, 0, 0, 20, 0, 0, -20, 10, 100, -20, 30, 100, 20, 30, 0, 20, 10);
const box = (x: number, y: number, z: number): Body => sixFaces(0, 0, 0, x, 0, 0, x, y, 0, 0, y, 0, 0, 0, z, x, 0, z, x, y, z, 0, y, z);
/** A tray without a lid cannot be cut into one stretch: two uprights on a floor 10 thick, 60 long, 20 wide, 30 high. */
const trough = ((): Body => {
  const side = [[0, 0], [60, 0], [60, 30], [50, 30], [50, 10], [10, 10], [10, 30], [0, 30]] as const, n = side.length;
  const faces = [[0, 1, 4], [0, 4, 5], [0, 5, 7], [5, 6, 7], [1, 2, 4], [2, 3, 4]] as const;
  return {
    positions: Float32Array.from([0, 20].flatMap((y) => side.flatMap(([x, z]) => [x, y, z]))),
    triangles: Uint32Array.from([...faces.flat(), ...faces.flatMap(([a, b, c]) => [a + n, c + n, b + n]), ...side.flatMap((_, i) => { const j = (i + 1) % n; return [j, i, i + n, j, i + n, j + n]; })]),
  };
})();
/** An upright post with so many sides, 20 in radius and 10 high. */
const post = (sides: number): Body => {
  const ring = [0, 10].flatMap((z) => Array.from({ length: sides }, (_, i) => [20 * Math.cos((2 * Math.PI * i) / sides), 20 * Math.sin((2 * Math.PI * i) / sides), z])), next = (i: number): number => (i + 1) % sides;
  const each = <T>(make: (i: number) => T): T[] => Array.from({ length: sides }, (_, i) => make(i));
  return {
    positions: Float32Array.from([...ring.flat(), 0, 0, 0, 0, 0, 10]),
    triangles: Uint32Array.from(each((i) => [i, next(i), sides + next(i), i, sides + next(i), sides + i, 2 * sides, next(i), i, 2 * sides + 1, sides + i, sides + next(i)]).flat()),
  };
};

/** Slow judge of a filled face: half the sum of the cross products of its triangles. */
function areaOf(flat: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < flat.length; i += 6) sum += Math.abs((flat[i + 2]! - flat[i]!) * (flat[i + 5]! - flat[i + 1]!) - (flat[i + 4]! - flat[i]!) * (flat[i + 3]! - flat[i + 1]!)) / 2;
  return sum;
}
const cutArea = (body: Body, axis: Axis, at: number): number => areaOf(fillOf(outlineOn(body, axis, at)));
/** Six times the volume is the sum of the triple products of the facets. */
function volumeOf(body: Body): number {
  let sum = 0;
  for (let i = 0; i < body.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => cornerAt(body, body.triangles[i + k]!)) as [readonly [number, number, number], readonly [number, number, number], readonly [number, number, number]];
    sum += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum / 6;
}
const threes = (list: Float32Array): number[][] => Array.from({ length: list.length / 3 }, (_, i) => [...list.slice(3 * i, 3 * i + 3)]);
const soleOf = (name: string): Body => {
  const made = design(SAMPLES[name]!);
  if (!made.ok) throw new Error('the sample is made');
  const { whole } = partsOf(made.design.shoes.find(({ kind }) => kind === 'rocker')!)!.solids;
  return { positions: Float32Array.from(whole.positions), triangles: Uint32Array.from(whole.triangles) };
};

describe('the face of a cut', () => {
  test('a wedge: 40 wide and 20 high half way along, a trapezium of 2000 lengthwise, nothing beyond its end', () => {
    expect(cutArea(wedge, 0, 50)).toBeCloseTo(800, 3);
    expect(cutArea(wedge, 1, 0)).toBeCloseTo(2000, 3);
    expect(outlineOn(wedge, 0, 150)).toHaveLength(0);
  });

  test('a cut through corners of the mesh fills as it does beside them', () => {
    expect(volumeOf(post(12))).toBeGreaterThan(0);
    expect(cutArea(post(12), 0, 0)).toBeCloseTo(400, 1);
    expect(cutArea(post(12), 0, 0)).toBeCloseTo(cutArea(post(12), 0, 1e-3), 1);
  });

  test('a trough lengthwise: floor and both uprights, and the hollow stays open', () => {
    expect(volumeOf(trough)).toBeCloseTo(20 * (600 + 200 + 200), 2);
    expect(cutArea(trough, 1, 5)).toBeCloseTo(1000, 3);
    expect(cutArea(trough, 0, 30)).toBeCloseTo(200, 3);
  });

  test('boxes of any size, cut anywhere (seed 7)', () => {
    const size = fc.double({ min: 1, max: 300, noNaN: true }), share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(fc.property(size, size, size, share, (x, y, z, t) => {
      expect(cutArea(box(x, y, z), 0, t * x) / (y * z)).toBeCloseTo(1, 2);
      expect(cutArea(box(x, y, z), 1, t * y) / (x * z)).toBeCloseTo(1, 2);
    }), { seed: 7, numRuns: 60 });
  });

  test('the cut faces of a sole, one after the other, make up its volume; cut twice as often it would be double, so this can fail', () => {
    const sole = soleOf('market-gardener'), sum = (step: number): number => { let all = 0; for (let x = step / 2; x < 270; x += step) all += cutArea(sole, 0, x); return all; };
    expect((2 * sum(2)) / volumeOf(sole)).toBeCloseTo(1, 2);
    expect((2 * sum(1)) / volumeOf(sole)).toBeCloseTo(2, 1);
  });

  test('hatching keeps its distance and stays inside: its length times the distance between lines is the area', () => {
    for (const body of [wedge, trough]) {
      const lines = hatchOf(outlineOn(body, 1, 5), 0.5);
      let length = 0;
      for (let i = 0; i < lines.length; i += 4) {
        length += Math.hypot(lines[i + 2]! - lines[i]!, lines[i + 3]! - lines[i + 1]!);
        expect(lines[i + 3]! - lines[i + 1]!).toBeCloseTo(lines[i + 2]! - lines[i]!, 3);
      }
      expect((length * 0.5 * Math.SQRT1_2) / cutArea(body, 1, 5)).toBeCloseTo(1, 2);
    }
  });

  test('a cut stands where it was made', () => {
    expect([...standing(Float32Array.of(3, 4), 0, 50)]).toEqual([50, 3, 4]);
    expect([...standing(Float32Array.of(3, 4), 1, 50)]).toEqual([3, 50, 4]);
  });
});

describe('facets', () => {
  test('normals of the wedge look outward, and its upper face leans back by one in five', () => {
    const normals = threes(facetNormals(wedge)), size = Math.hypot(1, 5);
    [[0, 0, -1], [-1 / size, 0, 5 / size], [0, -1, 0], [1, 0, 0], [0, 1, 0], [-1, 0, 0]].forEach((face, i) => {
      for (const normal of [normals[2 * i]!, normals[2 * i + 1]!]) face.forEach((value, k) => expect(normal[k]).toBeCloseTo(value, 5));
    });
  });

  test('a facet without area has no normal rather than one that is not a number', () => {
    expect([...facetNormals({ positions: Float32Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0), triangles: Uint32Array.of(0, 1, 2) })]).toEqual([0, 0, 0]);
  });

  test('each facet gets corners of its own', () => {
    const own = spread(wedge);
    expect(own).toHaveLength(12 * 9);
    expect(threes(own).map(String)).toEqual([...wedge.triangles].map((corner) => String(cornerAt(wedge, corner))));
    expect(threes(flatNormals(facetNormals(wedge)))[5]).toEqual([0, 0, -1]);
  });

  test('a box keeps its twelve edges and flat faces', () => {
    const body = box(10, 20, 30), normals = facetNormals(body);
    expect(creases(body, normals)).toHaveLength(12 * 6);
    threes(smoothNormals(body, normals)).forEach((normal, i) => threes(flatNormals(normals))[i]!.forEach((value, k) => expect(normal[k]).toBeCloseTo(value, 5)));
  });

  test('a post with 24 sides is smooth round its side, which then looks straight out, and sharp at both rims; one with 8 is sharp all over', () => {
    const body = post(24), normals = facetNormals(body), own = spread(body), smooth = threes(smoothNormals(body, normals));
    expect(creases(body, normals)).toHaveLength(2 * 24 * 6);
    expect(creases(post(8), facetNormals(post(8)))).toHaveLength(3 * 8 * 6);
    threes(own).forEach(([x, y], i) => {
      if (Math.abs(normals[3 * Math.floor(i / 3) + 2]!) > 0.5) { expect(Math.abs(smooth[i]![2]!)).toBeCloseTo(1, 4); return; }
      expect(smooth[i]![0]).toBeCloseTo(x! / 20, 2);
      expect(smooth[i]![1]).toBeCloseTo(y! / 20, 2);
    });
  });
});

describe('thickness', () => {
  test('under the upper face of the wedge: 10 at the thin end, 30 at the thick one, 20 between', () => {
    const under = thicknessUnder(wedge, facetNormals(wedge));
    expect([under([0, 20, 10]), under([100, -20, 30]), under([50, 0, 20])].map((found) => Math.round(1000 * found) / 1000)).toEqual([10, 30, 20]);
  });

  test('only the top of the wedge is its upper face', () => {
    const normals = facetNormals(wedge);
    expect([...Array(12).keys()].filter((facet) => isUpper(normals, facet))).toEqual([2, 3]);
  });

  test('where walls draw in by 12 below a rim 20 up, the rim is as thick as the edge of the underside, and no less', () => {
    const body = sixFaces(12, -8, 0, 88, -8, 0, 88, 8, 0, 12, 8, 0, 0, -20, 20, 100, -20, 20, 100, 20, 20, 0, 20, 20), under = thicknessUnder(body, facetNormals(body));
    for (const i of [4, 5, 6, 7]) expect(under(cornerAt(body, i))).toBeCloseTo(20, 4);
    expect(under([50, 0, 20])).toBeCloseTo(20, 4);
  });

  test('the sole of a sample: every place of its upper face stands over material, at most as thick as the sole is high', () => {
    const sole = soleOf('market-gardener'), normals = facetNormals(sole), under = thicknessUnder(sole, normals), high = sole.positions.reduce((most, value, i) => (i % 3 === 2 ? Math.max(most, value) : most), 0);
    const found = [...sole.triangles].flatMap((corner, i) => (isUpper(normals, Math.floor(i / 3)) ? [under(cornerAt(sole, corner))] : []));
    expect(Math.min(...found)).toBeGreaterThan(3);
    expect(Math.max(...found)).toBeLessThanOrEqual(high + 1e-3);
  });

  /** Relative luminance as in WCAG 2.2. */
  const luminance = (hex: string): number => [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255).map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)).reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i]!, 0);

  test('each step of thickness is darker than the one before, by a quarter or more', () => {
    STEPS.slice(1).forEach(({ colour }, i) => expect((luminance(STEPS[i]!.colour) + 0.05) / (luminance(colour) + 0.05)).toBeGreaterThan(1.25));
    expect([shadeFor(3.9), shadeFor(4), shadeFor(70)]).toEqual([STEPS[0]!.colour, STEPS[1]!.colour, STEPS.at(-1)!.colour]);
  });

  test('steps are told in words', () => {
    expect([stepWords(0, 'mm'), stepWords(1, 'mm'), stepWords(STEPS.length - 1, 'mm')]).toEqual(['under 4', '4 to 8', '60 and more']);
    expect([stepWords(0, 'in'), stepWords(1, 'in'), stepWords(STEPS.length - 1, 'in')]).toEqual(['under 0.16', '0.16 to 0.31', '2.36 and more']);
  });
});

test('the way between two places: three, four and twelve make thirteen', () => {
  expect(wayWords([10, 0, 5], [13, -4, 17], 'mm')).toBe('13.0 mm from place to place: 3.0 along (dx), 4.0 across (dy), 12.0 up (dz).');
  expect(wayWords([0, 0, 0], [25.4, 50.8, 0], 'in')).toBe('2.24 in from place to place: 1.00 along (dx), 2.00 across (dy), 0.00 up (dz).');
});
