import { describe, expect, test } from 'vitest';
import { sheetJsonSchema } from '../../src/fitting/schema.ts';
import { designWith, one, type Part } from './support.ts';

/** Every name of a field in a published schema. */
const namesIn = (node: unknown): string[] => typeof node !== 'object' || node === null ? []
  : Object.entries(node).flatMap(([key, value]) => [...(key === 'properties' ? Object.keys(value as object) : []), ...namesIn(value)]);

describe('the field to change', () => {
  const ORDERS: readonly (readonly [code: string, field: string, change: Part])[] = [
    ['THIN_FOAM', 'order.minima.tip', { left: { order: { stiffener: 1.2, outsole: { thickness: 2 } } } }],
    ['SIDE_TIPPING', 'order.taper', { left: { last: { heelWidth: 58 } } }],
    ['SIDE_TIPPING', 'order.edgeBeyond', { left: { last: { heelWidth: 58 } } }],
    ['STRIKE_NOT_REACHED', 'foot.strikeAngle', { left: { foot: { strikeAngle: 40 } } }],
    ['FLAT_OFFERED', 'order.standingFlat', {}],
    ['CANNOT_BE_RAISED', 'order.seatHeightAtLeast', { right: { order: { seatHeightNow: 45, ballHeightNow: 33 } } }],
    ['PRINT_BED', 'making.printBed', { making: { printBed: { x: 100, y: 100, z: 20 } } }],
  ];
  test.each(ORDERS)('%s names %s in brackets', (code, field, change) => expect(one(code, change)?.text).toContain(`(${field}`));
  test('is a field of the sheet', () => {
    const known = new Set(namesIn(sheetJsonSchema()));
    const texts = ORDERS.flatMap(([, , change]) => designWith(change).findings.map(({ text }) => text));
    const fields = texts.flatMap((text) => [...text.matchAll(/\(((?:foot|last|order|making|wearer|job)\.[\w.]+\w)/g)].map(([, field]) => field!));
    expect(new Set(fields).size).toBeGreaterThan(8);
    for (const step of fields.flatMap((field) => field.split('.'))) expect(known.has(step), step).toBe(true);
  });
});
