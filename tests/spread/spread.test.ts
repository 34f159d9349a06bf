import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { designWith, type Design } from '../../src/designWith.ts';
import type { FigureKey } from '../../src/checks/figures.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { cos } from '../../src/geometry/trig.ts';
import { degrees } from '../../src/geometry/units.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { rollBodyOf } from '../../src/roll/ofSole.ts';
import { placedAt } from '../../src/roll/rollBody.ts';
import { rockerCase, type RockerFitting } from '../../src/profile/fromFitting.ts';
import { nearbySolver } from '../../src/profile/nearby.ts';
import { solveRocker } from '../../src/profile/rocker.ts';
import { accuracyOf } from '../../src/spread/accuracy.ts';
import type { Band } from '../../src/spread/band.ts';
import { linearSpread, type ShoeSpread } from '../../src/spread/linear.ts';
import { sampledSpread, spreadSteps } from '../../src/spread/sampled.ts';
import { shoeOff } from '../../src/spread/shoeOff.ts';
import { varianceOf } from '../../src/spread/slopes.ts';
import { variantsOf } from '../../src/spread/variants.ts';
import { takeAgain } from '../../src/spread/words.ts';
import { changed, fittingOf, freeSheet, lockedSheet, pairSheet, prostheticSheet } from '../fitting/sheets.ts';
import { chanceFrom } from '../support/random.ts';

type Sheet = Parameters<typeof fittingOf>[0];
function designOf(sheet: Sheet): Design {
  const designing = designWith(() => [], fittingOf(sheet), 'quick');
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('\n'));
  return designing.design;
}
const spreadOf = (sheet: Sheet): ShoeSpread => linearSpread(designOf(sheet))[0]!;
const influence = (spread: ShoeSpread, field: string) => spread.influences.find((one) => one.field === field)!;
const by = (spread: ShoeSpread, field: string, key: FigureKey): number => influence(spread, field)?.moves.find((move) => move.key === key)?.by ?? 0;
const deviation = (spread: ShoeSpread, key: FigureKey): number => spread.results.find((one) => one.key === key)!.deviation;
const left = (design: Design): RockerShoe => design.shoes[0] as RockerShoe;

describe('what a measure does, against closed forms', () => {
  const sheet = changed(lockedSheet(), { 'left.foot.ankleAngle': { value: 0, accuracy: 0.2 }, 'left.foot.pivotForward': { value: 62, accuracy: 0.5 } });
  const spread = spreadOf(sheet), { stance } = left(designOf(sheet)).rocker;

  test('a degree of ankle angle moves the standing point by the leg times the cosine of its lean: 14 to 16 mm', () => {
    expect(by(spread, 'foot.ankleAngle', 'standingPoint')).toBeCloseTo(stance.leg * cos(stance.lean) * degrees(1), 3);
    expect(by(spread, 'foot.ankleAngle', 'standingPoint')).toBeGreaterThan(14);
    expect(by(spread, 'foot.ankleAngle', 'standingPoint')).toBeLessThan(16);
  });

  test('the ankle pivot further forward carries the standing point along by the cosine of the tilt', () => {
    expect(by(spread, 'foot.pivotForward', 'standingPoint')).toBeCloseTo(5 * cos(stance.tilt), 6);
  });

  test('under the pivot as it is, a shoe made for one that was read wrong drops it at heel strike, as the whole shoe rolls', () => {
    const plain = changed(sheet, { 'left.order.taper': undefined }), made = left(designOf(plain)), { order: { strike } } = made, numbers = variantsOf(made);
    expect(numbers({})![0]).toBeCloseTo(0, 9);
    for (const off of [-4, -2, 2, 4]) {
      const wrong = left(designOf(changed(plain, { 'left.foot.pivotForward': 62 + off }))), body = rollBodyOf(wrong), { heelArc, line, build } = wrong.rocker, { pivot: [x, up] } = made.rocker.stance;
      const heightAt = (roll: number): number => placedAt(body, [rollX(line, [x, 0]), up + build], roll)[1];
      expect(numbers({ 'foot.pivotForward': off })![0]).toBeCloseTo(heightAt(-strike) - heightAt(heelArc!.to), 3);
      // Read too far back, the pivot drops: the figure of the shoe as it rolls, at its lowest, is no other.
      if (off < 0) expect(numbers({ 'foot.pivotForward': off })![0]).toBeCloseTo(heightAt(-strike) - Math.min(...Array.from({ length: 201 }, (_, i) => heightAt(-strike * (1 - i / 200)))), 1);
      expect(Math.sign(numbers({ 'foot.pivotForward': off })![0]!)).toBe(-Math.sign(off));
    }
  });

  test('variances of independent measures add up', () => {
    const sum = spread.influences.reduce((all, { moves }) => all + moves.find(({ key }) => key === 'standingPoint')!.share, 0);
    expect(sum).toBeCloseTo(1, 6);
    expect(deviation(spread, 'standingPoint')).toBeGreaterThan(by(spread, 'foot.ankleAngle', 'standingPoint') * 0.2);
  });

  test('with a slope for each side: a result that only ever rises by |error| varies by 1 − 2/π (half-normal distribution)', () => {
    expect(varianceOf(1, 1)).toBeCloseTo(1 - 2 / Math.PI, 12);
    expect(varianceOf(-2, 2)).toBeCloseTo(4, 12);
  });
});

describe('what matters, by the experience of the trade', () => {
  /** Pivot 110 above the ground, 65 ahead of the heel back, toe arc as tall as the pivot from 160 ahead of it, tip 205 ahead, leg nearly upright; seat held. */
  const bare = changed(lockedSheet(), {
    'left.foot.length': 255, 'left.foot.ballInner': 188, 'left.foot.ballOuter': 160, 'left.foot.pivotForward': 65, 'left.foot.pivotHeight': 80, 'left.foot.hipHeight': 870,
    'left.foot.ankleAngle': { value: 1, accuracy: 0.5 }, 'left.foot.strikeAngle': 45,
    'left.last': { length: 270, pitch: 0, toeSpring: 15, seatLength: 60, tread: 190, heelBack: 0, camber: 0, insole: 4, ballWidth: 92, heelWidth: 64 },
    'left.order': { kind: 'rocker', apex: 100 * 225 / 270, toe: { rule: 'pivot-height' }, seatHeightAtLeast: 26, stiffener: 0, outsole: { thickness: 0.5 }, minima: { edge: 1, seat: 1, waist: 1, tread: 1, tip: 1 } },
  });

  test('5 mm of each on the plain case move edge and tip as handbooks of the trade have it', () => {
    const spread = spreadOf(bare), perDegree = by(spread, 'foot.ankleAngle', 'standingPoint');
    expect(left(designOf(bare)).rocker.pivot[1]).toBeCloseTo(110, 6);
    expect(by(spread, 'foot.pivotForward', 'heelRise')).toBeGreaterThan(3.5);       // 3.9 for the whole 5 mm to one side
    expect(by(spread, 'foot.pivotForward', 'heelRise')).toBeLessThan(4.1);
    expect(by(spread, 'foot.pivotHeight', 'heelRise')).toBeCloseTo(-1.1, 0);
    expect(Math.abs(by(spread, 'foot.pivotHeight', 'toeSpringOfShoe') + 0.6)).toBeLessThan(0.2);
    expect(Math.abs(by(spread, 'foot.hipHeight', 'toeSpringOfShoe') + 0.14)).toBeLessThan(0.04);
    expect(Math.abs((by(spread, 'foot.ankleAngle', 'toeSpringOfShoe') / perDegree) * 5 + 1.1)).toBeLessThan(0.15);
  });

  test('ankle angle, pitch and spring of the last count for far more than where the pivot is, and that for more than its height and the leg', () => {
    const spread = spreadOf(lockedSheet()), felt = (field: string): number => {
      const { moves, step, accuracy } = influence(spread, field);
      return Math.hypot(...moves.map(({ key, by: much }) => much / spread.results.find((one) => one.key === key)!.matters)) / (field === 'foot.ankleAngle' ? accuracy / step : 1);
    };
    const share = (field: string): number => influence(spread, field).share;
    expect(spread.influences[0]!.field).toBe('foot.ankleAngle');
    expect(share('foot.ankleAngle')).toBeGreaterThan(0.8);
    expect(Math.min(felt('last.pitch'), felt('last.toeSpring'))).toBeGreaterThan(1.5 * felt('foot.pivotForward'));
    expect(felt('foot.pivotForward')).toBeGreaterThan(3 * felt('foot.pivotHeight'));
    expect(felt('foot.pivotHeight')).toBeGreaterThan(1.5 * felt('foot.hipHeight'));   // the trade's leg is upright; one that leans by 4° carries the hip 0.3 mm forward for 5 mm
    expect(share('foot.pivotForward')).toBeGreaterThan(10 * share('foot.pivotHeight'));
    expect(share('foot.pivotForward')).toBeGreaterThan(5 * share('foot.hipHeight'));
  });

  test('a millimetre more of spring in the last takes about a millimetre off the whole sole', () => {
    expect(by(spreadOf(lockedSheet()), 'last.toeSpring', 'ballHeight') / 5).toBeCloseTo(-1, 0);
  });
});

describe('how sure a measure is', () => {
  const shoe = (sheet: Sheet) => fittingOf(sheet).shoes.left!;
  const of = (field: Parameters<typeof accuracyOf>[0], sheet: Sheet): number => accuracyOf(field, shoe(sheet))!.deviation;

  test('half the ± that the trade says of the way it was taken, less by √2 where it was taken twice, as typed where typed, else by the rule', () => {
    expect(of('foot.ankleAngle', lockedSheet())).toBeCloseTo(degrees(2), 12);          // goniometer ±4°
    expect(of('foot.ankleAngle', changed(lockedSheet(), { 'left.foot.ankleAngle': { value: 0, how: 'heel plates and plumb line' } }))).toBeCloseTo(degrees(0.35), 12);
    expect(of('foot.pivotForward', changed(lockedSheet(), { 'left.foot.pivotForward': { value: 62, twice: true } }))).toBeCloseTo(2 / Math.SQRT2, 12);
    expect(of('foot.pivotForward', changed(lockedSheet(), { 'left.foot.pivotForward': { value: 62, twice: true, accuracy: 0.8 } }))).toBe(0.8);
    expect(of('foot.hipAhead', freeSheet())).toBe(13);                                  // Woodhull 1985: 62 ± 13 mm
  });

  test('an accuracy is held to limits and read in the sheet\'s own units', () => {
    expect(() => fittingOf(changed(lockedSheet(), { 'left.foot.pivotForward': { value: 62, accuracy: -1 } }))).toThrow(/accuracy/);
    const inches = readSheet(JSON.stringify({ ...JSON.parse(readFileSync('samples/bookbinder/sheet.json', 'utf8')) as object }).replace('"value":2.1', '"value":2.1,"accuracy":0.1'));
    expect(inches.ok && inches.fitting.shoes.left?.foot?.pivotForward.accuracy).toBeCloseTo(2.54, 9);
  });

  test('what was estimated from a reading goes along with it, and reading the sheet anew gives the same', () => {
    for (const [sheet, place, field, more] of [
      [freeSheet(), 'left.foot.length', 'foot.length', 4], [prostheticSheet(), 'left.foot.prosthesis.heelRise', 'foot.prosthesis.heelRise', 3],
      [changed(lockedSheet(), { 'left.foot.ankleAngle': undefined, 'left.foot.heelPlates': { height: 20, span: 220, hipAhead: 50 } }), 'left.foot.hipHeight', 'foot.hipHeight', 20],
    ] as const) {
      const now = place.split('.').reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], sheet) as number;
      const again = rockerCase(shoe(changed(sheet, { [place]: now + more })) as RockerFitting), moved = rockerCase(shoeOff(shoe(sheet), { [field]: more }) as RockerFitting);
      expect(moved.foot.pivotForward).toBeCloseTo(again.foot.pivotForward, 9);
      expect((moved.foot.stance as { ankleAngle?: number }).ankleAngle ?? 0).toBeCloseTo((again.foot.stance as { ankleAngle?: number }).ankleAngle ?? 0, 12);
      expect(moved.last).toEqual(expect.objectContaining(Object.fromEntries(Object.entries(again.last).map(([name, value]) => [name, typeof value === 'number' ? expect.closeTo(value, 9) : value]))));
    }
  });
});

describe('solving many that differ little', () => {
  test.each([['baker', 0.01], ['market-gardener', 1e-4], ['ferry-pilot', 0.02], ['choir-conductor', 0.02]])('%s: the build of the whole solve', (name, within) => {
    const fitting = (JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8')) as Sheet), chance = chanceFrom(7);
    const reading = readSheet(JSON.stringify(fitting));
    if (!reading.ok) throw new Error('sample');
    const shoe = Object.values(reading.fitting.shoes).find(({ order }) => order.kind === 'rocker') as RockerFitting, solve = nearbySolver(25);
    for (let i = 0; i < 8; i++) {
      const some = (most: number): number => chance.between(-most, most), off = { 'last.length': some(3), 'last.pitch': some(2), 'last.toeSpring': some(2), 'last.ballWidth': some(3), 'last.seatLength': some(4), 'foot.pivotForward': some(4) };
      const { order, ...given } = rockerCase(shoeOff(shoe, off) as RockerFitting), { seatAtLeast: _, ...least } = order, one = { ...given, order: least };
      expect(Math.abs((solve(one) as { build: number }).build - solveRocker(one).build)).toBeLessThan(within);
    }
  });
});

describe('samples', () => {
  const small = changed(lockedSheet(), Object.fromEntries([
    ['left.foot.ankleAngle', 0, 0.2], ['left.foot.pivotForward', 62, 1], ['left.foot.strikeAngle', 25, 0.5], ['left.last.pitch', 12, 0.3],
  ].map(([place, value, accuracy]) => [place as string, { value, accuracy }])));

  test('of small errors spread as the slopes say, within what so many samples can tell (6.7 % is three standard errors of 1,000)', () => {
    const design = designOf(small), [spread] = linearSpread(design), [sample] = sampledSpread(design, { samples: 1000, seed: 3, every: 100 });
    expect(sample!.noShape).toBe(0);
    for (const { key, deviation: sampled, low, high } of sample!.results) {
      const linear = deviation(spread!, key);
      expect(Math.abs(sampled / linear - 1), key).toBeLessThan(0.067);
      expect((high - low) / (2 * 1.645 * linear), key).toBeGreaterThan(0.9);
      expect((high - low) / (2 * 1.645 * linear), key).toBeLessThan(1.1);
    }
    const widths = (band: Band | undefined): number[] => band!.map(({ low, high }) => high - low), linear = widths(spread!.band);
    widths(sample!.band).forEach((width, i) => expect(Math.abs(width - linear[i]!)).toBeLessThan(0.02 + 0.1 * linear[i]!));
  });

  test('same seed, same bytes; another seed, others; and they stop where nobody asks on', () => {
    const design = designOf(pairSheet()), told = (seed: number): string => JSON.stringify(sampledSpread(design, { samples: 60, seed, every: 20 }));
    expect(told(5)).toBe(told(5));
    expect(told(5)).not.toBe(told(6));
    const steps = spreadSteps(design, { samples: 1e9, seed: 1, every: 10 });
    expect([steps.next().value, steps.next().value]).toEqual([{ done: 10, of: 1e9 }, { done: 20, of: 1e9 }]);
    expect(steps.return([]).done && steps.next().done).toBe(true);
  });

  test('a raise spreads with what the other shoe stands on and with its own heights', () => {
    const design = designOf(pairSheet()), [rocker, match] = linearSpread(design), [, sampled] = sampledSpread(design, { samples: 400, seed: 2, every: 100 });
    expect(deviation(match!, 'raiseSeat')).toBeGreaterThan(Math.hypot(0.5, 0.5));
    expect(by(match!, 'order.seatHeightNow', 'raiseSeat')).toBeCloseTo(-5, 9);
    expect(by(match!, 'last.toeSpring', 'raiseSeat')).toBeCloseTo(by(rocker!, 'last.toeSpring', 'seatHeight'), 6);
    expect(Math.abs(sampled!.results[0]!.deviation / deviation(match!, 'raiseSeat') - 1)).toBeLessThan(0.15);
  });

  test('where a measure may well be read so that nothing can be made, it is said, and the share is told', () => {
    const near = changed(lockedSheet(), { 'left.foot.ankleAngle': { value: 1.2, accuracy: 2 }, 'left.order': { kind: 'rocker', apex: 62 } }), design = designOf(near), [spread] = linearSpread(design);
    expect(influence(spread!, 'foot.ankleAngle').noShape.more).toBeGreaterThan(0);
    expect(takeAgain(spread!, design.fitting.shoes.left!)).toMatch(/With the fixed ankle angle \d\.\d° more there is no shape, though it may be off by that much\.$/);
    expect(sampledSpread(design, { samples: 200, seed: 1, every: 100 })[0]!.noShape).toBeGreaterThan(0.1);
  });
});

test('measures that may be off by absurdly much turn arcs inside out in some variants: these count as without shape', () => {
  const design = designOf(changed(lockedSheet(), { 'left.foot.ankleAngle': { value: 0, accuracy: 15 }, 'left.foot.pivotForward': { value: 62, accuracy: 50 }, 'left.last.tread': { value: 202, accuracy: 50 } }));
  expect(linearSpread(design)[0]!.results.every(({ deviation: one }) => Number.isFinite(one))).toBe(true);
  expect(sampledSpread(design, { samples: 60, seed: 1, every: 20 })[0]!.noShape).toBeGreaterThan(0.3);
});

describe('the sentence', () => {
  const sentence = (sheet: Sheet): string => { const design = designOf(sheet); return takeAgain(linearSpread(design)[0]!, design.fitting.shoes.left!)!; };

  test.each([
    [lockedSheet(), /^Find the fixed ankle angle on heel plates with a plumb line: 1° more there moves the standing point forward by 14\.\d mm\. It stands at 0\.0 ± 2\.0° and decides \d\d % of what is unsure\./],
    [freeSheet(), /^Measure the hip ahead of the ankle: 5 mm more there moves the standing point forward by 5\.0 mm\. It stands at 62\.0 ± 13\.0 mm \(est\.\)/],
    [prostheticSheet(), /^Have the prosthetist confirm the aligned lean of the shank: 1° more/],
    [changed(freeSheet(), { 'left.foot.hipAhead': { value: 60, accuracy: 0.5 }, 'left.foot.pivotForward': { value: 62, accuracy: 6 } }), /^Take the ankle pivot forward of the heel back again: 5 mm more there moves the .* by \d\.\d mm\./],
  ])('says what to do, with computed numbers (%#)', (sheet, wanted) => expect(sentence(sheet)).toMatch(wanted));
});
