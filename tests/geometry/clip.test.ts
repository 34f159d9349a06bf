import { describe, expect, test } from 'vitest';
import { clipped, endsOf, windowRound, type Window } from '../../src/geometry/clip.ts';
import { lengthOf, pathLength, pointOn, type PathPiece } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { chanceFrom, type Chance } from '../support/random.ts';

const someWindow = ({ between }: Chance): Window => { const least: Point = [between(-60, 20), between(-60, 20)]; return { least, most: [least[0] + between(5, 90), least[1] + between(5, 90)] }; };
const somePiece = ({ between, oneOf }: Chance): PathPiece => oneOf(['line', 'arc', 'arc']) === 'line'
  ? { kind: 'line', from: [between(-80, 80), between(-80, 80)], to: [between(-80, 80), between(-80, 80)] }
  : { kind: 'arc', centre: [between(-50, 50), between(-50, 50)], radius: between(1, 90), start: between(-9, 9), sweep: between(-2 * Math.PI, 2 * Math.PI) };

const inside = ({ least, most }: Window, [x, y]: Point, slack = 0): boolean => x >= least[0] - slack && x <= most[0] + slack && y >= least[1] - slack && y <= most[1] + slack;
const SAMPLES = 4000;
/** Slow judge: points evenly along a piece, counted. */
const points = (piece: PathPiece): Point[] => Array.from({ length: SAMPLES }, (_, i) => pointOn(piece, (i + 0.5) / SAMPLES));

describe('a path cut at the border of a window', () => {
  test('keeps as much as a count of points inside says, and nothing outside', () => {
    const chance = chanceFrom(20260318);
    let cut = 0;
    for (let i = 0; i < 120; i++) {
      const window = someWindow(chance), piece = somePiece(chance), kept = clipped([piece], window);
      const counted = (lengthOf(piece) * points(piece).filter((point) => inside(window, point)).length) / SAMPLES;
      expect(Math.abs(pathLength(kept) - counted)).toBeLessThanOrEqual((lengthOf(piece) / SAMPLES) * (2 * kept.length + 2));
      for (const one of kept) for (const t of [0, 0.3, 0.7, 1]) expect(inside(window, pointOn(one, t), 1e-9)).toBe(true);
      if (pathLength(kept) > 0 && pathLength(kept) < lengthOf(piece)) cut++;
    }
    expect(cut).toBeGreaterThan(30);
  });

  test('four windows that touch share a path out without loss', () => {
    const chance = chanceFrom(7);
    for (let i = 0; i < 40; i++) {
      const piece = somePiece(chance), [x, y] = [chance.between(-40, 40), chance.between(-40, 40)], far = 1000;
      const quarters: Window[] = [[-far, -far, x, y], [x, -far, far, y], [-far, y, x, far], [x, y, far, far]].map(([a, b, c, d]) => ({ least: [a!, b!], most: [c!, d!] }));
      expect(quarters.reduce((sum, window) => sum + pathLength(clipped([piece], window)), 0)).toBeCloseTo(lengthOf(piece), 8);
    }
  });

  test('by hand: a circle of 10 cut 6 from its middle keeps two arcs of 2 asin 0.6 each', () => {
    const circle: PathPiece = { kind: 'arc', centre: [0, 0], radius: 10, start: 0.2, sweep: 2 * Math.PI };
    const kept = clipped([circle], { least: [-20, -6], most: [20, 6] });
    expect(pathLength(kept)).toBeCloseTo(10 * 4 * Math.asin(0.6), 9);
    expect(kept.every((piece) => piece.kind === 'arc' && piece.radius === 10)).toBe(true);
  });
});

test('the least window round a path is where its points reach', () => {
  const chance = chanceFrom(11);
  for (let i = 0; i < 60; i++) {
    const piece = somePiece(chance), { least, most } = windowRound([[piece]]), all = points(piece), step = lengthOf(piece) / SAMPLES;
    for (const axis of [0, 1] as const) {
      const values = all.map((point) => point[axis]);
      expect(least[axis]).toBeLessThanOrEqual(Math.min(...values) + 1e-9);
      expect(least[axis]).toBeGreaterThan(Math.min(...values) - step);
      expect(most[axis]).toBeLessThan(Math.max(...values) + step);
    }
  }
  expect(() => windowRound([[]])).toThrow(/at least one piece/);
});

test('the ends of a closed path: where an arc turns, not only at a joint', () => {
  const half = (start: number): PathPiece => ({ kind: 'arc', centre: [5, 0], radius: 3, start, sweep: Math.PI });
  const { rear, fore } = endsOf([half(-Math.PI / 2), half(Math.PI / 2)]);
  expect([rear, fore]).toEqual([1.5, 0.5]);
  // The second arc turns a last digit before its end, which is its joint with the next piece.
  const almost: PathPiece = { kind: 'arc', centre: [5, 0], radius: 3, start: -1, sweep: 1 + 2 ** -52 }, on: PathPiece = { kind: 'line', from: [8, 0], to: [5, 4] };
  expect(endsOf([{ kind: 'line', from: [5, 4], to: [6, -2.5] }, almost, on]).fore).toBe(2);
});
