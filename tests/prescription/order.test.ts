import { expect, test } from 'vitest';
import type { Foot, SheetRocker } from '../../src/fitting/fitting.ts';
import { completeOrder } from '../../src/prescription/order.ts';
import { plainOrder } from '../support/cases.ts';

const last = { length: 280, innerBall: 196, ballWidth: 96 };
const foot = (joint: Foot['joint']): Foot => ({ joint, strikeAngle: { value: 0.4, origin: 'measured' } }) as Foot;
const sheet: SheetRocker = {
  kind: 'rocker', toe: { rule: 'pivot-to-toe' }, standingFlat: 0, crestAngle: Math.PI / 2, stiffener: 1.5, minima: plainOrder.minima,
  taper: plainOrder.taper, edgeBeyond: plainOrder.edgeBeyond, outsole: plainOrder.outsole, foam: 'firm EVA',
};

/** Defaults are common practice of the trade. */
test('the apex left open lies at 65 % of the length', () => expect(completeOrder(sheet, foot('ankle'), last)).toMatchObject({ apexX: 182, apexByDefault: true, strike: 0.4 }));
test('for a toe joint never ahead of the inner joint less 8 mm', () => {
  expect(completeOrder(sheet, foot('toe joint'), last).apexX).toBe(182);
  expect(completeOrder(sheet, foot('toe joint'), { ...last, innerBall: 180 }).apexX).toBe(172);
});
test('at 78 % when the toe arc is as short as the pivot is high', () => expect(completeOrder({ ...sheet, toe: { rule: 'pivot-height' } }, foot('ankle'), last).apexX).toBeCloseTo(218.4, 9));
test('further back still where a turned crest lies further forward on the inner side: 48 mm times the tangent of 5° is 4.2 mm', () => {
  const turned = (crest: number): number => completeOrder({ ...sheet, crestAngle: (crest * Math.PI) / 180 }, foot('toe joint'), { ...last, innerBall: 180 }).apexX;
  expect(turned(95)).toBeCloseTo(172 - 4.2, 2);
  expect(turned(85)).toBe(172);
});
test('a given apex is kept, even for a toe joint', () => expect(completeOrder({ ...sheet, apex: 0.72 }, foot('toe joint'), last)).toMatchObject({ apexX: 0.72 * 280, apexByDefault: false }));
test('for a toe joint never ahead of it, not even with the short toe arc', () =>
  expect(completeOrder({ ...sheet, toe: { rule: 'pivot-height' } }, foot('toe joint'), last).apexX).toBe(188));
test('a seat height is asked for by the order, or not at all', () => {
  expect(completeOrder({ ...sheet, seatHeightAtLeast: 40 }, foot('ankle'), last).seatAtLeast).toEqual({ height: 40, by: 'order' });
  expect(completeOrder(sheet, foot('ankle'), last).seatAtLeast).toBeUndefined();
});
