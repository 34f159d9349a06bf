import { expect, test } from 'vitest';
import { steadyCurve } from '../../src/geometry/steadyCurve.ts';
import type { Point } from '../../src/geometry/point.ts';
import { chanceFrom } from '../support/random.ts';

test('points on a straight line give that line, and two points the line between them', () => {
  for (const xs of [[0, 1, 4, 9, 10], [2, 7]]) {
    const line = steadyCurve(xs.map((x): Point => [x, 3 - 2 * x]));
    for (let x = xs[0]!; x <= xs.at(-1)!; x += 0.25) expect(line(x)).toBeCloseTo(3 - 2 * x, 12);
  }
});

test('goes through its points, nowhere beyond its neighbours, smoothly, and runs on straight outside', () => {
  const chance = chanceFrom(3);
  for (let round = 0; round < 20; round++) {
    let x = 0;
    const points = Array.from({ length: 6 }, (): Point => [(x += chance.between(0.2, 3)), chance.between(-5, 5)]), curve = steadyCurve(points);
    points.forEach(([at, y]) => expect(curve(at)).toBeCloseTo(y, 12));
    points.slice(1).forEach(([to, high], i) => {
      const [from, low] = points[i]!, [least, most] = [Math.min(low, high), Math.max(low, high)];
      for (let k = 1; k < 10; k++) {
        const y = curve(from + ((to - from) * k) / 10);
        expect(y).toBeGreaterThanOrEqual(least - 1e-12);
        expect(y).toBeLessThanOrEqual(most + 1e-12);
      }
    });
    for (const [at] of points.slice(1, -1)) expect((curve(at + 1e-6) - curve(at)) / 1e-6).toBeCloseTo((curve(at) - curve(at - 1e-6)) / 1e-6, 3);
    for (const end of [points[0]![0], points.at(-1)![0]]) for (const way of [-1, 1]) if (way < 0 === (end === points[0]![0])) expect(curve(end + 2 * way) - curve(end + way)).toBeCloseTo(curve(end + way) - curve(end), 9);
  }
});

test('of one reading there is no curve', () => expect(() => steadyCurve([[0, 1]])).toThrow(RangeError));
