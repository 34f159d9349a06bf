import { describe, expect, test } from 'vitest';
import { isRangeName, rangeOf } from '../../src/fitting/ranges.ts';
import { readSheet, type Fault } from '../../src/fitting/readSheet.ts';
import { changed, lockedSheet, type Json } from './sheets.ts';

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
const INCH = 25.4;

/** Every length of a sheet times a factor; what a length is, the range table says. */
function lengthsTimes(value: unknown, by: number, path: readonly string[] = []): unknown {
  if (typeof value === 'number') {
    const name = path.filter((step, i) => !(i === 0 && /^(left|right)$/.test(step)) && step !== 'value').join('.');
    return isRangeName(name) && rangeOf(name).unit === 'mm' ? Number((value * by).toPrecision(12)) : value;
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, lengthsTimes(one, by, [...path, key])]));
}

const faultsIn = (sheet: Json, spoken?: 'mm' | 'in'): readonly Fault[] => { const read = readSheet(JSON.stringify(sheet), spoken); return read.ok ? [] : read.faults; };

/** Whole hundredths of an inch, so that neither unit rounds the lengths of the other. */
const hundredths = (sheet: Json): Json => JSON.parse(JSON.stringify(sheet), (_, one: unknown) => (typeof one === 'number' ? Number(one.toFixed(2)) : one)) as Json;
const base = hundredths({ ...(lengthsTimes(lockedSheet(), 1 / INCH) as Json), units: 'in' });
/** Sheets in inches with a fault each. */
const BROKEN: readonly Json[] = [
  { 'left.foot.length': 2 }, { 'left.foot.length': 26 }, { 'left.foot.length': 'ten' }, { 'left.foot.length': { value: 2, how: 'slide' } }, { 'left.foot.pivotForward': 9 }, { 'left.foot.hipHeight': 8 },
  { 'left.foot.hipHeight': 11 }, { 'left.last.length': 8 }, { 'left.last.seatLength': 7 }, { 'left.last.ballWidth': 6 }, { 'left.last.heelWidth': 5 }, { 'left.last.inflare': -1.2 }, { 'wearer.stature': 1.7 },
  { 'left.last.heights': { value: 1 } }, { 'left.foot.ankleAngle': 60 }, { 'left.order.apex': 20 }, { 'left.order.toe': { rule: 'given' } }, { 'left.foot.length': { size: 4, system: 'mondopoint' } }, { 'making.chordGap': 2 },
].map((changes) => changed(base, changes as Json));

/** Without what is asked about the sheet's own numbers, which are others there. */
const alike = (faults: readonly Fault[]): Fault[] => faults.map((one) => ({ ...one, text: one.text.replace(/ On the sheet it is .*$/, '') }));

describe('faults spoken in the other unit', () => {
  test.each(BROKEN.map((sheet) => [faultsIn(sheet)[0]!.path, sheet] as const))('%s: what a sheet written in that unit would be told, at the same places', (_, inches) => {
    const mm = { ...(lengthsTimes(inches, INCH) as Json), units: 'mm' };
    expect(faultsIn(inches).length).toBeGreaterThan(0);
    expect(alike(faultsIn(mm, 'in'))).toEqual(faultsIn(inches));
    expect(alike(faultsIn(inches, 'mm'))).toEqual(faultsIn(mm));
    expect(faultsIn(mm, 'mm')).toEqual(faultsIn(mm));
  });

  test('the unit is in the words: the rule, what came and what it would be', () => {
    const said = (length: number, units: 'mm' | 'in', spoken: 'mm' | 'in'): string => faultsIn({ ...changed(lockedSheet(), { 'left.foot.length': length }), units }, spoken).find(({ path }) => path === 'left.foot.length')!.text;
    expect(said(685.8, 'mm', 'in')).toBe('left.foot.length must be 3.898 to 19.07 in; got 27. Lengths are in inches: is it in cm? 27 cm would be 10.63 in.');
    expect(said(1, 'in', 'mm')).toBe('left.foot.length must be 99 to 484.5 mm; got 25.4. Lengths are in mm: is it in cm? 25.4 cm would be 254 mm.');
  });

  test('a sheet whose own numbers are in the wrong unit is asked about them, where what is shown explains nothing', () => {
    const [fault] = faultsIn(changed(lockedSheet(), { 'left.foot.length': 10.2 }), 'in');
    expect(fault!.text).toBe('left.foot.length must be 3.898 to 19.07 in; got 0.402. On the sheet it is 10.2, in mm: is it in inches? 10.2 inches would be 10.2 in.');
  });

  test('as long as the sheet does not say what it is written in, both are asked for and no length is judged', () => {
    const sheet = changed(lockedSheet(), { units: undefined, 'left.foot.length': 'ten' });
    expect(faultsIn(sheet, 'in')).toEqual(faultsIn(sheet));
  });
});

test('a sheet that can be read is read the same, whatever it is spoken of in', () => {
  expect(readSheet(JSON.stringify(lockedSheet()), 'in')).toEqual(readSheet(JSON.stringify(lockedSheet())));
});
