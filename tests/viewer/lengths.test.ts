import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Figure } from '../../src/checks/figure.ts';
import { figureDifferences, sheetDifferences } from '../../viewer/keep/differences.ts';
import { figureWords, shownLength, typedLength } from '../../viewer/keep/lengths.ts';

const seat: Figure = { key: 'seatHeight', label: 'Seat height', value: 50.8, unit: 'mm', digits: 1, estimated: true };

// An inch is 25.4 mm exactly (international yard and pound agreement, 1959).
test('a foot of ten inches is 254 mm, shown and typed', () => {
  expect([shownLength(10, 'in', 'mm'), shownLength(254, 'mm', 'in'), typedLength(254, 'mm', 'in'), typedLength(10, 'in', 'mm')]).toEqual([254, 10, 10, 254]);
});

test('in the sheet\'s own unit a number stays as it was written', () => {
  fc.assert(fc.property(fc.double({ noNaN: true }), fc.constantFrom('mm' as const, 'in' as const), (value, unit) =>
    Object.is(shownLength(value, unit, unit), value) && Object.is(typedLength(value, unit, unit), value)), { seed: 20260507 });
});

test('what is typed in the unit shown comes back as it was typed', () => {
  fc.assert(fc.property(fc.integer({ min: -40_000, max: 40_000 }), fc.constantFrom('mm' as const, 'in' as const), (n, shown) => {
    const own = shown === 'mm' ? 'in' : 'mm', typed = n / (shown === 'mm' ? 100 : 1000);
    expect(shownLength(typedLength(typed, shown, own), own, shown)).toBeCloseTo(typed, 9);
  }), { seed: 20260507 });
});

test('a figure in mm is said in inches, with what it rests on; an angle or a weight is said as ever', () => {
  expect([figureWords(seat, 'mm'), figureWords(seat, 'in')]).toEqual(['50.8 mm (est.)', '2.000 in (est.)']);
  expect(figureWords({ ...seat, value: 25.4, estimated: false, rolled: 3.2 }, 'in')).toBe('1.000 in at 3.2°');
  expect(figureWords({ ...seat, unit: 'g', value: 310, digits: 0 }, 'in')).toBe('310 g (est.)');
});

test('the table of differences follows the unit shown, for figures and for the sheet', () => {
  expect(figureDifferences([seat], [{ ...seat, value: 76.2 }], 'in')).toEqual([{ label: 'Seat height', before: '2.000 in (est.)', after: '3.000 in (est.)' }]);
  const field = { path: 'left.foot.length', label: 'foot length', help: '', unit: 'length', kind: 'number' } as const;
  const sheet = (length: number): { readonly left: { readonly foot: { readonly length: number } } } => ({ left: { foot: { length } } });
  expect(sheetDifferences(sheet(254), sheet(279.4), [field], 'in')).toEqual([{ label: 'left: foot length', before: '10 in', after: '11 in' }]);
});
