import { expect, test } from 'vitest';
import { upperFace } from '../../src/last/upperFace.ts';
import { plainLast } from '../support/cases.ts';

const slope = (face: (x: number, y: number) => number, x: number): number => (face(x + 1e-5, 0) - face(x - 1e-5, 0)) / 2e-5;

test('the seat is level at the pitch, the tread is the lowest place, the tip stands at the toe spring', () => {
  const face = upperFace(plainLast);
  for (const x of [-3, 0, 28, 56]) expect(face(x, 0)).toBeCloseTo(12, 9);
  expect(face(202, 0)).toBe(0);
  expect(face(282, 0)).toBe(15);
  expect(face(242, 0)).toBeCloseTo(15 / 4, 9);
});

test('the shank is smooth: level where it leaves the seat and where it meets the tread', () => {
  const face = upperFace(plainLast);
  for (const x of [56, 202]) expect(slope(face, x)).toBeCloseTo(0, 3);
  expect(slope(face, 129)).toBeCloseTo((-12 * 1.5) / 146, 4);
});

test('beyond the tip the face runs on straight', () => {
  const face = upperFace(plainLast);
  expect(face(285, 0) - face(283, 0)).toBeCloseTo(2 * slope(face, 282.5), 6);
  expect(slope(face, 282.5)).toBeCloseTo((2 * 15) / 80, 4);
});

test('camber lifts the edges at the ball by the camber, the narrower heel by less, the middle not at all', () => {
  const face = upperFace({ ...plainLast, camber: 3 });
  expect(face(202, 47.5) - face(202, 0)).toBeCloseTo(3, 9);
  expect(face(40, 33) - face(40, 0)).toBeCloseTo(3 * (33 / 47.5) ** 2, 9);
  expect(face(100, 0)).toBe(upperFace(plainLast)(100, 0));
});

test('measured heights are met, and never passed between two readings', () => {
  const heights = [[0, 13], [60, 12.4], [110, 8], [160, 2], [202, 0], [240, 4.5], [282, 14]] as const;
  const face = upperFace({ ...plainLast, heights });
  heights.forEach(([x, z]) => expect(face(x, 0)).toBeCloseTo(z, 9));
  heights.slice(1).forEach(([x1, z1], i) => {
    const [x0, z0] = heights[i]!;
    for (let k = 0; k <= 20; k++) {
      const z = face(x0 + ((x1 - x0) * k) / 20, 0);
      expect(z).toBeGreaterThanOrEqual(Math.min(z0, z1) - 1e-9);
      expect(z).toBeLessThanOrEqual(Math.max(z0, z1) + 1e-9);
    }
  });
});
