import { expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { SAMPLES } from '../exports/jobs.ts';
import { capOn, thicknesses } from '../../viewer/parts/solid/slices.ts';
import { shadeFor, STEPS } from '../../viewer/parts/solid/shades.ts';

/** A wedge 100 long, 40 wide, level below, rising from 10 to 30: worked by hand. */
const wedge = {
  positions: Float32Array.of(0, -20, 0, 100, -20, 0, 100, 20, 0, 0, 20, 0, 0, -20, 10, 100, -20, 30, 100, 20, 30, 0, 20, 10),
  triangles: Uint32Array.of(0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7),
};

function areaOf(corners: Float32Array, across: 0 | 1): number {
  let sum = 0;
  for (let i = 0; i < corners.length; i += 9) {
    const [a, b, c] = [0, 3, 6].map((k) => [corners[i + k + across]!, corners[i + k + 2]!] as const);
    sum += Math.abs((b![0] - a![0]) * (c![1] - a![1]) - (c![0] - a![0]) * (b![1] - a![1])) / 2;
  }
  return sum;
}

test('the cut face of a wedge: 40 wide and 20 high half way along, a trapezium of 2000 lengthwise', () => {
  expect(areaOf(capOn(wedge, 0, 50), 1)).toBeCloseTo(800, 1);
  expect(areaOf(capOn(wedge, 1, 0), 0)).toBeCloseTo(2000, 1);
  expect(capOn(wedge, 0, 150)).toHaveLength(0);
});

test('the cut faces of a sole, one after the other, make up its volume', () => {
  const made = design(SAMPLES['market-gardener']!);
  if (!made.ok) throw new Error('the sample is made');
  const shoe = made.design.shoes.find(({ kind }) => kind === 'rocker')!, { whole } = partsOf(shoe)!.solids;
  const body = { positions: Float32Array.from(whole.positions), triangles: whole.triangles };
  let sum = 0;
  for (let x = 0.5; x < 270; x++) sum += areaOf(capOn(body, 0, x), 1);
  let volume = 0;
  const p = whole.positions, t = whole.triangles;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i]!, 3 * t[i + 1]!, 3 * t[i + 2]!];
    volume += (p[a]! * (p[b + 1]! * p[c + 2]! - p[b + 2]! * p[c + 1]!) - p[a + 1]! * (p[b]! * p[c + 2]! - p[b + 2]! * p[c]!) + p[a + 2]! * (p[b]! * p[c + 1]! - p[b + 1]! * p[c]!)) / 6;
  }
  expect(sum / volume).toBeCloseTo(1, 2);
});

test('thickness under a corner of the wedge: 10 at the thin end, 30 at the thick one, above and below alike', () => {
  const found = [...thicknesses(wedge)];
  [10, 30, 30, 10, 10, 30, 30, 10].forEach((thick, i) => expect(found[i]).toBeCloseTo(thick, 3));
});

test('shades of thickness are told apart, and what is thinner than 4 mm is the colour of a fault', () => {
  expect(new Set(STEPS.map(({ colour }) => colour)).size).toBe(STEPS.length);
  expect([shadeFor(3.9), shadeFor(4), shadeFor(70)]).toEqual([STEPS[0]!.colour, STEPS[1]!.colour, STEPS.at(-1)!.colour]);
});
