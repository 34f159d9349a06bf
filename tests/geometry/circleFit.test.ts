import { expect, test } from 'vitest';
import { circleFitting, type Weighted } from '../../src/geometry/circleFit.ts';
import { chanceFrom } from '../support/random.ts';

const onArc = (radius: number, from: number, to: number, off: (i: number) => number = () => 0): Weighted[] => Array.from({ length: 41 }, (_, i) => {
  const angle = from + ((to - from) * i) / 40, far = radius + off(i);
  return { at: [7 + far * Math.sin(angle), 50 - far * Math.cos(angle)], weight: 1 };
});

test.each([[100, -0.6, 0.2], [300, 0, 0.5], [925, -0.07, 0.06]])('points of an arc of %d give its circle', (radius, from, to) => {
  const { centre, radius: found, misses } = circleFitting(onArc(radius, from, to));
  expect([...centre, found, misses]).toEqual([7, 50, radius, 0].map((value) => expect.closeTo(value, 6) as number));
});

test('no circle nearby does better', () => {
  const chance = chanceFrom(3), points = onArc(300, -0.3, 0.4, () => chance.between(-2, 2));
  const { centre: [x, z], radius, misses } = circleFitting(points);
  const missed = (cx: number, cz: number, r: number): number => Math.sqrt(points.reduce((sum, { at }) => sum + (Math.hypot(at[0] - cx, at[1] - cz) - r) ** 2, 0) / points.length);
  expect(missed(x, z, radius)).toBeCloseTo(misses, 9);
  for (const [dx, dz, dr] of [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 0.1], [0, 0, -0.1], [0, 1, 1], [0, -1, -1]] as const) expect(missed(x + dx, z + dz, radius + dr)).toBeGreaterThan(misses);
});

test('a point that counts double is as good as two', () => {
  const points = onArc(200, 0, 1, (i) => i % 3), [first, ...others] = points as [Weighted, ...Weighted[]];
  expect(circleFitting([{ ...first, weight: 2 }, ...others]).radius).toBeCloseTo(circleFitting([first, ...points]).radius, 6);
});

test('a straight line has none', () => expect(() => circleFitting([0, 1, 2, 3].map((x) => ({ at: [x, 2 * x], weight: 1 })))).toThrow(RangeError));
