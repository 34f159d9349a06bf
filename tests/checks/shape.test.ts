import { describe, expect, test } from 'vitest';
import { heightAt } from '../../src/profile/groundFace.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { all, bothRockers, changed, codesOf, one, rockerWith, type Part } from './support.ts';

describe('what sets the height', () => {
  test('is the tip in the worked case, with savings that come true when put in', () => {
    const found = one('GOVERNS')!, build = rockerWith().rocker.build;
    expect(found).toMatchObject({ severity: 'note', side: 'left', unit: 'mm', where: 'tip' });
    expect(found.measured).toBeCloseTo(5, 6);
    expect(found.at).toBeCloseTo(282, 1);
    const apex = build - rockerWith({ left: { order: { apex: (100 * (174.84 + 6)) / 282 } } }).rocker.build;
    const spring = build - rockerWith({ left: { last: { toeSpring: 18 } } }).rocker.build;
    expect(found.text).toBe(`The tip sets the height: 5.0 mm left at the toe. The apex 6 mm forward (order.apex) takes ${apex.toFixed(1)} mm off the whole sole; 3 mm more spring in the last (last.toeSpring) takes ${spring.toFixed(1)} mm off.`);
  });
  test('off the long axis it says how far, and between tread and tip what is asked there', () => {
    const change: Part = { left: { order: { crestAngle: 96, taper: { heelInner: 0, heelOuter: 0, foreInner: 2, foreOuter: 2 } } } }, found = one('GOVERNS', change)!, { shape } = rockerWith(change);
    const [, thick, ahead, aside, side, asked] = /: ([\d.]+) mm left (\d+) mm from the heel, (\d+) mm to the (inner|outer) side of the long axis\. ([\d.]+) mm are asked there/.exec(found.text)!;
    expect([Number(thick), Number(asked)]).toEqual([Number(found.measured!.toFixed(1)), Number(found.limit!.toFixed(1))]);
    expect(found.limit).toBeGreaterThan(5.049);
    // The place that is told, by the shape itself, to what a millimetre either way makes.
    const at = [found.at!, (side === 'outer' ? 1 : -1) * Number(aside)] as const;
    expect(Math.abs(at[0] - Number(ahead))).toBeLessThanOrEqual(0.5);
    expect(shape.upper(...at) + shape.build - heightAt(shape.face, rollX(shape.line, at))).toBeCloseTo(found.measured!, 1);
  });
  test('is the back edge where much is asked there, and a softer strike lowers it', () => {
    const change: Part = { left: { last: { toeSpring: 28 }, order: { minima: { edge: 14 } } } };
    const found = one('GOVERNS', change)!, build = rockerWith(change).rocker.build;
    expect(found.text).toMatch(/^The back edge sets the height: 14\.0 mm left at the back edge\. 5° less at heel strike \(foot\.strikeAngle\) takes/);
    const softer = build - rockerWith(changed(change, { left: { foot: { strikeAngle: 20 } } })).rocker.build;
    expect(found.text).toContain(`takes ${softer.toFixed(1)} mm off the whole sole`);
  });
  test('is the seat height asked for, with what thickness alone would need', () => {
    const found = one('GOVERNS', { left: { order: { seatHeightAtLeast: 42 } } })!, alone = 42 - 35.123;
    expect(found.text).toBe(`The seat height asked for (order.seatHeightAtLeast) sets the height: 42.0 mm at the seat. Thickness alone would let the sole be ${alone.toFixed(1)} mm lower.`);
  });
  test('is the other shoe where that one is higher', () => {
    const [left, right] = all('GOVERNS', bothRockers({ last: { toeSpring: 12 } }));
    expect(left!.text).toContain('The other shoe sets the height');
    expect(right!.text).toContain('The tip sets the height');
  });
  test('names only changes that leave a shape: no apex further forward than the arc can follow', () => {
    const change: Part = { left: { order: { toe: { rule: 'for-toe-spring', toeSpring: 22 }, apex: 75 } } };
    for (const [saved] of one('GOVERNS', change)!.text.matchAll(/takes ([\d.-]+|NaN) mm/g)) expect(saved).toMatch(/takes \d+\.\d mm/);
  });
});

describe('heights', () => {
  test('what is built up on purpose is not to be mended by the arcs', () => {
    const high = one('SEAT_HIGH', { left: { order: { seatHeightAtLeast: 62 } } })!, other = all('SEAT_HIGH', changed(bothRockers(), { left: { order: { seatHeightAtLeast: 62 } } }))[1]!;
    expect(high.text).toContain('Ask for less seat height');
    expect(other.text).toContain('Bring the other shoe down');
  });
});

describe('rolling', () => {
  test('a heel that ends before the strike angle says what it reaches', () => {
    const found = one('STRIKE_NOT_REACHED', { left: { foot: { strikeAngle: 40 } } })!;
    expect(found).toMatchObject({ severity: 'warn', where: 'back edge' });
    const asked = Number(/ask for ([\d.]+)°/.exec(found.text)![1]);
    expect(codesOf({ left: { foot: { strikeAngle: asked } } })).not.toContain('STRIKE_NOT_REACHED');
  });
  test('a small strike angle leaves no heel arc', () => {
    expect(codesOf({ left: { foot: { strikeAngle: 3 } } })).toContain('NO_HEEL_ARC');
    expect(codesOf()).not.toContain('NO_HEEL_ARC');
  });
  test('an end angle beyond the tip slope does nothing', () => {
    expect(codesOf({ left: { order: { toe: { rule: 'pivot-to-toe', endAngle: 40 } } } })).toContain('END_ANGLE_IDLE');
    expect(codesOf({ left: { order: { toe: { rule: 'pivot-to-toe', endAngle: 20 } } } })).not.toContain('END_ANGLE_IDLE');
  });
});
