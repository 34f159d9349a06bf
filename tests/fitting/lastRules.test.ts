import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { TOE_SHAPES } from '../../src/fitting/words.ts';
import { pointAlong, type Path } from '../../src/geometry/path.ts';
import { lastFrom } from '../../src/last/fromFitting.ts';
import { edgeLine, featherLine } from '../../src/last/outline.ts';
import { changed, faultsIn, fittingOf, lockedSheet, numbersIn, type Json } from './sheets.ts';
import { plainLast } from '../support/cases.ts';

/** Slow judge: walks round an outline from heel to tip and back, and adds up every step that goes the wrong way. */
function runsBack(path: Path): number {
  const points = Array.from({ length: 400 }, (_, i) => pointAlong(path, (i * path.length) / 400)), xs = points.map(([x]) => x);
  const heel = xs.indexOf(Math.min(...xs)), walk = xs.map((_, i) => xs[(heel + i) % xs.length]!), tip = walk.indexOf(Math.max(...walk));
  return walk.reduce((sum, x, i) => sum + (i === 0 ? 0 : Math.max(0, i <= tip ? walk[i - 1]! - x : x - walk[i - 1]!)), 0);
}

/** Radius of the tightest hollow: an edge wider than this has no parallel line there. */
const tightestHollow = (path: Path): number => Math.min(...path.map((piece) => (piece.kind === 'arc' && piece.sweep < 0 ? piece.radius : Infinity)));

const between = (least: number, most: number): fc.Arbitrary<number> => fc.double({ min: least, max: most, noNaN: true });

/** Lasts as odd as the ranges of the sheet let them be, many of them near what the rules refuse; shares of the last's length. */
const lasts = fc.record({
  length: between(160, 440), seat: between(0.18, 0.3), inner: fc.oneof(between(0.44, 0.52), between(0.5, 0.95)), outer: fc.oneof(between(0.42, 0.5), between(0.44, 0.95)),
  ball: between(0.2, 0.55), heel: between(0.4, 1.1), inflare: between(-25, 30), toeShape: fc.constantFrom(...TOE_SHAPES),
});
type Shares = typeof lasts extends fc.Arbitrary<infer T> ? T : never;

const sheetOf = ({ length, seat, inner, outer, ball, heel, inflare, toeShape }: Shares): Json => changed(lockedSheet(), {
  'left.foot': { ...(lockedSheet()['left'] as Json)['foot'] as Json, length: length - 15, pivotForward: 45, ballInner: inner * length, ballOuter: Math.min(inner, outer) * length },
  'left.last': { length, pitch: 14, toeSpring: 15, seatLength: seat * length, tread: 0.715 * length, ballWidth: ball * length, heelWidth: heel * ball * length, inflare, toeShape },
});

describe('the outline of a last that was let pass', () => {
  test('never runs back on its way from heel to tip, nor does the widest edge round it', () => {
    let passed = 0, refused = 0;
    fc.assert(fc.property(lasts, (shares) => {
      const reading = readSheet(JSON.stringify(sheetOf(shares)));
      if (!reading.ok) { refused += 1; return; }
      const last = lastFrom(reading.fitting.shoes.left!.last), feather = featherLine(last);
      expect(runsBack(feather)).toBeLessThan(0.005);
      expect(tightestHollow(feather)).toBeGreaterThan(6);
      expect(runsBack(edgeLine(feather, last, { heel: 6, ball: 6, toe: 6 }))).toBeLessThan(0.01);
      passed += 1;
    }), { seed: 31, numRuns: 2500 });
    expect(passed).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(200);
  });

  test('a ball in the waist, or a toe set beside the ball, does fold it, so the test above can fail', () => {
    expect(runsBack(featherLine({ ...plainLast, outerBall: 105 }))).toBeGreaterThan(5);
    const narrow = { ...plainLast, ballWidth: 45, heelWidth: 40, inflare: 27, toeShape: 'oblique' } as const;
    expect(tightestHollow(featherLine(narrow))).toBeLessThan(1);
  });
});

/** A sheet in mm as its maker would have typed it in inches. */
function inInches(sheet: Json): Json {
  const lengths = [...numbersIn(sheet)].filter(([place]) => !/version|mass|[aA]ngle|heights/.test(place)).map(([place, value]) => [place, value / 25.4]);
  return changed(sheet, { units: 'in', ...Object.fromEntries(lengths) as Json });
}

describe('a limit that hangs on other measures', () => {
  const BROKEN: Record<string, Json> = {
    'left.foot.ballOuter': { 'left.foot.ballOuter': 105 }, 'left.foot.ballInner': { 'left.foot.ballInner': 132, 'left.foot.ballOuter': 131 },
    'left.last.ballWidth': { 'left.last.ballWidth': 145, 'left.last.heelWidth': 100 }, 'left.last.heelWidth': { 'left.last.ballWidth': 93.3, 'left.last.heelWidth': 45 },
    'left.last.length': { 'left.foot.length': 268.23, 'left.last.length': 260 }, 'left.last.inflare': { 'left.last.ballWidth': 58, 'left.last.heelWidth': 50, 'left.last.inflare': -21 },
  };

  for (const units of ['mm', 'in'] as const) {
    test.each(Object.entries(BROKEN))(`${units}: %s takes the number that is said to be accepted`, (place, changes) => {
      const sheet = changed(lockedSheet(), changes), broken = units === 'in' ? inInches(sheet) : sheet;
      const [fault, ...more] = faultsIn(JSON.stringify(broken)).filter(({ path }) => path === place);
      expect(more).toEqual([]);
      const said = Number(new RegExp(`(?:must be|at least|at most|heelBack,) (-?[\\d.]+)(?: to [\\d.]+)? ${units}`).exec(fault!.rule)?.[1]);
      expect(said).not.toBeNaN();
      expect(faultsIn(JSON.stringify(changed(broken, { [place]: said }))).filter(({ path }) => path === place)).toEqual([]);
    });
  }

  test('on a sheet in inches no rule, no value and no help speaks of mm', () => {
    for (const [place, changes] of [...Object.entries(BROKEN),
      ['left.foot.hipHeight', { 'left.foot.hipHeight': 331, 'left.foot.pivotHeight': 120 }], ['left.last.tread', { 'left.last.tread': 283 }],
      ['left.foot.length', { 'left.foot.length': '10' }], ['left.last.insole', { 'left.last.insole': true }],
      ['left.last.length.size', { 'left.last.length': { size: 3, system: 'paris points' } }]] as [string, Json][]) {
      const fault = faultsIn(JSON.stringify(inInches(changed(lockedSheet(), changes)))).find(({ path }) => path === place);
      expect(fault, place).toBeDefined();
      expect(fault!.text, place).not.toMatch(/\bmm\b/);
    }
    const heights = [[0, 14], [60, 14], [202, 0], [282, 25]].map((pair) => pair.map((mm) => mm / 25.4));
    const [fault] = faultsIn(JSON.stringify(changed(inInches(lockedSheet()), { 'left.last.heights': heights })));
    expect(fault!.text).toContain('left.last.toeSpring must agree within 0.1181 in with the measured heights, which stand at 0.9843 in at the tip');
  });
});

test('measured heights need neither pitch nor toe spring to agree with on a match that gives none', () => {
  const sheet = changed(lockedSheet(), { right: { last: { length: 282, heights: [[0, 20], [60, 20], [202, 0], [282, 25]] }, order: { kind: 'match', seatHeightNow: 28, ballHeightNow: 12 } } });
  expect(fittingOf(sheet).shoes.right!.last.toeSpring.origin).toBe('default');
});
