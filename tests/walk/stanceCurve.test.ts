import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { drivenRolls } from '../../src/walk/drive.ts';
import { MEAN_STANCE } from '../../src/walk/meanStance.ts';
import { OTHER_LANDS, OTHER_LIFTS, STANCE_PART } from '../../src/walk/phases.ts';
import { curveOf, MEAN_CURVE, valueAt } from '../../src/walk/stanceCurve.ts';
import { across, mean, spread, stances } from './stances.ts';

// Outside values: the open stances read anew (tests/data/gait); markers of other walkers as published, computed from Winter's data,
// Pinzone and others 2014 and one open example of a man walking.

describe('the mean curve', () => {
  test.each([['shank_deg', 0], ['legline_deg', 1], ['foot_floor_deg', 2]] as const)('%s is the mean of the seven, with its spread', (column, at) => {
    across(stances(column)).forEach((values, i) => {
      expect(MEAN_STANCE[i]![at], `${i} %`).toBeCloseTo(mean(values), 1.99);
      expect(MEAN_STANCE[i]![at + 4], `${i} %`).toBeCloseTo(spread(values), 1.99);
    });
    expect(MEAN_STANCE).toHaveLength(101);
  });

  test('the push of each is told in what its feet carry on average over a cycle', () => {
    const shares = stances('Fy').map((push) => { const weight = mean(push.slice(1).map((one, i) => (one + push[i]!) / 2)) * 2 * STANCE_PART; return push.map((one) => one / weight); });
    across(shares).forEach((values, i) => expect(MEAN_STANCE[i]![3]).toBeCloseTo(mean(values), 2.99));
    const push = MEAN_CURVE.push, early = Math.max(...push.slice(0, 40)), late = Math.max(...push.slice(60)), valley = Math.min(...push.slice(25, 60));
    for (const peak of [early, late]) expect(peak).toBeGreaterThan(0.98);   // published 1.08 to 1.14 for one walker, valley 0.80 to 0.83; a mean of peaks at other times is lower
    for (const peak of [early, late]) expect(peak).toBeLessThan(1.14);
    expect(valley).toBeGreaterThan(0.75);
    expect(valley).toBeLessThan(0.85);
  });

  test('begins and ends as told of the data: shank −15.5° and +43.0°, foot +13.5° and −56.5°', () => {
    const [first, last] = [MEAN_STANCE[0]!, MEAN_STANCE[100]!];
    expect([first[0], first[2], last[0], last[2]].map((angle) => angle.toFixed(1))).toEqual(['-15.5', '13.5', '43.0', '-56.5']);
    const turning = stances('legline_deg').map((line) => line.at(-1)! - line[0]!), drop = stances('ankle_y').map((up) => up[0]! - Math.min(...up.slice(0, 51)));
    expect([Math.min(...turning), Math.max(...turning)].map(Math.round)).toEqual([39, 52]);
    expect([Math.min(...drop), Math.max(...drop)].map((one) => one.toFixed(1))).toEqual(['2.3', '11.2']);
  });

  test('agrees with published walkers where they are told at the same moments', () => {
    const shank = (share: number): number => inDegrees(valueAt(MEAN_CURVE.shank, share)), foot = (share: number): number => inDegrees(valueAt(MEAN_CURVE.shank, share) - valueAt(MEAN_CURVE.ankle, share));
    expect(shank(0)).toBeGreaterThan(-22);            // −17.5 to −22 shod; barefoot less
    expect(shank(0)).toBeLessThan(-13);
    expect(Math.abs(shank(0.5) - 9)).toBeLessThan(3); // 6 to 9, and 11.9, at mid-stance
    expect(Math.abs(shank(OTHER_LANDS) - 21.5)).toBeLessThan(2);   // 20 to 23 as the other foot lands
    expect(Math.abs(shank(1) - 48)).toBeLessThan(6);  // 45 to 51 at toe-off
    expect(Math.abs(inDegrees(valueAt(MEAN_CURVE.legLine, 1)) - 27.5)).toBeLessThan(2);
    for (const share of [0.17, 0.25, 0.4]) expect(Math.abs(foot(share))).toBeLessThan(2);   // foot flat, within 2°
    expect(OTHER_LIFTS).toBe(0.21);
  });

  test('a straight knee puts the hip within 2 % of where the walkers have it, until the other foot lands', () => {
    const [ankleX, ankleY, hipX] = [stances('ankle_x'), stances('ankle_y'), stances('hip_x')];
    const legs = stances('hip_y').map((hipY, k) => hipY.map((y, i) => Math.hypot(y - ankleY[k]![i]!, hipX[k]![i]! - ankleX[k]![i]!)));
    const length = across(legs).map(mean), longest = Math.max(...length);
    length.forEach((one, i) => { if (i <= OTHER_LANDS * 100) expect(one / longest, `${i} %`).toBeGreaterThan(0.98); });
    expect(length.at(-1)! / longest).toBeLessThan(0.96);
  });
});

const angles = (contact: number, midStance: number, toeOff: number) =>
  curveOf({ kind: 'angles', ...Object.fromEntries(Object.entries({ contact, midStance, toeOff }).map(([name, value]) => [name, { value: degrees(value), origin: 'measured' }])) as Record<'contact' | 'midStance' | 'toeOff', { value: number; origin: 'measured' }> });

describe('three angles from a video', () => {
  test.each([[-22, 4, 51], [-9, 12, 31], [-15.53, 7.97, 43.04]])('%d, %d and %d are gone through, rising all the way', (contact, mid, toeOff) => {
    const { shank, source } = angles(contact, mid, toeOff);
    expect([shank[0], shank[50], shank[100]].map((one) => inDegrees(one!))).toEqual([contact, mid, toeOff].map((one) => expect.closeTo(one, 9) as number));
    shank.forEach((angle, i) => { if (i > 0) expect(angle).toBeGreaterThan(shank[i - 1]!); });
    expect(source).toBe('angles');
  });
  test('those of the mean give back the mean, so the shape is its own', () => {
    const { shank, legLine } = angles(-15.53, 7.97, 43.04);
    shank.forEach((angle, i) => expect(inDegrees(angle)).toBeCloseTo(MEAN_STANCE[i]![0], 9));
    legLine.forEach((angle, i) => expect(inDegrees(angle)).toBeCloseTo(MEAN_STANCE[i]![1], 9));
  });
});

describe('a table', () => {
  const rows = [[0, -18, 0.1], [0.2, -2, 1.05], [0.5, 8, 0.8], [0.8, 24, 1.1], [1, 45, 0.05]].map(([share, shank, push]) => ({ share: share!, shank: degrees(shank!), push: push! }));
  test('is gone through, its push too', () => {
    const curve = curveOf({ kind: 'table', rows });
    for (const { share, shank, push } of rows) {
      expect(valueAt(curve.shank, share)).toBeCloseTo(shank, 9);
      expect(valueAt(curve.push, share)).toBeCloseTo(push, 9);
    }
    expect(curve).toMatchObject({ source: 'table', pushSource: 'table' });
    expect(Math.max(...curve.push)).toBeCloseTo(1.1, 2);
  });
  test('without a push has that of the mean', () => {
    expect(curveOf({ kind: 'table', rows: rows.map(({ share, shank }) => ({ share, shank })) })).toMatchObject({ pushSource: 'mean', push: MEAN_CURVE.push });
  });
});

describe('what the ankle hands on', () => {
  test('locked: all of the turning, counted from how the shank stands', () => {
    drivenRolls(MEAN_CURVE, { kind: 'locked', lean: degrees(4), range: 0 }).forEach((roll, i) => expect(inDegrees(roll)).toBeCloseTo(MEAN_STANCE[i]![0] - 4, 9));
  });
  test('part-locked: what is left of it once the movement is used up, half to each side', () => {
    const rolls = drivenRolls(MEAN_CURVE, { kind: 'locked', lean: degrees(4), range: degrees(10) }).map(inDegrees);
    expect(rolls[0]).toBeCloseTo(-15.53 - 4 + 5, 9);
    expect(rolls[100]).toBeCloseTo(43.04 - 4 - 5, 9);
    MEAN_STANCE.forEach(([shank], i) => { if (Math.abs(shank - 4) < 5) expect(rolls[i], `${i} %`).toBe(0); });
    expect(rolls.filter((roll) => roll === 0).length).toBeGreaterThan(20);
  });
  test('free: the foot turns against the floor as it does in the data', () => {
    drivenRolls(MEAN_CURVE, { kind: 'free' }).forEach((roll, i) => expect(inDegrees(roll)).toBeCloseTo(-MEAN_STANCE[i]![2], 9));
  });
});
