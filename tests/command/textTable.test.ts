import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leftOf, table, wrapped } from '../../src/command/textTable.ts';

const SEED = 20260311;

test('lines break between words and never run over', () => {
  expect(wrapped('the tip sets the height', 8)).toEqual(['the tip', 'sets the', 'height']);
  expect(wrapped('', 8)).toEqual(['']);
  expect(wrapped('abcdefghij k', 4)).toEqual(['abcd', 'efgh', 'ij k']);
  fc.assert(fc.property(fc.string({ unit: fc.constantFrom(' ', 'a', 'ä', '·', '📐') }), fc.integer({ min: 1, max: 30 }), (text, width) => {
    const lines = wrapped(text, width);
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(width);
    expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
  }), { seed: SEED });
});

test('cells stand under their heads and wrap in their columns', () => {
  expect(table([{ head: 'side', most: 5 }, { head: 'where', most: 10 }, { head: 'n', most: 4 }], [
    ['left', 'under the seat', '4.2'],
    ['right', 'tip', '5\n6'],
  ])).toEqual([
    'side   where      n',
    '',
    'left   under the  4.2',
    '       seat',
    '',
    'right  tip        5',
    '                  6',
  ]);
});

test('ink goes round a cell after it was set, and not round its head', () => {
  const lines = table([{ head: 'x', most: 4, ink: (line, row) => `<${row}${line}>` }, { head: 'y', most: 4 }], [['ab', 'c'], ['d', 'e']]);
  expect(lines).toEqual(['x   y', '', '<0ab>  c', '', '<1d >  e']);
});

test('what is left of a line', () => expect(leftOf(40, [5, 5])).toBe(26));
