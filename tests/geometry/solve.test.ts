import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lowestBetween, rootBetween, smoothStep } from '../../src/geometry/solve.ts';

test('roots of functions whose root is known in closed form', () => {
  expect(rootBetween((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 10);
  expect(rootBetween((x) => Math.cos(x), 0, 3)).toBeCloseTo(Math.PI / 2, 10);
  expect(rootBetween((x) => x ** 9, -1, 1.5)).toBeCloseTo(0, 1);
});

test('any steep or flat cubic with one root is solved', () => {
  const root = fc.double({ min: -50, max: 50, noNaN: true }), steep = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
  fc.assert(fc.property(root, steep, (r, k) => {
    expect(Math.abs(rootBetween((x) => k * (x - r) * (1 + (x - r) ** 2), -60, 60) - r)).toBeLessThan(1e-8);
  }), { seed: 20260311 });
});

test('ends of one sign are refused with their values', () => {
  expect(() => rootBetween((x) => x + 5, 0, 1)).toThrow(/5 at 0 and 6 at 1/);
  expect(() => rootBetween(() => NaN, 0, 1)).toThrow(RangeError);
});

test('the lowest place of a valley', () => {
  expect(lowestBetween((x) => (x - 1.25) ** 2, 0, 3)).toBeCloseTo(1.25, 6);
  expect(lowestBetween((x) => x, 2, 5)).toBeCloseTo(2, 6);
});

test('a smooth step is level at both ends and half way in the middle', () => {
  expect([smoothStep(-1), smoothStep(0), smoothStep(0.5), smoothStep(1), smoothStep(2)]).toEqual([0, 0, 0.5, 1, 1]);
});
