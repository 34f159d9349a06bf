import { describe, expect, test } from 'vitest';
import { lengthOf, pointAlong, pointOn } from '../../../src/geometry/path.ts';
import { distance, type Point, type Point3 } from '../../../src/geometry/point.ts';
import { degrees } from '../../../src/geometry/units.ts';
import { featherLine } from '../../../src/last/outline.ts';
import { jointSurface } from '../../../src/making/templates/layerJoint.ts';
import { laidFlat, type Ruling } from '../../../src/making/templates/layFlat.ts';
import { foamOutlines } from '../../../src/making/templates/foamOutlines.ts';
import { acrossOutline, planMarks } from '../../../src/making/templates/planMarks.ts';
import { wallStrips } from '../../../src/making/templates/wallStrip.ts';
import { setOut } from '../../../src/making/setOut.ts';
import { partsOf } from '../../../src/pair/shoe.ts';
import { upperSurface } from '../../../src/solid/soleShape.ts';
import { groundPoint } from '../../../src/solid/groundLine.ts';
import { designOf, JOBS } from '../../exports/jobs.ts';
import { workedCase } from '../../support/cases.ts';

const SOLES = [JOBS.pair, JOBS.turned].flatMap((fitting) => designOf(fitting).shoes.flatMap((shoe) => {
  const parts = partsOf(shoe);
  return parts ? [{ name: `${fitting.job.reference} ${shoe.side}`, shoe, shape: parts.shape }] : [];
}));
const length = (points: readonly (Point | Point3)[]): number => points.slice(1).reduce((sum, point, i) => sum + Math.hypot(...point.map((value, k) => value - points[i]![k]!)), 0);
const lineOf = (strip: ReturnType<typeof wallStrips>[0], of: string): readonly Point[] => strip.lines.find((one) => one.of === of)!.points;

describe.each(SOLES)('the wall of $name laid flat', ({ shoe, shape }) => {
  const strips = wallStrips(shape, [{ name: 'ankle', at: 'edge', value: 62 }]);

  test('both edges are as long as on the shoe', () => {
    // Slow judge: the edge and the foot of the wall in fine steps, as they lie in space.
    const { edge } = shape, foot = groundPoint(shape), count = 20000;
    const round = Array.from({ length: count + 1 }, (_, i) => (i / count) * edge.length);
    const top = round.map((w): Point3 => { const [x, y] = pointAlong(edge, w); return [x, y, shape.upper(x, y)]; });
    expect(strips.reduce((sum, one) => sum + length(lineOf(one, 'upper edge')), 0)).toBeCloseTo(length(top), 1.7);
    expect(strips.reduce((sum, one) => sum + length(lineOf(one, 'ground')), 0)).toBeCloseTo(length(round.map(foot)), 1.7);
    for (const one of strips) expect([length(lineOf(one, 'upper edge')) - one.topLength, length(lineOf(one, 'ground')) - one.footLength]).toEqual([expect.closeTo(0, 2), expect.closeTo(0, 2)]);
  });

  test('a place half way up is as far along as on the wall, to a twentieth of a millimetre', () => {
    for (const { stretch } of strips) expect(Math.abs(stretch)).toBeLessThan(0.05);
    if (Object.values(shape.taper).every((lean) => lean === 0)) for (const { stretch } of strips) expect(Math.abs(stretch)).toBeLessThan(1e-6);
  });

  test('stations stand every 10 mm of the long axis, each over its own foot', () => {
    for (const { stations } of strips) {
      expect(stations.map(({ x }) => x)).toEqual(Array.from({ length: Math.floor(shape.last.length / 10) + 1 }, (_, i) => i * 10));
      for (const { head, foot } of stations) expect(head[1]).toBeGreaterThan(foot[1]);
    }
    const [inner, outer] = strips.map(({ stations }) => stations.map(({ head: [x] }) => x));
    expect(inner!.every((x, i) => i === 0 || x > inner![i - 1]!)).toBe(true);
    expect(outer!.every((x, i) => i === 0 || x < outer![i - 1]!)).toBe(true);
  });

  test('the ends of the strip are the ends of its lines', () => {
    for (const strip of strips) for (const [end, at] of [[strip.ends[0], 0], [strip.ends[1], -1]] as const)
      expect([lineOf(strip, 'upper edge').at(at), lineOf(strip, 'ground').at(at)]).toEqual([end.head, end.foot].map((point) => point.map((x) => expect.closeTo(x, 6))));
  });

  test('marks stand once on each side', () => expect(strips.map(({ marks }) => marks.map(({ name }) => name))).toEqual([['ankle'], ['ankle']]));

  test('so does the ball, where the edge has a joint', () => {
    const { innerBall, outerBall } = shape.last;
    expect(wallStrips(shape, [{ name: 'ball', at: 'edge', value: innerBall, side: 'inner' }, { name: 'ball', at: 'edge', value: outerBall, side: 'outer' }]).map(({ marks }) => marks.map(({ name }) => name))).toEqual([['ball'], ['ball']]);
  });

  test('the lines across run from edge to edge, where the sole is that long', () => {
    for (const mark of planMarks(shoe, shape)) {
      const across = acrossOutline(shape.edge, mark)!;
      expect([mark.measure(across.from), mark.measure(across.to)]).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
      expect(across.from[1]).toBeLessThan(across.to[1]);
    }
  });
});

describe('a joint of two layers', () => {
  const { shape } = SOLES[0]!, depth = 8;

  test('lies so deep under the face of the foam, square to it', () => {
    const joint = jointSurface(shape, depth), face = upperSurface(shape, shape.stiffener);
    // Slow judge: the nearest of many points of the face.
    const points = Array.from({ length: 8000 }, (_, i): Point => { const x = -40 + i * 0.045; return [x, face(x, 0)]; });
    for (let x = 0; x <= shape.last.length; x += 7) expect(Math.min(...points.map((point) => distance(point, [x, joint(x, 0)])))).toBeCloseTo(depth, 1);
  });

  test('comes out on the wall where its layers lie, and nowhere in the outsole', () => {
    const [inner] = wallStrips(shape, [], [{ name: 'joint 1', depth, from: 20, to: 150 }]), runs = inner.lines.filter(({ of }) => of === 'joint 1'), foam = lineOf(inner, 'foam');
    const [first, last] = [runs[0]!.points[0]!, runs.at(-1)!.points.at(-1)!], at = (x: number): number => inner.stations.find((station) => station.x === x)!.head[0];
    expect([Math.abs(first[0] - at(20)), Math.abs(last[0] - at(150))].every((off) => off < 1)).toBe(true);
    const up = (line: readonly Point[], x: number): number => { const i = line.findIndex(([px]) => px >= x), [a, b] = [line[i - 1]!, line[i]!]; return a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]); };
    for (const { points } of runs) for (const [x, y] of points.slice(1)) expect(y).toBeGreaterThan(up(foam, x) - 0.02);
    expect(wallStrips(shape, [], [{ name: 'deep', depth: 60, from: 0, to: 300 }])[0].lines.some(({ of }) => of === 'deep')).toBe(false);
  });
});

test('an upright wall is laid flat exactly: along by the length of the edge in plan, up by its height', () => {
  const { shape } = SOLES[0]!, [inner] = wallStrips(shape, []);
  for (const { x, head, foot } of inner.stations.slice(1, -1)) {
    // The place on the edge is looked for by halving, its way along by adding up pieces.
    let low = 0, high = shape.edge.length / 2;
    for (let i = 0; i < 60; i++) { const middle = (low + high) / 2; if (pointAlong(shape.edge, middle)[0] < x) low = middle; else high = middle; }
    const whole = Math.floor(low), way = shape.edge.slice(0, whole).reduce((sum, piece) => sum + lengthOf(piece), 0) + (low - whole) * lengthOf(shape.edge[whole]!);
    const [px, py] = pointAlong(shape.edge, low), start = pointAlong(shape.edge, 0);
    expect(head[0]).toBeCloseTo(way, 2);
    expect(head[1]).toBeCloseTo(shape.upper(px, py) - shape.upper(...start), 2);
    expect(head[0] - foot[0]).toBeCloseTo(0, 6);
  }
});

test('closed form: a cone laid flat is a ring of radius r / sin of its half angle, turned by the angle times that sine', () => {
  const lean = degrees(6), radius = 33, depth = 30, turn = Math.PI, count = 600;
  const on = (angle: number, r: number, z: number): Point3 => [r * Math.sin(angle), -r * Math.cos(angle), z];
  const rulings = Array.from({ length: count + 1 }, (_, i): Ruling => ({ head: on((turn * i) / count, radius, 0), foot: on((turn * i) / count, radius - depth * Math.tan(lean), -depth) }));
  const flat = laidFlat(rulings), slant = radius / Math.sin(lean), half = (turn * Math.sin(lean)) / 2;
  // A cone that narrows downwards: its apex lies below, on the lines themselves, which stand upright in the middle.
  const middle = flat[count / 2]!, apex: Point = [middle.head[0], middle.head[1] - slant];
  for (const { head, foot } of flat) expect([distance(head, apex), distance(foot, apex)]).toEqual([expect.closeTo(slant, 2), expect.closeTo(slant - depth / Math.cos(lean), 2)]);
  expect(distance(flat[0]!.head, flat.at(-1)!.head)).toBeCloseTo(2 * slant * Math.sin(half), 2);
  expect(flat[0]!.head[1]).toBeCloseTo(flat.at(-1)!.head[1], 6);
});

test('plies stay 6 mm inside the feather line, at a pointed toe too, where the line is tighter than that', () => {
  const { last } = workedCase, small = (share: number): typeof last => ({ ...last, toeShape: 'pointed', length: last.length * share, innerBall: last.innerBall * share, outerBall: last.outerBall * share, ballWidth: last.ballWidth * share, heelWidth: last.heelWidth * share });
  const feather = featherLine(small(0.55)), plies = setOut(feather, -6);
  expect(Math.min(...feather.flatMap((piece) => piece.kind === 'arc' && piece.sweep > 0 ? [piece.radius] : []))).toBeLessThan(6);
  const sampled = (path: typeof plies): Point[] => path.flatMap((piece) => Array.from({ length: 40 }, (_, i) => pointOn(piece, i / 40)));
  const edge = sampled(feather), gaps = sampled(plies).map((point) => Math.min(...edge.map((other) => distance(point, other))));
  expect(Math.min(...gaps)).toBeGreaterThan(5.99);
  expect(Math.max(...gaps)).toBeLessThan(6.3);
  plies.forEach((piece, i) => expect(distance(pointOn(piece, 1), pointOn(plies[(i + 1) % plies.length]!, 0))).toBeLessThan(1e-5));
});

test('the foam keeps to the edge under upright walls, and lies inside it where they lean in', () => {
  const upright = SOLES[0]!.shape, leaning = SOLES.find(({ shape }) => Object.values(shape.taper).some((lean) => lean !== 0))!.shape;
  expect(foamOutlines(upright)).toEqual({ upper: upright.edge, lower: upright.edge });
  const { upper } = foamOutlines(leaning), depth = leaning.stiffener;
  // At the heel's inner side the wall leans in by 5 degrees: the foam begins a stiffener's depth below the edge.
  const [before, now] = [leaning.edge, upper].map((path) => Math.min(...path.map((piece) => pointOn(piece, 0)).filter(([x]) => x < 60).map(([, y]) => y)));
  expect(now! - before!).toBeCloseTo(depth * Math.tan(degrees(5)), 1);
});
