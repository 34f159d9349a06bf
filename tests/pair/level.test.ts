import { describe, expect, test } from 'vitest';
import { degrees } from '../../src/geometry/units.ts';
import { faultsOf } from '../../src/geometry/mesh.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import { levelInWords, raiseFor, standsHigherBy } from '../../src/pair/level.ts';
import { isLevel, raiseShape } from '../../src/pair/raise.ts';
import { bodiesOf, solidsOf } from '../../src/solid/solids.ts';
import type { LegDifference, SheetMatch } from '../../src/fitting/fitting.ts';
import { plainLast } from '../support/cases.ts';

const none: LegDifference = { correct: 0, found: 'none found' };
const leftShort: LegDifference = { correct: 12, shorter: 'left', found: 'blocks' };

test('the shorter leg stands higher by what is to be corrected, the other lower', () => {
  expect([standsHigherBy('left', leftShort), standsHigherBy('right', leftShort), standsHigherBy('left', none)]).toEqual([12, -12, 0]);
  expect(levelInWords(leftShort)).toBe('The left foot is to stand 12.0 mm higher than the other.');
  expect(levelInWords(none)).toMatch(/one height/);
});

test('a raise makes up the difference at heel and ball apart', () => {
  expect(raiseFor('right', { seat: 28, ball: 14 }, { seat: 42, ball: 26 }, none)).toEqual({ seat: 14, ball: 12 });
  expect(raiseFor('right', { seat: 28, ball: 14 }, { seat: 42, ball: 26 }, leftShort)).toEqual({ seat: 2, ball: 0 });
  expect(raiseFor('left', { seat: 28, ball: 14 }, { seat: 42, ball: 26 }, leftShort)).toEqual({ seat: 26, ball: 24 });
});

test('within a millimetre the pair counts as level', () => {
  expect(isLevel({ seat: 0.9, ball: -0.9 })).toBe(true);
  expect(isLevel({ seat: 0.2, ball: 1.1 })).toBe(false);
});

describe('a plain raise of 18 at the seat and 14 at the ball', () => {
  const order: SheetMatch = {
    kind: 'match', seatHeightNow: { value: 28, origin: 'measured' }, ballHeightNow: { value: 14, origin: 'measured' },
    taper: { heelInner: degrees(2), heelOuter: 0, foreInner: 0, foreOuter: 0 }, edgeBeyond: { heel: 0, ball: 0, toe: 0 },
    outsole: { thickness: 3, material: 'microcellular rubber' }, foam: 'firm EVA',
  };
  const shape = raiseShape(plainLast, order, { seat: 18, ball: 14 }, 5), thickness = (x: number): number => shape.upper(x, 0) + shape.build - heightAt(shape.face, x);

  test('is as thick as asked at the centre of the seat, at the ball and at the tip', () => {
    expect(thickness(plainLast.seatLength / 2)).toBeCloseTo(18, 9);
    expect(thickness(plainLast.tread)).toBeCloseTo(14, 9);
    expect(thickness(plainLast.length)).toBeCloseTo(5, 9);
  });
  test('is level from heel to ball and turns up ahead of it without a kink', () => {
    for (const x of [0, 60, 150, plainLast.tread]) expect(heightAt(shape.face, x)).toBe(0);
    expect((heightAt(shape.face, plainLast.tread + 0.01) - 0) / 0.01).toBeLessThan(1e-3);
    expect(heightAt(shape.face, plainLast.length)).toBeGreaterThan(10);
  });
  test('has the shoe\'s own underside on top: straight from heel to ball, with its toe spring', () => {
    const at = (x: number): number => shape.upper(x, 0);
    expect(at(100)).toBeCloseTo((at(60) + at(140)) / 2, 9);
    const slope = at(141) - at(140);
    expect(at(plainLast.length) - slope * (plainLast.length - plainLast.tread)).toBeCloseTo(plainLast.toeSpring, 6);
  });
  test('is closed in all its solids', () => {
    for (const mesh of Object.values(solidsOf(bodiesOf(shape), 0.05))) expect(faultsOf(mesh)).toEqual([]);
  });
});
