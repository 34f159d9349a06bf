import { areaPaths, FillRule, minkowskiSum, union, type Path64 } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { fitArcs, moved, type Path } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { FlatPart } from '../../src/making/flatPart.ts';
import { laidPart } from '../../src/making/nest/laid.ts';
import { nest, wasteOf, type Nest, type NestOrder, type SheetSize } from '../../src/making/nest/nest.ts';
import { grown, sumLoops } from '../../src/making/nest/noFit.ts';
import { turnedPath } from '../../src/geometry/turned.ts';
import { windowRound } from '../../src/geometry/clip.ts';
import { apart, sampled } from '../judges/apart.ts';
import { chanceFrom, type Chance } from '../support/random.ts';

const QUARTERS = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2);
const STEP = 1;
/** On arcs of radius 20 and more, two chords of 1 mm lie this far off the arc between their ends. */
const JUDGED = 2 * (STEP ** 2 / 8 / 20);

const part = (outline: Path, holes: readonly Path[] = []): FlatPart => ({ name: 'part', outline, holes, marks: [], letters: [] });
const polygon = (points: readonly Point[]): Path => points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % points.length]! }));
const rectangle = (long: number, wide: number): FlatPart => part(polygon([[0, 0], [long, 0], [long, wide], [0, wide]]));

/** Broad at one end and hollow at the waist, as a sole is. */
function sole(long: number, wide: number): FlatPart {
  const round = (t: number): Point => {
    const a = 2 * Math.PI * t, x = Math.cos(a), half = Math.sin(a) * (0.8 + 0.2 * x + 0.25 * Math.cos(2 * a));
    return [(long / 2) * (1 + x), (wide / 2) * half + 5 * Math.cos(2 * a)];
  };
  return part(fitArcs(round, [0, 0.25, 0.5, 0.75, 1], 0.01));
}

/** A disc as two arcs, and an L as an example of a hollow corner. */
const disc = (radius: number): Path => [0, Math.PI].map((start) => ({ kind: 'arc', centre: [0, 0], radius, start, sweep: Math.PI }));
const hole = (radius: number): Path => [0, Math.PI].map((start) => ({ kind: 'arc', centre: [0, 0], radius, start: -start, sweep: -Math.PI }));
const angle = (arm: number, wide: number): FlatPart => part(polygon([[0, 0], [arm, 0], [arm, wide], [wide, wide], [wide, arm], [0, arm]]));

const shoelace = (path: Path): number => sampled(path, 0.2).reduce((sum, [x, y], i, all) => { const [bx, by] = all[(i + 1) % all.length]!; return sum + (x * by - y * bx) / 2; }, 0);

function someParts(chance: Chance): FlatPart[] {
  return Array.from({ length: 7 }, () => chance.oneOf([
    () => sole(chance.between(120, 260), chance.between(60, 100)), () => part(disc(chance.between(20, 50)), [hole(10)]),
    () => angle(chance.between(80, 160), chance.between(15, 40)), () => rectangle(chance.between(30, 200), chance.between(20, 60)),
  ])());
}

function expectSound(parts: readonly FlatPart[], sheet: SheetSize, order: NestOrder, made: Nest): void {
  expect([...made.placed.map((one) => one.part), ...made.left].sort((a, b) => a - b)).toEqual(parts.map((_, i) => i));
  const laid = made.placed.map((placing) => ({ placing, outline: laidPart(parts[placing.part]!, placing).outline }));
  for (const { placing, outline } of laid) {
    expect(order.turns).toContain(placing.turn);
    const points = sampled(outline, STEP), [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    expect(Math.min(...xs, ...ys)).toBeGreaterThan(order.apart - 1e-6);
    expect(Math.max(...xs)).toBeLessThan(sheet.length - order.apart + 1e-6);
    expect(Math.max(...ys)).toBeLessThan(sheet.width - order.apart + 1e-6);
  }
  laid.forEach((one, i) => laid.slice(i + 1).forEach((other) => {
    if (one.placing.sheet === other.placing.sheet) expect(apart(one.outline, other.outline, STEP)).toBeGreaterThan(order.apart);
  }));
}

test('many parts on a large sheet lie apart, and little more of it is used than they cover', () => {
  const chance = chanceFrom(7), parts = Array.from({ length: 24 }, () => rectangle(chance.between(30, 60), chance.between(20, 40))), sheet = { length: 700, width: 300 }, order = { apart: 3, turns: QUARTERS };
  const made = nest(parts, sheet, order), [use] = made.sheets;
  expectSound(parts, sheet, order, made);
  expect(made.sheets).toHaveLength(1);
  expect(use!.parts / ((sheet.length - use!.clear) * sheet.width)).toBeGreaterThan(0.6);
});

describe('nesting', () => {
  const chance = chanceFrom(41);
  const cases = Array.from({ length: 6 }, (_, i) => ({ seed: i, parts: someParts(chance), sheet: { length: chance.between(300, 500), width: chance.between(280, 400) }, between: chance.between(0, 12) }));

  test.each(cases)('parts keep their distance from each other and from the edge, by a slow judge of the true arcs ($seed)', ({ parts, sheet, between }) => {
    const order = { apart: between, turns: QUARTERS }, made = nest(parts, sheet, order);
    expectSound(parts, sheet, { ...order, apart: between - JUDGED }, made);
    expect(nest(parts, sheet, order)).toEqual(made);
    made.sheets.forEach((use, i) => {
      const on = made.placed.filter((one) => one.sheet === i).map((one) => parts[one.part]!);
      expect(use.parts / on.reduce((sum, { outline, holes }) => sum + shoelace(outline) - holes.reduce((less, line) => less - shoelace(line), 0), 0)).toBeCloseTo(1, 3);
      expect(wasteOf(use, sheet)).toBeGreaterThan(0);
    });
  });

  test('two wedges share a sheet that is only wide enough for them head to toe', () => {
    const wedge = part(polygon([[0, 0], [200, 0], [200, 90]])), sheet = { length: 232, width: 110 };
    const made = nest([wedge, wedge], sheet, { apart: 5, turns: [0, Math.PI] });
    expect(made.sheets).toHaveLength(1);
    expect(made.placed.map(({ turn }) => turn).sort()).toEqual([0, Math.PI]);
    expect(nest([wedge, wedge], sheet, { apart: 5, turns: [0] }).sheets).toHaveLength(2);
  });

  test('a part as long as there is room just fits, a hair more does not; it says which is left', () => {
    const order = { apart: 5, turns: [0] }, parts = [rectangle(90.0001, 40), rectangle(90, 40), rectangle(40, 90)];
    expect(nest(parts, { length: 100, width: 50 }, order)).toMatchObject({ placed: [{ part: 1, sheet: 0, turn: 0, at: [5, 5] }], left: [0, 2] });
    expect(nest(parts, { length: 100, width: 50 }, { ...order, turns: QUARTERS }).left).toEqual([0]);
  });

  test('no more is left between two parts than the 0.4 mm it says, and the far end stays whole', () => {
    const made = nest([rectangle(50, 90), rectangle(50, 90)], { length: 400, width: 100 }, { apart: 5, turns: [0] }), { clear, beside } = made.sheets[0]!;
    const gap = made.placed[1]!.at[0] - made.placed[0]!.at[0] - 50;
    expect(gap).toBeGreaterThan(5);
    expect(gap).toBeLessThan(5.4);
    expect(clear).toBeCloseTo(400 - 5 - 50 - gap - 50 - 5, 9);
    expect(beside).toBeCloseTo(0, 9);
    expect(wasteOf(made.sheets[0]!, { length: 400, width: 100 })).toBeCloseTo(400 * 100 - 2 * 50 * 90 - clear * 100, 6);
    const one = nest([rectangle(50, 40)], { length: 400, width: 100 }, { apart: 5, turns: [0] }).sheets[0]!;
    expect(one).toEqual({ area: 40000, parts: 2000, clear: 340, beside: 50 });
    expect(wasteOf(one, { length: 400, width: 100 })).toBeCloseTo(60 * 50 - 2000, 9);
  });

  test('nothing to lay takes no sheet', () => {
    expect(nest([], { length: 400, width: 100 }, { apart: 5, turns: [0] })).toEqual({ placed: [], left: [], sheets: [] });
  });
});

describe('sums of polygons', () => {
  const chance = chanceFrom(7);
  /** Any star seen from its middle: hollow corners, corners that run alike, on a coarse grid. */
  const star = (corners: number): Path64 => Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners, far = chance.between(3, 40);
    return { x: 1000 * Math.round(far * Math.cos(angle)), y: 1000 * Math.round(far * Math.sin(angle)) };
  });
  const pairs = Array.from({ length: 60 }, () => [star(chance.oneOf([5, 8, 13])), star(chance.oneOf([4, 7, 12]))] as const);

  test('loops enclose what the sum of every edge with every edge covers', () => {
    for (const [a, b] of pairs) {
      const all = union([...minkowskiSum(a, b, true), ...minkowskiSum(b, a, true), ...b.map(({ x, y }) => a.map((p) => ({ x: p.x + x, y: p.y + y }))), ...a.map(({ x, y }) => b.map((p) => ({ x: p.x + x, y: p.y + y })))], FillRule.NonZero);
      const loops = union(sumLoops(a, b), FillRule.NonZero);
      expect(areaPaths(loops) / areaPaths(all)).toBeCloseTo(1, 5);
    }
  });

  test('a grown polygon stays at least that far off all round', () => {
    const square: Path64 = [{ x: 0, y: 0 }, { x: 10000, y: 0 }, { x: 10000, y: 10000 }, { x: 0, y: 10000 }], out = grown(square, 5000);
    const line = polygon(out.map(({ x, y }): Point => [x, y]));
    expect(apart(line, polygon(square.map(({ x, y }): Point => [x, y])), 1)).toBe(-1);
    for (const [x, y] of sampled(line, 1)) expect(Math.hypot(Math.max(-x, 0, x - 10000), Math.max(-y, 0, y - 10000))).toBeGreaterThan(5000 - 2);
  });
});

test('the box round a turned path is that of its samples', () => {
  const turned = moved(turnedPath(sole(200, 80).outline, 0.7), [3, -4]), { least, most } = windowRound([turned]), points = sampled(turned, 0.05);
  for (const k of [0, 1] as const) {
    expect(least[k]).toBeCloseTo(Math.min(...points.map((at) => at[k])), 3);
    expect(most[k]).toBeCloseTo(Math.max(...points.map((at) => at[k])), 3);
  }
});

test('plates with notches and slots keep their distance too, where edges of many directions cross in one spot', () => {
  const rib = part(polygon([
    [-43.548, 18], [-37.448, 18], [-37.448, 0], [38.404, 0], [38.404, 18], [44.504, 18], [44.504, 0], [100.48, 0], [100.48, 181.853], [85.48, 181.853],
    [85.48, 153.768], [79.38, 153.768], [79.38, 181.853], [50.003, 181.853], [50.003, 146], [24.605, 46], [-26.19, 46], [-51.588, 146], [-51.588, 181.853],
    [-78.423, 181.853], [-78.423, 153.768], [-84.523, 153.768], [-84.523, 181.853], [-99.523, 181.853], [-99.523, 0], [-43.548, 0],
  ]));
  const sheet = { length: 600, width: 400 }, order = { apart: 5, turns: QUARTERS };
  expectSound([rib, rib, rib], sheet, order, nest([rib, rib, rib], sheet, order));
});
