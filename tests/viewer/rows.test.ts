import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { MAKINGS } from '../../src/fitting/words.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { withLeaveOut } from '../../viewer/desk/leaveOut.ts';
import { emptyRow, rowsFrom, rowsOf, withoutRow, withRow } from '../../viewer/keep/rows.ts';
import { sheetText, valueAt, withValue, type Json, type Sheet } from '../../viewer/keep/sheet.ts';

const ferry = JSON.parse(readFileSync('samples/ferry-pilot/sheet.json', 'utf8')) as Sheet;
const columns = fieldsOfSheet().find(({ path }) => path === 'making.rack')!.columns!, pairs = fieldsOfSheet().find(({ path }) => path === 'left.last.heights')!.columns!;
const eva = (thickness: number): Sheet => ({ name: `EVA ${thickness}`, thickness, density: 0.2, length: 1150, width: 950 });

describe('a place in a list of the sheet', () => {
  const sheet: Sheet = { making: { rack: [eva(3), eva(6)] }, left: { last: { heights: [[0, 20], [100, 5], [250, 9]] } } };
  test('is read and written, and the other rows stay the very same', () => {
    expect([valueAt(sheet, 'making.rack[1].thickness'), valueAt(sheet, 'left.last.heights[1][0]'), valueAt(sheet, 'making.rack[2].thickness'), valueAt(sheet, 'making.rack.length')]).toEqual([6, 100, undefined, undefined]);
    const after = withValue(sheet, 'making.rack[1].hardness.value', 45);
    expect(valueAt(after, 'making.rack[1]')).toEqual({ ...eva(6), hardness: { value: 45 } });
    expect(valueAt(after, 'making.rack[0]')).toBe(valueAt(sheet, 'making.rack[0]'));
    expect(withValue(after, 'making.rack[1].hardness.value', undefined)).toEqual(sheet);
  });
  test('cleared: a row goes as a whole, a row without fields waits, a number of a pair is left empty, a list without rows goes', () => {
    expect(valueAt(withValue(sheet, 'making.rack[0]', undefined), 'making.rack')).toEqual([eva(6)]);
    expect(withValue(withValue(sheet, 'making.rack[0]', undefined), 'making.rack[0]', undefined)).toEqual({ left: sheet.left });
    expect(withValue({ making: { rack: [{ name: 'cork' }] } }, 'making.rack[0].name', undefined)).toEqual({ making: { rack: [{}] } });
    expect(valueAt(withValue(sheet, 'left.last.heights[1][0]', undefined), 'left.last.heights')).toEqual([[0, 20], [null, 5], [250, 9]]);
  });
  test('a number put into any cell of any rack is the only thing that changes', () => {
    const rack = fc.array(fc.integer({ min: 1, max: 40 }).map(eva), { minLength: 1, maxLength: 6 });
    fc.assert(fc.property(rack, fc.nat(5), fc.constantFrom('thickness', 'density', 'length'), fc.integer({ min: 41, max: 99 }), (rows, which, name, value) => {
      const at = which % rows.length, after = withValue({ making: { rack: rows } }, `making.rack[${at}].${name}`, value);
      expect(valueAt(after, 'making.rack')).toEqual(rows.map((row, i) => (i === at ? { ...row, [name]: value } : row)));
    }), { seed: 20261128, numRuns: 100 });
  });
});

test('rows are begun with what they must have, put in, taken out, and made of what is usual', () => {
  expect(emptyRow(columns)).toEqual({ name: null, thickness: null, density: null, length: null, width: null });
  expect(emptyRow(pairs)).toEqual([null, null]);
  expect(withRow(['a', 'b'], 'c', 1)).toEqual(['a', 'c', 'b']);
  expect([withoutRow(['a', 'b'], 0), withoutRow(['a'], 0), rowsOf(undefined)]).toEqual([['b'], undefined, []]);
  const usual: Readonly<Record<string, Json>> = { '0.name': 'EVA 6', '0.hardness.scale': 'Shore A', '1.name': 'EVA 10' };
  expect(rowsFrom(columns, (i, { path }) => usual[`${i}${path}`])).toEqual([{ name: 'EVA 6', hardness: { scale: 'Shore A' } }, { name: 'EVA 10' }]);
});

test('a wrong cell is told at its cell, and the row that is left out mends it', () => {
  const sheet = sheetText(withValue(ferry, 'making.rack', [eva(6), { ...eva(10), thickness: 600 }])), reading = readSheet(sheet);
  if (reading.ok) throw new Error('no sheet is 600 mm thick');
  expect(withLeaveOut(sheet, reading.faults, 'mm')).toMatchObject([{ path: 'making.rack[1].thickness', leaveOut: 'making.rack[1]' }]);
});

test.each(MAKINGS)('%s stays ordered when its last setting is cleared, and is off the sheet when it is taken off', (name) => {
  const { making: _, ...bare } = ferry, ordered = withValue(bare, `making.${name}`, {});
  const field = fieldsOfSheet().find(({ path }) => path.startsWith(`making.${name}.`))!.path;
  expect(withValue(withValue(ordered, field, 1), field, undefined)).toEqual(ordered);
  expect(withValue(ordered, `making.${name}`, undefined)).toEqual(bare);
  expect(readSheet(sheetText(ordered)).ok).toBe(true);
});
