import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { along, cross, distance, dot, type Point } from '../../src/geometry/point.ts';
import { biarc, directionOn, enclosedArea, fitArcs, isTooTight, lengthOf, mirroredPath, offsetRight, parallelPiece, pathLength, pointAlong, pointOn, type Path } from '../../src/geometry/path.ts';

const seed = 20260311;
const kink = (a: Point, b: Point): number => Math.abs(Math.atan2(cross(a, b), dot(a, b)));
const ellipse = (t: number): Point => [120 * Math.cos(t), 45 * Math.sin(t)];
const ring: Path = fitArcs(ellipse, [0, 1, 2, 3, 4, 5, 2 * Math.PI], 0.01);

test('two arcs leave and arrive as asked and share their tangent (to 0.01 degrees) where they meet', () => {
  const angle = fc.double({ min: -1.2, max: 1.2, noNaN: true });
  fc.assert(fc.property(angle, angle, fc.double({ min: 5, max: 200, noNaN: true }), (leave, arrive, run) => {
    const pair = biarc([0, 0], along(leave), [run, 0], along(arrive)), [first, second] = [pair[0]!, pair[1]!];
    expect(distance(pointOn(first, 0), [0, 0])).toBeLessThan(1e-8);
    expect(distance(pointOn(second, 1), [run, 0])).toBeLessThan(1e-8);
    expect(distance(pointOn(first, 1), pointOn(second, 0))).toBeLessThan(1e-8);
    expect(kink(directionOn(first, 0), along(leave))).toBeLessThan(2e-4);
    expect(kink(directionOn(first, 1), directionOn(second, 0))).toBeLessThan(2e-4);
    expect(kink(directionOn(second, 1), along(arrive))).toBeLessThan(2e-4);
  }), { seed, numRuns: 500 });
});

describe('arcs fitted to an ellipse of 240 by 90', () => {
  test('stay within the gap', () => {
    for (let i = 0; i < 2000; i++) {
      const [x, y] = pointAlong(ring, (i * ring.length) / 2000);
      // Distance to an ellipse, by looking: the judge knows only the ellipse's own formula.
      const t0 = Math.atan2(y / 45, x / 120);
      let nearest = Infinity;
      for (let k = -300; k <= 300; k++) nearest = Math.min(nearest, distance([x, y], ellipse(t0 + k * 2e-5)));
      expect(nearest).toBeLessThan(0.01);
    }
  });
  test('enclose its area, pi a b, and run its length by Ramanujan (1914)', () => {
    expect(enclosedArea(ring) / (Math.PI * 120 * 45)).toBeCloseTo(1, 4);
    const h = ((120 - 45) / (120 + 45)) ** 2;
    const around = Math.PI * (120 + 45) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(pathLength(ring) / around).toBeCloseTo(1, 4);
  });
  test('grow by length times distance plus pi d squared when set out (Steiner)', () => {
    const out = offsetRight(ring, 3);
    expect(enclosedArea(out) - enclosedArea(ring)).toBeCloseTo(3 * pathLength(ring) + Math.PI * 9, 3);
    out.forEach((piece, i) => expect(distance(pointOn(piece, 1), pointOn(out[(i + 1) % out.length]!, 0))).toBeLessThan(1e-6));
  });
  test('stay counter-clockwise in the mirror', () => {
    const flipped = mirroredPath(ring);
    expect(enclosedArea(flipped)).toBeCloseTo(enclosedArea(ring), 9);
    expect(pointOn(flipped[0]!, 0)).toEqual([pointOn(ring[ring.length - 1]!, 1)[0], -pointOn(ring[ring.length - 1]!, 1)[1]]);
  });
});

test('a hollow tighter than the distance is refused', () => {
  const hollow: Path = [{ kind: 'arc', centre: [0, 0], radius: 2, start: 0, sweep: -1 }];
  expect(() => offsetRight(hollow, 3)).toThrow(/radius 2 mm/);
});

test('a curve with a corner between its breaks cannot be followed by tangent arcs, and is not passed over in silence', () => {
  const corner = (t: number): Point => [t, t < 0.3 ? 0 : 500 * (t - 0.3)];
  expect(() => fitArcs(corner, [0, 1], 1e-4)).toThrow(/stray .* mm from their curve, more than the 0.0001 mm allowed/);
  const straight = fitArcs(corner, [0, 0.299], 1e-4);
  expect(pathLength(straight)).toBeCloseTo(0.299, 6);
});

test('a hollow tighter than the distance comes out inside out where it is asked for: each point as far to the right as told', () => {
  const hollow = { kind: 'arc', centre: [4, 5], radius: 2, start: 0.3, sweep: -1 } as const, out = parallelPiece(hollow, 3);
  for (const t of [0, 0.2, 0.7, 1]) {
    const [x, y] = pointOn(hollow, t), [dx, dy] = directionOn(hollow, t);
    expect(distance(pointOn(out, t), [x + 3 * dy, y - 3 * dx])).toBeLessThan(1e-12);
  }
  expect([isTooTight(hollow, 3), isTooTight(hollow, 1), isTooTight({ ...hollow, sweep: 1 }, 3)]).toEqual([true, false, false]);
});

test('lengths are those of arcs and lines', () => {
  expect(lengthOf({ kind: 'arc', centre: [0, 0], radius: 10, start: 1, sweep: -0.5 })).toBeCloseTo(5, 12);
  expect(lengthOf({ kind: 'line', from: [0, 0], to: [3, 4] })).toBe(5);
});
