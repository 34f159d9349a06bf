import fc from 'fast-check';
import { expect, test } from 'vitest';
import { acos, asin, atan, atan2, cos, sin, tan } from '../../src/geometry/trig.ts';

const DOUBLE = 2.220446049250313e-16;
/** Apart by at most so many last digits of a double. */
const near = (own: number, other: number, digits: number): boolean => Math.abs(own - other) <= digits * DOUBLE * Math.max(Math.abs(other), 1e-3);

test('sines, tangents and their inverses are those of the language, to the last digit or two', () => {
  const angle = fc.double({ min: -30, max: 30, noNaN: true }), share = fc.double({ min: -1, max: 1, noNaN: true }), length = fc.double({ min: -1000, max: 1000, noNaN: true });
  fc.assert(fc.property(angle, share, length, length, (a, k, x, y) => {
    fc.pre(x !== 0 && y !== 0);
    expect([near(sin(a), Math.sin(a), 1), near(cos(a), Math.cos(a), 1), near(atan(x), Math.atan(x), 1), near(atan2(y, x), Math.atan2(y, x), 2)]).toEqual([true, true, true, true]);
    expect([near(asin(k), Math.asin(k), 3), near(acos(k), Math.acos(k), 3), Math.abs(Math.cos(a)) < 0.01 || near(tan(a), Math.tan(a), 3)]).toEqual([true, true, true]);
  }), { seed: 20260412, numRuns: 4000 });
});

test('quarters of a turn and their inverses', () => {
  expect([sin(0), cos(0), tan(0), atan(Infinity), atan(-Infinity)]).toEqual([0, 1, 0, Math.PI / 2, -Math.PI / 2]);
  expect([sin(Math.PI / 2), cos(Math.PI), sin(Math.PI), cos(Math.PI / 2)].map((x, i) => Math.abs(x - [1, -1, 0, 0][i]!) < DOUBLE)).toEqual([true, true, true, true]);
  expect([atan2(0, 1), atan2(0, -1), atan2(1, 0), atan2(-1, 0), atan2(0, 0)]).toEqual([0, Math.PI, Math.PI / 2, -Math.PI / 2, 0]);
  expect([acos(1), acos(-1), asin(1), asin(-1)]).toEqual([0, Math.PI, Math.PI / 2, -Math.PI / 2]);
});

test('what is no sine has no angle', () => {
  expect([acos(1.0000001), asin(-1.1), sin(NaN), sin(Infinity), atan2(NaN, 1)].every(Number.isNaN)).toBe(true);
});

/** Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 4.6 (from memory): sin 1, cos 1; atan 1 is a quarter of pi. */
test('handbook values', () => {
  expect([sin(1), cos(1), 4 * atan(1)].map((x) => x.toFixed(14))).toEqual(['0.84147098480790', '0.54030230586814', Math.PI.toFixed(14)]);
});
