import { describe, expect, test } from 'vitest';
import type { Freedom, Side } from '../../src/fitting/words.ts';
import { degrees } from '../../src/geometry/units.ts';
import { rockerCase, type RockerFitting } from '../../src/profile/fromFitting.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';
import { fittingOf, type Json } from '../fitting/sheets.ts';
import { leastLoss, mixtures } from '../judges/everyShoe.ts';
import { answerTo, sampleWith, solved } from './support.ts';

/**
 * The slow judge tries every shoe of a grid, reads its figures off the whole sole and knows nothing of slopes or programmes.
 * Whatever the search finds may lose no more than the best of the grid, but for this: a step of the sheet is 0.1 mm of the
 * toe radius or 0.1 % of the apex, and to change a measure costs up to two hundredths.
 */
const TOLERANCE = 0.06;

/** `seat` in mm; `tried` in mm, degrees and per cent. */
interface Try { readonly name: string; readonly side: Side; readonly seat: number; readonly tried: Partial<Record<Freedom, readonly number[]>>; readonly changes?: Json }

const from = (least: number, most: number, count: number): number[] => Array.from({ length: count }, (_, i) => least + (i * (most - least)) / (count - 1));

const TRIES: Readonly<Record<string, Try>> = {
  'one measure, an upright sole': { name: 'market-gardener', side: 'right', seat: 31.6, tried: { apex: from(60, 66.9, 16) } },
  'two that have to go together': { name: 'market-gardener', side: 'right', seat: 30, tried: { apex: from(64.5, 66.9, 3), 'toe radius': from(220, 250, 11) } },
  'two with a turned crest': { name: 'baker', side: 'left', seat: 30.5, tried: { apex: from(65, 66.3, 2), 'toe radius': from(230, 270, 9) }, changes: { right: undefined } },
  'three, walls that flare, the thinnest place wandering': {
    name: 'ferry-pilot', side: 'right', seat: 34.6, changes: { 'right.order.seatHeightAtLeast': undefined }, tried: { apex: [76, 78], 'toe radius': from(170, 200, 5), 'standing flat': [27, 30] },
  },
  'three in inches, heel and toe both in the way': { name: 'bookbinder', side: 'left', seat: 24.3, tried: { apex: [74.6, 78], 'toe radius': from(110, 160, 6), 'strike angle': [22.5, 22.8, 23.2] } },
};

/** Puts values in by hand, in the judge's own words. */
function put(given: RockerCase, name: Freedom, value: number): RockerCase {
  const { order, last } = given;
  switch (name) {
    case 'apex': return { ...given, order: { ...order, apexX: (value / 100) * last.length } };
    case 'toe radius': return { ...given, order: { ...order, toe: { rule: 'given', radius: value } } };
    case 'standing flat': return { ...given, order: { ...order, standingFlat: value } };
    case 'strike angle': return { ...given, order: { ...order, strike: degrees(value) } };
    case 'pitch': return { ...given, last: { ...last, pitch: value } };
    case 'last spring': return { ...given, last: { ...last, toeSpring: value } };
  }
}

describe('no shoe of a grid loses less than the one found', () => {
  for (const [what, { name, side, seat, tried, changes }] of Object.entries(TRIES)) test(what, () => {
    const free = Object.keys(tried) as Freedom[], inches = name === 'bookbinder';
    const sheet = sampleWith(name, side, { seatHeightAtMost: inches ? seat / 25.4 : seat, free }, changes), best = solved(answerTo(sheet, side));
    const { targets: _, ...order } = fittingOf(sheet).shoes[side]!.order as RockerFitting['order'], given = rockerCase({ ...fittingOf(sheet).shoes[side]!, order } as RockerFitting);
    const cases = mixtures(Object.values(tried)).map((values) => values.reduce((made, value, i) => put(made, free[i]!, value), given));
    const least = leastLoss(cases, given, seat);
    expect(least).toBeLessThan(Infinity);
    expect(best.figures.seatHeight).toBeLessThanOrEqual(seat + 1e-9);
    expect(best.loss.weighed).toBeGreaterThan(0);
    expect(best.loss.weighed).toBeLessThanOrEqual(least + TOLERANCE);
  });

  test('the grids are fine enough to tell a worse one apart: half a degree beside the best and one of them is better', () => {
    const { name, side, seat } = TRIES['one measure, an upright sole']!, given = rockerCase(fittingOf(sampleWith(name, side, { seatHeightAtMost: seat, free: ['apex'] })).shoes[side] as RockerFitting);
    const best = leastLoss(from(66, 66.9, 10).map((apex) => put(given, 'apex', apex)), given, seat);
    expect(leastLoss(from(60, 66.9, 16).map((apex) => put(given, 'apex', apex)), given, seat)).toBeLessThan(best + 0.5 - TOLERANCE);
  });
});
