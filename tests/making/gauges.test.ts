import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import { mm } from '../../src/checks/say.ts';
import { stationAt } from '../../src/checks/stations.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { makingFindings } from '../../src/making/findings.ts';
import { gaugesFor, type ShoeGauges } from '../../src/making/gauges/gauges.ts';
import { backWall, type Slice } from '../../src/making/gauges/slice.ts';
import { heightGauge } from '../../src/making/gauges/heightGauge.ts';
import { endAgainstTip, springByWedge } from '../../src/making/gauges/springByWedge.ts';
import { toeWedge } from '../../src/making/gauges/toeWedge.ts';
import type { FlatPart } from '../../src/making/flatPart.ts';
import { cutLine } from '../../src/making/cut/kerf.ts';
import { onBoards } from '../../src/making/cut/onBoards.ts';
import { relieved } from '../../src/making/cut/relief.ts';
import { fromPath } from '../../src/making/setOut.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { degrees } from '../../src/geometry/units.ts';
import { enclosedArea, pointAlong, pointOn, type Path } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { partsOf, type RockerShoe, type SoleParts } from '../../src/pair/shoe.ts';
import { endOf, heightAt, startOf } from '../../src/profile/groundFace.ts';
import { planPoint, rollX } from '../../src/profile/rollLine.ts';
import { groundPoint } from '../../src/solid/groundLine.ts';
import { wallLine, wallPoint } from '../../src/solid/wall.ts';
import { designOf, job, JOBS, rocker } from '../exports/jobs.ts';
import { circleThrough } from '../judges/circle.ts';

const gauged = (fitting: Fitting, making: object = {}): Fitting => ({ ...fitting, making: readMaking({ gauges: {}, ...making }) });
const MADE = (['pair', 'turned', 'alone'] as const).flatMap((name) => {
  const design = designOf(gauged(JOBS[name]));
  return gaugesFor(design).map((gauges) => { const shoe = design.shoes.find(({ side }) => side === gauges.side)!; return { name: `${name}, ${gauges.side} ${shoe.kind}`, gauges, shoe, parts: partsOf(shoe)!, fitting: design.fitting }; });
});
const partOf = ({ parts, side }: ShoeGauges, words: string): FlatPart => parts.find(({ name }) => name.includes(words) && name.includes(side))!;

/** Points of the outline as they lie along the walking line: a gauge seen with its heel to the right counts backwards. */
function edgePoints({ outline }: FlatPart, heelLeft: boolean, { from, to }: Slice): Point[] {
  const points = outline.flatMap((piece) => Array.from({ length: 60 }, (_, i) => pointOn(piece, (i + 0.5) / 60))).map(([x, z]): Point => [heelLeft ? x : -x, z]);
  // What is on the far edge, the base, lies deeper than any ground face; the stop may lean over a flared heel by a millimetre.
  return points.filter(([x, z]) => x > from + 1 && x < to - 1e-3 && z > -1e-6);
}

describe.each(MADE)('the gauges of $name', ({ gauges, shoe, parts, fitting }) => {
  const { shape } = parts, { inner, outer, repair } = gauges.slices;
  const profiles = [['profile gauge, inner', inner, gauges.side === 'left'], ['profile gauge, outer', outer, gauges.side === 'right'], ["repairer's gauge", repair, true]] as const;

  test.each(profiles)('the edge of the %s is the ground face: no gap, and circles through it are the arcs', (words, slice, heelLeft) => {
    const part = partOf(gauges, words), edge = edgePoints(part, heelLeft, slice);
    expect(edge.length).toBeGreaterThan(100);
    for (const [x, z] of edge) expect(Math.abs(z - heightAt(shape.face, x))).toBeLessThan(1e-6);
    let fitted = 0;
    for (const arc of shape.face.pieces) {
      if (arc.kind !== 'arc') continue;
      const on = edge.filter(([x]) => x > startOf(arc)[0] && x < endOf(arc)[0]), run = on.length < 10 ? 0 : Math.max(...on.map(([x]) => x)) - Math.min(...on.map(([x]) => x));
      if (run < 15) continue;
      const circle = circleThrough(on);
      expect(circle.radius).toBeCloseTo(arc.radius, 5);
      expect(distance(circle.centre, arc.centre)).toBeLessThan(1e-5);
      fitted++;
    }
    expect(fitted).toBeGreaterThanOrEqual(shoe.kind === 'rocker' ? 3 : 1);
    expect(enclosedArea(part.outline)).toBeGreaterThan(0);
  });

  test('each is held over the sole from end to end, and its stop touches the wall', () => {
    const at = groundPoint(shape), ground = Array.from({ length: 4000 }, (_, i) => { const [x, y] = at((i / 4000) * shape.edge.length); return [x, y] as const; });
    for (const slice of [inner, outer, repair]) {
      const under = (along: number): boolean => isInside(ground, planPoint(shape.line, along, slice.across));
      expect([under(slice.from - 0.1), under(slice.from + 0.1), under(slice.to - 0.1), under(slice.to + 0.1)]).toEqual([false, true, true, false]);
      for (let i = 1; i < 40; i++) expect(under(slice.from + ((slice.to - slice.from) * i) / 40)).toBe(true);
      for (const [along, z] of backWall(parts.bodies.whole.rim, slice, 4)) expect(offWall(parts, planPoint(shape.line, along, slice.across), z, slice.back)).toBeLessThan(0.01);
    }
    expect(inner.across).toBeLessThan(outer.across - 20);
  });

  test('the steps of the height gauge are the figures, a millimetre less and more', () => {
    const figures = new Map(figuresOf(shoe, fitting).map(({ key, value }) => [key, value])), { camber, ballWidth } = shape.last;
    for (const { place, height } of gauges.heights) {
      expect(place).toMatch(/^edge at /);
      if (place.endsWith('tip')) continue;
      const x = place.includes('seat') ? shape.last.seatLength / 2 : shape.last.tread, sides = place.endsWith('inner') ? [-1] : place.endsWith('outer') ? [1] : [-1, 1];
      // A dished bottom stands higher at its edges: the parabola across, by hand.
      const dished = sides.map((sign) => camber * (edgeY(shape.edge, x, sign) / (ballWidth / 2)) ** 2);
      expect(height).toBeCloseTo(figures.get(place.includes('seat') ? 'seatHeight' : 'ballHeight')! + dished.reduce((a, b) => a + b) / sides.length, 2);
    }
    const inOrder = (heights: readonly number[]): number[] => [...new Set(heights.map((z) => Number(z.toFixed(6))))].sort((a, b) => a - b);
    const tops = partOf(gauges, 'height gauge').outline.map((piece) => pointOn(piece, 0)[1]).filter((z) => z > 0);
    expect(inOrder(tops)).toEqual(inOrder(gauges.heights.flatMap(({ height }) => [height - 1, height + 1])));
  });

  test('the wedge touches the end of the sole first, and stands as high there', () => {
    const part = partOf(gauges, 'toe-spring'), [[x0, z0], [x1, z1]] = [pointOn(part.outline.at(-1)!, 1), pointOn(part.outline.at(-1)!, 0)], rise = (z1 - z0) / (x1 - x0);
    expect(touchesFirst(parts, rise)).toBeCloseTo(parts.bodies.whole.rim.end, 1);
    expect(gauges.toeEnd.height).toBeCloseTo(Math.max(...Array.from({ length: 20000 }, (_, i) => { const [x, y, z] = groundPoint(shape)((i / 20000) * shape.edge.length); return rollX(shape.line, [x, y]) > parts.bodies.whole.rim.end - 0.01 ? z : 0; })), 1);
    expect(z1).toBeGreaterThan(gauges.toeEnd.height + 5);
  });

  test('the line that tells wear lies 2 mm from the edge', () => {
    const lines = partOf(gauges, "repairer's gauge").marks.filter(({ of }) => of === 'WORN_LIMIT');
    expect(lines).toHaveLength(2);
    for (const { path } of lines) for (const piece of path) for (const t of [0.2, 0.8]) {
      const [x, z] = pointOn(piece, t), away = Math.min(...Array.from({ length: 4001 }, (_, i) => { const px = x - 4 + i * 0.002; return Math.hypot(px - x, heightAt(shape.face, px) - z); }));
      expect(away).toBeCloseTo(2, 4);
    }
  });

  test('every part carries its side in capitals, and what it is', () => {
    for (const { name, letters } of gauges.parts) {
      const text = letters.map((one) => one.text).join(' ');
      expect([name, text]).toEqual([name, expect.stringContaining(gauges.side.toUpperCase())]);
      expect(text).toContain(fitting.job.reference);
      expect(text).toMatch(/profile gauge|height gauge|heel block|toe-spring wedge|repairer's gauge/);
    }
  });

  test('lettering stays on its part', () => {
    for (const { name, outline, letters } of gauges.parts) for (const { text, at: [x, y], size } of letters) {
      const corners = outline.flatMap((piece) => Array.from({ length: 24 }, (_, i) => pointOn(piece, i / 24)));
      for (const point of [[x, y], [x + text.length * size * 0.6, y + size]] as const) expect([name, text, isInside(corners, point)]).toEqual([name, text, true]);
    }
  });
});

test('the name of a height gauge finds room however low the heel is', () => {
  for (const low of [6, 9, 14, 22, 40]) {
    const { outline, letters } = heightGauge('right height gauge', [{ place: 'edge at seat, inner', height: low }, { place: 'edge at seat, outer', height: low }, { place: 'edge at ball', height: 9 }, { place: 'edge at tip', height: 12 }], true), corners = outline.map((piece) => pointOn(piece, 0));
    expect(letters.map(({ text }) => text).join(' ')).toMatch(/right height gauge$/);
    for (const { text, at: [x, y], size } of letters) for (const point of [[x, y], [x + text.length * size * 0.6, y + size]] as const) expect([low, text, isInside(corners, point)]).toEqual([low, text, true]);
  }
});

test('a cutter thicker than the step of a height gauge is told, with how far it leaves the low step round', () => {
  const found = (kerf: number, making: object = {}): Finding[] => makingFindings({ ...designOf(JOBS.alone), fitting: gauged(JOBS.alone, { board: { thickness: 6, kerf }, ...making }) }).filter(({ code }) => code === 'GAUGE_STEP_ROUND');
  const { outline } = heightGauge('right height gauge', [{ place: 'edge at tip', height: 12 }], false);
  // The low step runs from 0 to 15 mm at a height of 11: what the cutter leaves on it, by how near its middle comes.
  const left = (kerf: number, from: number): number => fromPath(cutLine(relieved(outline, kerf), kerf / 2), [15 - from, 11]) - kerf / 2;
  for (const kerf of [2.5, 3, 5]) {
    const [one] = found(kerf), level = Number(/level from ([\d.]+) mm/.exec(one!.text)![1]);
    expect(one).toMatchObject({ severity: 'note', measured: kerf, limit: 2 });
    expect([left(kerf, level + 0.06) < 1e-6, left(kerf, level - 0.1) > 1e-4, left(kerf, 0.05) > 0.1]).toEqual([true, true, true]);
  }
  expect(left(2, 0.05)).toBeLessThan(0);
  expect([found(2), found(3, { gauges: undefined })]).toEqual([[], []]);
});

test('a wedge flatter than the toe would touch behind its end, so the test above can fail', () => {
  const { parts } = MADE[0]!;
  expect(touchesFirst(parts, Math.tan(degrees(10)))).toBeLessThan(parts.bodies.whole.rim.end - 20);
});

test('marks of the wedge stand at every whole millimetre and 1.5 mm about the height planned', () => {
  const { marks, letters, outline } = toeWedge('left toe-spring wedge', { height: 24.4, slope: degrees(30) }, false), rise = Math.max(...outline.map((piece) => pointOn(piece, 0)[1])) / pointOn(outline.at(-1)!, 0)[0];
  // A scale: each tick closed and by itself, in three lengths, the planned height longer than all of them; numbers at the tens, none over a tick.
  const inward = ([x, z]: Point): number => x - z / rise, corners = marks.map(({ path }) => path.map((piece) => pointOn(piece, 0)).sort((a, b) => inward(b) - inward(a))), closed = marks.map(({ path }) => distance(pointOn(path[0]!, 0), pointOn(path.at(-1)!, 1)) < 1e-9);
  const tips = corners.filter((_, i) => closed[i]).map(([tip]) => tip!), bracket = marks.filter((_, i) => !closed[i]).flatMap(({ path }) => path.map((piece) => pointOn(piece, 1)[1]));
  expect(tips.map(([, z]) => Number(z.toFixed(6))).sort((a, b) => a - b)).toEqual([...Array.from({ length: 32 }, (_, i) => i + 1), 24.4].sort((a, b) => a - b));
  expect([Math.min(...bracket), Math.max(...bracket)]).toEqual([expect.closeTo(22.9, 9), expect.closeTo(25.9, 9)]);
  const ticks = new Map(tips.map((tip) => [Number(tip[1].toFixed(6)), inward(tip) - 1] as const)), long = (z: number): number => Number(ticks.get(z)!.toFixed(3));
  expect(ticks.size).toBe(33);
  expect([long(1), long(5), long(10), long(24.4)].every((length, i, all) => i === 0 || length > all[i - 1]! + 1)).toBe(true);
  expect([2, 15, 30].map(long)).toEqual([1, 5, 10].map(long));
  expect(letters.map(({ text }) => text)).toEqual(['10', '20', '30', '24.4 ±1.5', 'left', 'toe-spring', 'wedge']);
  const boxes = letters.map(({ text, at: [x, y], size }) => ({ left: x, right: x + text.length * size * 0.8, low: y, high: y + size }));
  for (const [z, length] of ticks) for (const { left, low, high } of boxes) if (z > low && z < high) expect(z / rise + 1 + length).toBeLessThan(left);
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => expect(a.right < b.left || b.right < a.left || a.high < b.low || b.high < a.low).toBe(true)));
});

test('two boards of the heel block go into each other, and stand as high as the seat', () => {
  const { gauges, shoe, fitting } = MADE.find(({ shoe: { kind } }) => kind === 'rocker')!, { thickness, clearance } = fitting.making.board;
  const [above, below] = [partOf(gauges, 'slot above'), partOf(gauges, 'slot below')], seat = figuresOf(shoe, fitting).find(({ key }) => key === 'seatHeight')!.value;
  const slot = ({ outline }: FlatPart, closed: (z: number) => boolean) => outline.map((piece) => [pointOn(piece, 0), pointOn(piece, 1)] as const).find(([a, b]) => a[1] === b[1] && closed(a[1]))!;
  const [top, foot] = [slot(above, (z) => z > 0 && z < seat - 1), slot(below, (z) => z > 0 && z < seat - 1)];
  for (const [a, b] of [top, foot]) expect(Math.abs(a[0] - b[0])).toBeCloseTo(thickness + clearance, 9);
  expect(foot[0][1] - top[0][1]).toBeGreaterThanOrEqual(0);
  for (const { outline } of [above, below]) expect(Math.max(...outline.map((piece) => pointOn(piece, 0)[1]))).toBeCloseTo(seat, 9);
});

test('a board too small is told with one that works', () => {
  const short = designOf(gauged(JOBS.alone, { board: { length: 250, width: 80 } })), onBoard = (making: object): Fitting => gauged(JOBS.alone, making);
  const told = (fitting: Fitting): Finding[] => makingFindings({ ...short, fitting }).filter(({ code }) => code === 'BEYOND_BOARD'), [found] = told(short.fitting);
  const [, length, width] = /(?:on one of|on \d+ boards of) (\d+) mm by (\d+) mm instead/.exec(found!.text)!.map(Number);
  // As many boards as the drawings are of.
  const boards = 1 + Math.max(...onBoards(gaugesFor(short)[0]!.parts, short.fitting.making.board).placed.map(({ sheet }) => sheet));
  expect([boards > 1, found!.text.includes(`on ${boards} boards of`)]).toEqual([true, true]);
  expect([told(onBoard({ board: { length, width } })), told(onBoard({}))]).toEqual([[], []]);
});

test('where gauges and jig want boards of their own, all findings name one that takes everything, and tell the side that is too short', () => {
  const of = (board: object): Finding[] => makingFindings({ ...designOf(JOBS.pair), fitting: gauged(JOBS.pair, { jig: {}, wedges: {}, board }) }).filter(({ code }) => code === 'BEYOND_BOARD');
  const small = of({ length: 250, width: 80 }), named = new Set(small.map(({ text }) => /(\d+ mm by \d+ mm)(?= takes? all| instead \()/.exec(text)![1]!)), [length, width] = [...named][0]!.match(/\d+/g)!.map(Number);
  expect(new Set(small.map(({ where }) => where)).size).toBe(3);
  expect(named.size).toBe(1);
  expect(of({ length, width })).toEqual([]);
  const low = of({ length, width: width! - 30 });
  expect(low.length).toBeGreaterThan(0);
  for (const { measured, limit } of low) expect([measured, limit]).toEqual([width! - 30, width]);
});

test('a cut wider than the slots of the heel block stops, with the widest that works', () => {
  const design = designOf(gauged(JOBS.alone)), found = (kerf: number): Finding[] => makingFindings({ ...design, fitting: gauged(JOBS.alone, { board: { thickness: 6, kerf } }) }).filter(({ code }) => code === 'KERF_WIDER_THAN_SLOT');
  expect(found(8)).toMatchObject([{ severity: 'stop', measured: 8, limit: 6.09, where: 'slots of the heel block' }]);
  expect(found(6.09)).toEqual([]);
  // A raise has no heel block, and its gauges no slots.
  expect(makingFindings({ shoes: [], fitting: gauged(JOBS.alone, { board: { thickness: 6, kerf: 8 } }) })).toEqual([]);
});

/** Where a slope pushed under the toe from ahead touches first: the place that keeps it furthest ahead. */
function touchesFirst({ shape: { face }, bodies: { whole: { rim } } }: SoleParts, rise: number): number {
  const places = Array.from({ length: 4001 }, (_, i) => rim.start + ((rim.end - rim.start) * i) / 4000);
  return places.reduce((best, x) => (x - heightAt(face, x) / rise > best - heightAt(face, best) / rise ? x : best));
}

/** Distance of a point from the wall around a place of the edge, by trying many wall lines. */
function offWall({ shape }: SoleParts, [x, y]: Point, z: number, near: number): number {
  return Math.min(...Array.from({ length: 4001 }, (_, i) => {
    const wall = wallLine(shape, near - 0.5 + i / 4000), [px, py] = wallPoint(wall, wall.top[2] - z);
    return Math.hypot(px - x, py - y);
  }));
}

/** Half width of the edge at a place, from many points round it. */
const edgeY = (edge: Path, x: number, sign: number): number =>
  Array.from({ length: 20000 }, (_, i) => pointAlong(edge, (i / 20000) * edge.length)).filter(([, y]) => y * sign > 0).reduce((best, point) => (Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best))[1];

/** Counts how often a ray to the side crosses a closed line. */
function isInside(line: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): boolean {
  return line.filter(([ax, ay], i) => { const [bx, by] = line[(i + 1) % line.length]!; return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay); }).length % 2 === 1;
}

describe('the end of the ground face against the tip of the last', () => {
  const taper = (lean: number): Fitting => job('K-290', { left: rocker('left', { taper: { heelInner: 0, heelOuter: 0, foreInner: degrees(lean), foreOuter: degrees(lean) } }) });
  // Where walls lean in the ground line ends behind the tip, and on a toe that turns up what lies behind is lower.
  test.each([['in', taper(3), 'behind', 'lower'], ['out', taper(-3), 'ahead of', 'higher']] as const)('walls that lean %s', (_, fitting, lies, stands) => {
    const shoe = designOf(fitting).shoes[0] as RockerShoe, { height, where, atLast } = springByWedge(shoe, shoe, fitting);
    expect(Math.sign(height - stationAt(shoe.shape, shoe.last.length).ground)).toBe(stands === 'higher' ? 1 : -1);
    expect(where).toMatch(new RegExp(`under the end of the edge, \\d\\.\\d mm ${lies} the tip of the last`));
    expect([endAgainstTip(shoe).includes(`${lies} it and stands ${stands}, ${mm(height)}`), mm(height) === atLast]).toEqual([true, false]);
  });

  test('under upright walls it is one place and one number', () => {
    const shoe = designOf(taper(0)).shoes[0] as RockerShoe, { words, where, atLast } = springByWedge(shoe, shoe, taper(0));
    expect([where, words, endAgainstTip(shoe)]).toEqual(['under the tip of the last', `${atLast} (est.)`, '']);
  });
});
