import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { cross, distance, dot, type Point } from '../../src/geometry/point.ts';
import { directionOn, enclosedArea, pointAlong, pointOn, type Path } from '../../src/geometry/path.ts';
import { edgeLine, featherLine } from '../../src/last/outline.ts';
import { TOE_SHAPES } from '../../src/fitting/words.ts';
import { plainLast } from '../support/cases.ts';

const round = (path: Path): Point[] => Array.from({ length: 6000 }, (_, i) => pointAlong(path, (i * path.length) / 6000));

/** Distance from a point to a path by looking everywhere. */
const nearest = (points: readonly Point[], to: Point): number => Math.min(...points.map((point) => distance(point, to)));

describe.each(TOE_SHAPES)('the feather line of a %s toe', (toeShape) => {
  const last = { ...plainLast, toeShape }, feather = featherLine(last), points = round(feather);

  test('keeps the asked length, ball width and heel width', () => {
    const xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
    expect(Math.min(...xs)).toBeCloseTo(0, 4);
    expect(Math.max(...xs)).toBeCloseTo(282, 4);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(95, 1);
    const heel = points.filter(([x]) => x < 48).map(([, y]) => y);
    expect(Math.max(...heel) - Math.min(...heel)).toBeCloseTo(66, 1);
  });

  test('is one closed chain without a kink, counter-clockwise', () => {
    feather.forEach((piece, i) => {
      const next = feather[(i + 1) % feather.length]!;
      expect(distance(pointOn(piece, 1), pointOn(next, 0))).toBeLessThan(1e-9);
      expect(Math.atan2(cross(directionOn(piece, 1), directionOn(next, 0)), dot(directionOn(piece, 1), directionOn(next, 0)))).toBeLessThan(degrees(0.01));
    });
    expect(enclosedArea(feather)).toBeGreaterThan(0.6 * 282 * 80);
  });

  test('is widest inside further forward than outside, as a foot is, and hollow at the inner waist', () => {
    const inner = points.reduce((a, b) => (b[1] < a[1] ? b : a)), outer = points.reduce((a, b) => (b[1] > a[1] ? b : a));
    expect(inner[0]).toBeCloseTo(197, 0);
    expect(outer[0]).toBeCloseTo(168, 0);
    const waist = points.filter(([x, y]) => y < 0 && x > 100 && x < 130).map(([, y]) => -y);
    expect(Math.min(...waist)).toBeLessThan(33);
  });
});

test('an even edge is the exact parallel line', () => {
  const feather = featherLine(plainLast), edge = edgeLine(feather, plainLast, { heel: 3, ball: 3, toe: 3 }), points = round(feather);
  for (const point of round(edge).filter((_, i) => i % 400 === 0)) expect(nearest(points, point)).toBeCloseTo(3, 2);
});

test('an uneven edge stands as far out as asked at heel, ball and toe', () => {
  const feather = featherLine(plainLast), edge = round(edgeLine(feather, plainLast, { heel: 1, ball: 4, toe: 2 })), points = round(feather);
  const at = (wanted: Point): number => nearest(points, edge.reduce((a, b) => (distance(b, wanted) < distance(a, wanted) ? b : a)));
  expect(at([-1, 0])).toBeCloseTo(1, 1);
  expect(at([202, -50])).toBeCloseTo(4, 1);
  expect(at([284, -4])).toBeCloseTo(2, 1);
});

test('no edge at all is the feather line itself', () => {
  const feather = featherLine(plainLast);
  expect(edgeLine(feather, plainLast, { heel: 0, ball: 0, toe: 0 })).toBe(feather);
});

test('in-flare sets the toe to the inner side, out-flare to the outer', () => {
  const tipY = (inflare: number): number => round(featherLine({ ...plainLast, inflare })).reduce((a, b) => (b[0] > a[0] ? b : a))[1];
  expect(tipY(8)).toBeCloseTo(-8, 0);
  expect(tipY(-5)).toBeCloseTo(5, 0);
});
