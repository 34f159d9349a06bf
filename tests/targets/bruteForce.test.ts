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
  'one measure, an upright sole': { name: 'market-gardener', side: 'right', seat: 31.6, tried: { apex: from(56, 66.9, 24) } },
  'two that have to go together': { name: 'market-gardener', side: 'right', seat: 30, tried: { apex: from(62, 66.9, 5), 'toe radius': from(210, 270, 13) } },
  'two with a turned crest': { name: 'baker', side: 'left', seat: 30.5, tried: { apex: from(62, 66.3, 4), 'toe radius': from(210, 270, 9) }, changes: { right: undefined } },
  'three, walls that flare, the thinnest place wandering': {
    name: 'ferry-pilot', side: 'right', seat: 34.6, changes: { 'right.order.seatHeightAtLeast': undefined }, tried: { apex: from(74, 78, 3), 'toe radius': from(160, 220, 7), 'standing flat': [20, 30] },
  },
  'three in inches, heel and toe both in the way': { name: 'bookbinder', side: 'left', seat: 24.3, tried: { apex: from(74, 78, 3), 'toe radius': from(100, 150, 6), 'strike angle': from(22, 24, 5) } },
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

  test('and a worse one is told apart: half a degree off and the grid has a better one', () => {
    const { name, side, seat, tried } = TRIES['two that have to go together']!, sheet = sampleWith(name, side, { seatHeightAtMost: seat, free: ['apex', 'toe radius'] });
    const given = rockerCase(fittingOf(sheet).shoes[side] as RockerFitting), near = [66.3, 66.9].flatMap((apex) => tried['toe radius']!.map((radius) => put(put(given, 'apex', apex), 'toe radius', radius)));
    expect(solved(answerTo(sheet, side)).loss.weighed + 0.5).toBeGreaterThan(leastLoss(near, given, seat) + TOLERANCE);
  });
});
