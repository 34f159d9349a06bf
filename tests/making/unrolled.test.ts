import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TOE_SHAPES } from '../../src/fitting/words.ts';
import { enclosedArea, lengthOf, pathLength, pointAlong, pointOn, type Path } from '../../src/geometry/path.ts';
import { cross, distance, subtract, type Point } from '../../src/geometry/point.ts';
import { degrees } from '../../src/geometry/units.ts';
import { setOut } from '../../src/making/setOut.ts';
import { flatOutsole, TRIM, unrolledOutsole } from '../../src/making/unrolled.ts';
import { partsOf } from '../../src/pair/shoe.ts';
import { angleAt } from '../../src/profile/groundFace.ts';
import { Infeasible } from '../../src/profile/infeasible.ts';
import { rollX, rollY } from '../../src/profile/rollLine.ts';
import { soleFrom } from '../../src/solid/fromRocker.ts';
import { groundPoint } from '../../src/solid/groundLine.ts';
import type { SoleShape } from '../../src/solid/soleShape.ts';
import { designOf, JOBS } from '../exports/jobs.ts';
import { withLast, withOrder, workedCase } from '../support/cases.ts';
import { runs } from '../support/runs.ts';

const SHAPES = Object.entries(JOBS).flatMap(([name, fitting]) => designOf(fitting).shoes.flatMap((shoe) => {
  const parts = partsOf(shoe);
  return parts ? [{ name: `${name} ${shoe.side}`, shape: parts.shape }] : [];
}));

test.each(SHAPES)('$name: laid flat the outsole has the area of the bent face', ({ shape }) => {
  const flat = flatOutsole(shape), at = groundPoint(shape), count = 4000;
  // Slow judge: the area round the foot of the walls in plan, each strip stretched by the slope of the face above it.
  const round = Array.from({ length: count + 1 }, (_, i) => { const [x, y] = at((i / count) * shape.edge.length); return [rollX(shape.line, [x, y]), rollY(shape.line, [x, y])] as const; });
  let area = 0;
  for (let i = 0; i < count; i++) {
    const [a, ya] = round[i]!, [b, yb] = round[i + 1]!;
    area -= ((ya + yb) / 2) * (b - a) / Math.cos(angleAt(shape.face, (a + b) / 2));
  }
  expect(enclosedArea(flat) / area).toBeCloseTo(1, 3);
  expect(enclosedArea(flat)).toBeGreaterThan(enclosedArea(shape.edge) * 0.9);
});

test('the trim stands all round, so the outline is longer by a full turn of it', () => {
  const { shape } = SHAPES[0]!, trimmed = unrolledOutsole(shape), bare = flatOutsole(shape);
  expect(pathLength(trimmed) - pathLength(bare)).toBeCloseTo(2 * Math.PI * TRIM, 3);
  expect(distance(pointAlong(trimmed, 0), pointAlong(bare, 0))).toBeCloseTo(TRIM, 9);
});

/** Points along a path, none further than a step from the next. */
const sampled = (path: Path, step: number): Point[] => path.flatMap((piece) => {
  const count = Math.ceil(lengthOf(piece) / step) + 1;
  return Array.from({ length: count }, (_, i) => pointOn(piece, i / count));
});

/** Slow judge: each chord of the line against each other one. */
function crossesItself(line: readonly Point[]): boolean {
  const chords = line.map((from, i) => [from, line[(i + 1) % line.length]!] as const).filter(([from, to]) => distance(from, to) > 0);
  const parts = (a: readonly [Point, Point], b: readonly [Point, Point]): boolean => {
    const side = (p: Point): number => cross(subtract(a[1], a[0]), subtract(p, a[0]));
    return side(b[0]) * side(b[1]) < 0;
  };
  return chords.some((a, i) => chords.some((b, k) => k > i + 1 && Math.abs(a[0][0] - b[0][0]) < 4 && Math.abs(a[0][1] - b[0][1]) < 4 && parts(a, b) && parts(b, a)));
}

const leastAndMost = (line: readonly Point[], from: readonly Point[]): [number, number] => {
  const gaps = line.map(([x, y]) => Math.sqrt(from.reduce((least, [ax, ay]) => Math.min(least, (x - ax) ** 2 + (y - ay) ** 2), Infinity)));
  return [Math.min(...gaps), Math.max(...gaps)];
};

/** Closed, simple, and the distance from what it goes round, all round. */
function expectGoesRound(outline: Path, net: Path, by: number): void {
  outline.forEach((piece, i) => expect(distance(pointOn(piece, 1), pointOn(outline[(i + 1) % outline.length]!, 0))).toBeLessThan(1e-5));
  const line = sampled(outline, 1), [least, most] = leastAndMost(line, sampled(net, 0.4));
  expect(least).toBeGreaterThan(by - 0.01);
  expect(most).toBeLessThan(by + 0.01);
  expect(crossesItself(line)).toBe(false);
  expect(enclosedArea(outline)).toBeGreaterThan(enclosedArea(net) + by * pathLength(net) * 0.95);
}

const soleOf = (...[order, last]: [Parameters<typeof withOrder>[1], Parameters<typeof withLast>[1]]): SoleShape | undefined => {
  try { return soleFrom(withLast(withOrder(workedCase, order), last)).shape; } catch (error) { if (error instanceof Infeasible) return undefined; throw error; }
};

describe('an outline with a hollow', () => {
  test('tighter than the trim keeps the trim and leaves a corner', () => {
    const shape = soleOf({ crestAngle: degrees(105), taper: { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: degrees(20) } }, { toeShape: 'pointed', inflare: 20 })!;
    const net = flatOutsole(shape), hollows = net.flatMap((piece) => piece.kind === 'arc' && piece.sweep < 0 ? [piece.radius] : []);
    expect(Math.min(...hollows)).toBeLessThan(TRIM);
    expectGoesRound(unrolledOutsole(shape), net, TRIM);
  });

  test('of two discs with a tight fillet between them: by hand, the two circles meet on the axis', () => {
    // Discs of radius 10 at -9 and 9, joined by fillets of radius 1 whose centres stand on the upright axis.
    const up = Math.sqrt(11 ** 2 - 9 ** 2), lean = Math.atan2(up, 9);
    const net: Path = [
      { kind: 'arc', centre: [9, 0], radius: 10, start: -Math.PI + lean, sweep: 2 * (Math.PI - lean) },
      { kind: 'arc', centre: [0, up], radius: 1, start: -lean, sweep: -(Math.PI - 2 * lean) },
      { kind: 'arc', centre: [-9, 0], radius: 10, start: lean, sweep: 2 * (Math.PI - lean) },
      { kind: 'arc', centre: [0, -up], radius: 1, start: Math.PI - lean, sweep: -(Math.PI - 2 * lean) },
    ];
    const outline = setOut(net, 3), ends = outline.flatMap((piece) => [pointOn(piece, 0), pointOn(piece, 1)]);
    expectGoesRound(outline, net, 3);
    for (const y of [Math.sqrt(13 ** 2 - 9 ** 2), -Math.sqrt(13 ** 2 - 9 ** 2)]) expect(Math.min(...ends.map((end) => distance(end, [0, y])))).toBeLessThan(1e-9);
  });

  test('left uncut does cross itself, so the judge can fail', () => {
    const knot: Path = [{ kind: 'line', from: [0, 0], to: [10, 10] }, { kind: 'line', from: [10, 10], to: [10, 0] }, { kind: 'line', from: [10, 0], to: [0, 10] }, { kind: 'line', from: [0, 10], to: [0, 0] }];
    expect(crossesItself(sampled(knot, 0.8))).toBe(true);
  });
});

test('whatever sole can be made has an outline with its trim: closed, simple, and nowhere nearer', () => {
  const lean = fc.integer({ min: -10, max: 20 }).map(degrees), steep = fc.constantFrom(-5, 20, 20, 20).map(degrees), edge = fc.constantFrom(0, 0, 2, 6);
  let made = 0, tight = 0;
  fc.assert(fc.property(fc.record({
    crest: fc.oneof(fc.constantFrom(75, 105), fc.integer({ min: 75, max: 105 })), inflare: fc.constantFrom(-20, -20, 0, 8, 20, 20), toe: fc.constantFrom('pointed', 'oblique', ...TOE_SHAPES),
    taper: fc.record({ heelInner: lean, heelOuter: lean, foreInner: lean, foreOuter: steep }), edge: fc.record({ heel: edge, ball: edge, toe: edge }), scale: fc.integer({ min: 88, max: 108 }),
  }), ({ crest, inflare, toe, taper, edge: edgeBeyond, scale }) => {
    const sized = (x: number): number => (x * scale) / 100;
    const shape = soleOf({ crestAngle: degrees(crest), taper, edgeBeyond, apexX: sized(0.62 * 282) }, {
      toeShape: toe, inflare, length: sized(282), seatLength: sized(56), tread: sized(202), innerBall: sized(197), outerBall: sized(168), ballWidth: sized(95), heelWidth: sized(66),
    });
    if (!shape) return;
    made++;
    const net = flatOutsole(shape);
    if (net.some((piece) => piece.kind === 'arc' && piece.sweep < 0 && piece.radius < TRIM)) tight++;
    expectGoesRound(unrolledOutsole(shape), net, TRIM);
  }), { seed: 20260311, numRuns: runs(50, 800) });
  expect([made > 40, tight > 2]).toEqual([true, true]);
}, 120_000);
