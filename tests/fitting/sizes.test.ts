import { describe, expect, test } from 'vitest';
import { lengthOfSize } from '../../src/fitting/sizes.ts';
import { changed, fittingOf, lockedSheet, pairSheet } from './sheets.ts';

// Outside values. European size = 3/2 × (foot length in cm + 1.5), a table of the German foot-care trade: 230 -> 36.75 … 290 -> 45.75.
// A Paris point is 2/3 cm; Mondopoint is foot length in mm (ISO/TS 19407:2015). UK adult = 3 × last in inches − 25 (from memory):
// a foot of 270 with 15 of allowance is about size 8.66. An Italian trade page: (27.5 cm) / 0.667 = 41.25, so last = foot + 15 of a 260 foot.

describe('shoe sizes', () => {
  test.each([[230, 36.75], [240, 38.25], [250, 39.75], [260, 41.25], [270, 42.75], [280, 44.25], [290, 45.75]])('a foot of %d mm is European size %d', (foot, size) => {
    expect(lengthOfSize({ size, system: 'paris points' }, 'foot').value).toBeCloseTo(foot, 9);
    expect(lengthOfSize({ size, system: 'paris points' }, 'last').value).toBeCloseTo(foot + 15, 9);
  });

  test('Mondopoint is the foot, the last is longer by the allowance', () => {
    expect(lengthOfSize({ size: 270, system: 'mondopoint' }, 'foot')).toMatchObject({ value: 270, origin: 'converted' });
    expect(lengthOfSize({ size: 270, system: 'mondopoint', allowance: 12 }, 'last')).toMatchObject({ value: 282, origin: 'converted', rule: expect.stringContaining('12 mm') as string });
  });

  test('the UK size is approximate and says so', () => {
    const foot = lengthOfSize({ size: 8.66, system: 'uk' }, 'foot');
    expect(foot).toMatchObject({ origin: 'estimated', error: 4.2, rule: expect.stringContaining('approximate') as string });
    expect(Math.abs(foot.value - 270)).toBeLessThan(0.1);
    expect(lengthOfSize({ size: 9, system: 'uk' }, 'last').value - lengthOfSize({ size: 8, system: 'uk' }, 'last').value).toBeCloseTo(25.4 / 3, 9);   // a barleycorn
  });

  test('Paris points say that they are taken as last length, and what was taken off', () => {
    expect(lengthOfSize({ size: 42, system: 'paris points' }, 'foot').rule).toMatch(/taken as last length.*less an allowance of 15 mm/);
    expect(lengthOfSize({ size: 42, system: 'paris points' }, 'last').rule).not.toMatch(/allowance/);
  });

  test('on a sheet: a foot given by size brings its own last, and the allowance is in the units of the sheet', () => {
    const byPoints = fittingOf(changed(lockedSheet(), { 'left.foot.length': { size: 42, system: 'paris points', allowance: 12 }, 'left.last.length': undefined })).shoes.left!;
    expect(byPoints.foot!.length.value).toBeCloseTo(268, 9);
    expect(byPoints.last.length).toMatchObject({ value: 280, origin: 'estimated' });
    const match = fittingOf(changed(pairSheet(), { 'right.last.length': { size: 270, system: 'mondopoint' } })).shoes.right!;
    expect(match.last.length.value).toBe(285);
    const inches = fittingOf(changed(lockedSheet(), {
      units: 'in', 'left.foot': { stiff: { joint: 'toe joint', state: 'fused' }, length: { size: 42, system: 'paris points', allowance: 0.5 } },
      'wearer.stature': 68, 'left.last': { pitch: 0.5, toeSpring: 0.6 },
    })).shoes.left!;
    expect(inches.foot!.length.value).toBeCloseTo(280 - 12.7, 9);
    expect(inches.last.length.value).toBeCloseTo(280, 9);
  });
});
