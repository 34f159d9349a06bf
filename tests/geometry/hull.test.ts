import { expect, test } from 'vitest';
import { hullOf, lowerHullOf } from '../../src/geometry/hull.ts';
import type { Point } from '../../src/geometry/point.ts';
import { chanceFrom } from '../support/random.ts';

test('the hull of points holds them all and turns left only', () => {
  const chance = chanceFrom(11), points = Array.from({ length: 200 }, (): Point => [chance.between(0, 100), chance.between(0, 40)]), hull = hullOf(points);
  hull.forEach(([bx, by], i) => {
    const [ax, ay] = hull.at(i - 1)!;
    for (const [x, y] of points) expect((bx - ax) * (y - ay) - (by - ay) * (x - ax)).toBeGreaterThan(-1e-9);
  });
});

test('its lower half runs from the rearmost to the foremost point, and nothing lies below it', () => {
  const chance = chanceFrom(12), points = Array.from({ length: 200 }, (): Point => [chance.between(0, 100), chance.between(0, 40)]), lower = lowerHullOf(points), all = hullOf(points);
  expect(lower).toEqual(all.slice(0, lower.length));
  expect([lower[0]![0], lower.at(-1)![0]]).toEqual([Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))]);
  for (let i = 1; i < lower.length; i++) {
    const [ax, ay] = lower[i - 1]!, [bx, by] = lower[i]!;
    for (const [x, y] of points) expect((bx - ax) * (y - ay) - (by - ay) * (x - ax)).toBeGreaterThan(-1e-9);
  }
});

test('of two points above each other at an end its lower half keeps the lower', () =>
  expect(lowerHullOf([[0, 0], [0, 9], [4, -1], [8, 9], [8, 0]])).toEqual([[0, 0], [4, -1], [8, 0]]));
