import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import type { Stance } from '../../src/fitting/fitting.ts';
import { changed, fittingOf, freeSheet, lockedSheet, prostheticSheet, type Json } from './sheets.ts';

// Source of the hip: 62 ± 13 mm ahead of the ankle in quiet standing (Woodhull 1985). The angle judges below place points and turn them; they share no formula.

const stanceOf = (sheet: Json): Stance => fittingOf(sheet).shoes.left!.foot!.stance;
const angleOf = (sheet: Json): number => {
  const stance = stanceOf(sheet);
  return stance.kind === 'locked' ? inDegrees(stance.ankleAngle.value) : NaN;
};

/** Slow judge: an ankle of this angle, standing on a board of this slope; how far the hip lies ahead of the pivot. */
function hipAheadOnBoard(ankleDeg: number, leg: number, plate: number, span: number): number {
  const board = Math.hypot(plate, span), nose: readonly [number, number] = [span / board, -plate / board];   // along the sole, heel to toe
  const square: readonly [number, number] = [-nose[1], nose[0]];                                             // up from the sole
  const turn = degrees(ankleDeg);
  return leg * (square[0] * Math.cos(turn) + nose[0] * Math.sin(turn));
}

describe('where the hip stands over a fixed ankle', () => {
  test.each([[-4, 30, 230], [0, 20, 200], [3, 0, 250], [-9, 40, 180]])('an ankle fixed at %d° is found again from plates of %d under a board of %d', (angle, height, span) => {
    const hipAhead = hipAheadOnBoard(angle, 890 - 78, height, span);
    const sheet = changed(lockedSheet(), { 'left.foot.ankleAngle': undefined, 'left.foot.heelPlates': { height, span, hipAhead } });
    expect(angleOf(sheet)).toBeCloseTo(angle, 9);
    expect(stanceOf(sheet)).toMatchObject({ found: 'heel plates and plumb line', ankleAngle: { origin: 'measured' } });
    expect(fittingOf(sheet).shoes.left!.foot!.heelPlates).toMatchObject({ height: { value: height }, span: { value: span } });
  });

  test('a typed angle counts as a goniometer reading unless it says otherwise', () => {
    expect(stanceOf(changed(lockedSheet(), { 'left.foot.ankleAngle': -3 }))).toMatchObject({ found: 'goniometer', ankleAngle: { value: degrees(-3) } });
    const plumbed = changed(lockedSheet(), { 'left.foot.ankleAngle': { value: -3, how: 'heel plates and plumb line', twice: true } });
    expect(stanceOf(plumbed)).toMatchObject({ found: 'heel plates and plumb line', ankleAngle: { value: degrees(-3), twice: true } });
  });

  test('a prosthetic foot set on the very slope it was aligned to leans by its shank', () => {
    const sheet = changed(prostheticSheet(), { 'left.foot.prosthesis': { heelRise: 16, shankLean: 4 } });
    const { tread, seatLength } = fittingOf(sheet).shoes.left!.last;
    const slope = inDegrees(Math.asin(16 / Math.hypot(16, tread.value - seatLength.value / 2)));
    expect(angleOf(sheet) + slope).toBeCloseTo(4, 9);
    expect(stanceOf(sheet)).toMatchObject({ found: 'prosthesis alignment' });
    const plain = changed(prostheticSheet(), { 'left.foot.prosthesis': { heelRise: 16 } });
    expect(angleOf(plain) + slope).toBeCloseTo(0, 9);
    expect(fittingOf(plain).shoes.left!.foot!.prosthesis!.shankLean.origin).toBe('default');
  });
});

describe('where it stands over a free ankle', () => {
  test('as measured, else 62 ± 13 mm, marked estimated', () => {
    expect(stanceOf(changed(freeSheet(), { 'left.foot.hipAhead': 51 }))).toEqual({ kind: 'free', hipAhead: { value: 51, origin: 'measured' } });
    expect(stanceOf(freeSheet())).toMatchObject({ kind: 'free', hipAhead: { value: 62, error: 13, origin: 'estimated', rule: expect.stringContaining('Woodhull 1985') as string } });
  });

  test('a free ankle bears estimates of its pivot, and says which rule made them', () => {
    const { pivotForward, pivotHeight } = fittingOf(changed(freeSheet(), { 'left.foot.pivotForward': undefined, 'left.foot.pivotHeight': undefined })).shoes.left!.foot!;
    expect(pivotForward).toMatchObject({ origin: 'estimated', error: 10 });
    expect(pivotForward.value).toBeCloseTo(0.24 * 265, 9);
    expect(pivotHeight).toMatchObject({ origin: 'estimated', error: 5, rule: expect.stringContaining('male') as string });
    expect(pivotHeight.value).toBeCloseTo(0.03868 * 1740 + 5 + 5, 9);
  });

  test('either ankle takes the outer ankle bone for its pivot, 5 mm above', () => {
    for (const sheet of [freeSheet(), lockedSheet()]) {
      const foot = fittingOf(changed(sheet, { 'left.foot.pivotHeight': undefined, 'left.foot.malleolusHeight': 71 })).shoes.left!.foot!;
      expect(foot).toMatchObject({ pivotHeight: { value: 76, origin: 'estimated' }, malleolusHeight: { value: 71, origin: 'measured' } });
    }
  });

  test.each([['toe joint', 'fused', false], ['midfoot', 'arthritic', false], ['ankle', 'arthritic', true], ['whole foot', 'fused', true]] as const)('%s, %s: ankle locked %s', (joint, state, locked) => {
    expect(fittingOf(changed(locked ? lockedSheet() : freeSheet(), { 'left.foot.stiff': { joint, state } })).shoes.left!.foot!.ankleLocked).toBe(locked);
  });
});
