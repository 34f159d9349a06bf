import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Figure } from '../../src/checks/figure.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { figureDifferences, sheetDifferences } from '../../viewer/keep/differences.ts';
import { copiedAcross, mirrored, readText, sheetText, valueAt, withValue, type Json, type Sheet } from '../../viewer/keep/sheet.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';

const seed = 20260506, runs = { seed, numRuns: 300 };
const SAMPLES = readdirSync('samples', { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
const textOf = (name: string): string => readFileSync(`samples/${name}/sheet.json`, 'utf8');
const sheetOf = (name: string): Sheet => JSON.parse(textOf(name)) as Sheet;
const baker = sheetOf('baker');

const name = fc.oneof(fc.constantFrom('left', 'right', 'order', 'toe', 'wearer', 'value', 'constructor', '__proto__'), fc.string({ minLength: 1, maxLength: 5 }).filter((word) => !word.includes('.')));
const path = fc.array(name, { minLength: 1, maxLength: 4 }).map((steps) => steps.join('.'));
const json = fc.jsonValue({ maxDepth: 3 }).map((value) => JSON.parse(JSON.stringify(value)) as Json);
const leaf = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.string(), fc.boolean(), fc.constant(null));
const sheet = fc.dictionary(name, json, { maxKeys: 5 }).map((value) => JSON.parse(JSON.stringify(value)) as Sheet);

/** Groups with nothing in them, by walking the plain text apart from the code under test. */
const emptyGroups = (value: Sheet): number => JSON.stringify(value).match(/\{\}/g)?.length ?? 0;
const frozen = <Value>(value: Value): Value => { if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen); return value; };

describe('a value on the sheet', () => {
  test('stands where it was put, whatever was there, and the sheet before is as it was', () => {
    fc.assert(fc.property(sheet, path, leaf, (before, at, value) => {
      const text = JSON.stringify(before), after = withValue(frozen(before), at, value), found = valueAt(after, at);
      expect(typeof value === 'number' && typeof found === 'object' && found !== null ? (found as Sheet).value : found).toEqual(value);
      expect(JSON.stringify(before)).toBe(text);
    }), runs);
  });

  test('put in and taken out of a place where nothing stood leaves the sheet as it was', () => {
    fc.assert(fc.property(sheet, path, leaf, (before, at, value) => {
      const above = at.split('.').map((_, i, steps) => steps.slice(0, i).join('.')).slice(1);
      fc.pre(valueAt(before, at) === undefined && above.every((place) => valueAt(before, place) === undefined));
      expect(withValue(withValue(before, at, value), at, undefined)).toEqual(before);
    }), runs);
  });

  test('is gone when taken out, and leaves no empty group behind', () => {
    fc.assert(fc.property(sheet, path, (before, at) => {
      const after = withValue(before, at, undefined);
      expect(valueAt(after, at)).toBeUndefined();
      if (Object.keys(after).length > 0) expect(emptyGroups(after)).toBeLessThanOrEqual(emptyGroups(before));
    }), runs);
  });

  test('by hand: groups are made on the way and go with their last field', () => {
    const made = withValue({ version: 1 }, 'right.order.toe.endAngle', 12);
    expect(made).toEqual({ version: 1, right: { order: { toe: { endAngle: 12 } } } });
    expect(withValue(made, 'right.order.toe.endAngle', undefined)).toEqual({ version: 1 });
  });

  test('taking out what is not there changes nothing: not what stands in its way, not a group begun empty', () => {
    const before: Sheet = { left: { last: {}, order: { toe: 5 } } };
    expect(withValue(before, 'left.order.toe.endAngle', undefined)).toBe(before);
    expect(withValue(before, 'left.last.pitch', undefined)).toBe(before);
  });

  test('the same value again is the very same sheet', () => { expect(withValue(baker, 'left.last.pitch', 14)).toBe(baker); });

  test('what is not put on the sheet is not on it', () => {
    for (const place of ['constructor', 'left.toString', 'left.foot.length.toFixed', 'overrides.length']) expect(valueAt({ ...baker, overrides: [] }, place)).toBeUndefined();
  });
});

describe('a number put in place of a measure', () => {
  test('keeps how it was taken and that it was taken twice', () => {
    expect(valueAt(withValue(baker, 'left.foot.pivotHeight', 84), 'left.foot.pivotHeight')).toEqual({ value: 84, twice: true });
    expect(valueAt(withValue(baker, 'left.foot.hipAhead', 60), 'left.foot.hipAhead')).toEqual({ value: 60, how: 'plumb line from the trochanter' });
  });
  test('replaces a shoe size', () => {
    const sized = withValue(baker, 'left.foot.length', { size: 43, system: 'Paris points' });
    expect(valueAt(withValue(sized, 'left.foot.length', 273), 'left.foot.length')).toBe(273);
  });
  test('a group put there replaces it', () => {
    expect(valueAt(withValue(baker, 'left.foot.hipAhead', { value: 60, how: 'laser' }), 'left.foot.hipAhead')).toEqual({ value: 60, how: 'laser' });
  });
});

describe('the text of a sheet', () => {
  test('read back is the sheet', () => {
    fc.assert(fc.property(sheet, (one) => { expect(readText(sheetText(one))).toEqual({ ok: true, sheet: JSON.parse(JSON.stringify(one)) as Sheet }); }), runs);
  });
  test.each(SAMPLES)('%s: the command reads the same from the text the page writes as from the file', (sample) => {
    const read = readText(textOf(sample));
    expect(read.ok && readSheet(sheetText(read.sheet))).toEqual(readSheet(textOf(sample)));
  });
  test('has two blanks a level and ends with its line', () => { expect(sheetText({ left: { apex: 68.5 } })).toBe('{\n  "left": {\n    "apex": 68.5\n  }\n}\n'); });
  test.each([
    ['', /empty/], ['{"left": {"apex": 68,5}}', /line 1, column 22/], ['[1, 2]', /no fitting sheet/], ['"sheet"', /no fitting sheet/],
    ['{"units": "mm", "units": "in"}', /units must be given only once/], ['{"mass": 1e999}', /ordinary size/], ['solid sole\nfacet', /must be JSON/],
  ])('%j is told why not', (text, words) => {
    const read = readText(text);
    expect(!read.ok && read.text).toMatch(words);
  });
  test('a byte order mark in front does not matter', () => { expect(readText(`\uFEFF${textOf('baker')}`)).toEqual({ ok: true, sheet: baker }); });
});

describe('left and right', () => {
  test('changed twice are as before', () => {
    fc.assert(fc.property(sheet, (one) => { expect(mirrored(mirrored(one))).toEqual(one); }), runs);
    for (const sample of SAMPLES) expect(sheetText(mirrored(mirrored(sheetOf(sample))))).toBe(sheetText(sheetOf(sample)));
  });
  test('by hand: shoes, the shorter leg and what was taken on a name change sides; a field called left elsewhere does not', () => {
    const taken = { code: 'THIN', by: 'A', reason: 'B' };
    expect(mirrored({ wearer: { legDifference: { correct: 12, shorter: 'left' } }, left: { a: 1 }, right: { b: 2 }, overrides: [{ ...taken, side: 'right' }, taken], making: { left: 3 } }))
      .toEqual({ wearer: { legDifference: { correct: 12, shorter: 'right' } }, left: { b: 2 }, right: { a: 1 }, overrides: [{ ...taken, side: 'left' }, taken], making: { left: 3 } });
    expect(mirrored({ left: { a: 1 } })).toEqual({ right: { a: 1 } });
  });
  test.each(SAMPLES)('%s: changed, the sheet reads as before with the sides changed', (sample) => {
    const [before, after] = [sheetOf(sample), mirrored(sheetOf(sample))].map((one) => readSheet(sheetText(one)));
    if (!before!.ok || !after!.ok) throw new Error('a sample must be readable, either way round');
    const shoe = (reading: typeof before, side: 'left' | 'right'): unknown => (reading!.ok ? JSON.parse(JSON.stringify(reading!.fitting.shoes[side] ?? null).replaceAll(/"side":"(left|right)"/g, '"side":""')) : undefined);
    expect(shoe(after, 'left')).toEqual(shoe(before, 'right'));
    expect(shoe(after, 'right')).toEqual(shoe(before, 'left'));
  });
  test('one copied across makes the other the same and leaves the rest', () => {
    const copied = copiedAcross(baker, 'left');
    expect(copied).toEqual({ ...baker, right: baker.left });
    expect(copiedAcross({ left: { a: 1 } }, 'right')).toEqual({ left: { a: 1 } });
  });
});

describe('differences', () => {
  const fields = fieldsOfSheet();
  const rows = (before: Sheet, after: Sheet): readonly (readonly string[])[] => sheetDifferences(before, after, fields).map(({ label, before: old, after: now }) => [label, old, now]);

  test('of two sheets, in words with units and in the order of the fields', () => {
    const after = [['right.order.taper.heelInner', 4], ['left.foot.pivotHeight', 84], ['left.last.pitch', undefined], ['wearer.risks', []], ['right.order.kind', 'match'], ['left.foot.strikeAngle', 18]] as const;
    expect(rows(baker, after.reduce<Sheet>((one, [at, value]) => withValue(one, at, value as Json | undefined), baker))).toEqual([
      ['risks', 'reduced feeling; fall within a year', 'none'],
      ['left: ankle pivot height', '82 mm, taken twice', '84 mm, taken twice'],
      ['left: tilt at heel strike', '20°', '18°'],
      ['left: pitch', '14 mm', 'not given'],
      ['right: taper, heel, inner wall', '3°', '4°'],
      ['right: what is made', 'rocker', 'match'],
    ]);
  });
  test('a sheet in inches says inches; what is counted still shows that it changed', () => {
    const inches = withValue(baker, 'units', 'in'), heights = (last: number): Sheet => ({ left: { last: { heights: [...Array(9).fill([1, 2]), [1, last]] as Json } } });
    expect(rows(baker, inches)).toContainEqual(['left: last length', '290 mm', '290 in']);
    expect(rows(heights(2), heights(3))).toEqual([['left: measured heights', '10 entries', '10 entries, altered']]);
  });
  test('a stiffener that is worked out in place of a thickness is told by what is wanted, and a thickness in its place by both', () => {
    const plain = withValue(baker, 'left.order.stiffener', 2), wanted = withValue(baker, 'left.order.stiffener', { wanted: 'rigid' });
    expect(rows(plain, wanted)).toEqual([['left: stiffener, how stiff', 'not given', 'rigid']]);
    expect(rows(wanted, plain)).toEqual([['left: stiffener thickness', 'not given', '2 mm'], ['left: stiffener, how stiff', 'rigid', 'not given']]);
    // Its last field taken out, it still is one that is worked out.
    expect(valueAt(withValue(wanted, 'left.order.stiffener.wanted', undefined), 'left.order.stiffener')).toEqual({});
  });
  test('there are none between a sheet and itself, however its fields are ordered, and some after any change', () => {
    const turned = JSON.parse(JSON.stringify(baker), (_, value: unknown) => (typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).reverse()) : value)) as Sheet;
    expect(rows(baker, turned)).toEqual([]);
    fc.assert(fc.property(fc.constantFrom(...fields.map((one) => one.path).filter((at) => at !== 'units')), fc.double({ min: 1e3, max: 2e3, noNaN: true }), (at, value) => {
      expect(rows(baker, withValue(baker, at, value))).toHaveLength(1);
    }), runs);
  });
  test('of two lists of figures: only what a maker would see differ', () => {
    const figure = (key: 'build' | 'governs' | 'apex', value: number): Figure => ({ key, label: key.toUpperCase(), value, unit: 'mm', digits: 1, estimated: key === 'apex' });
    expect(figureDifferences([figure('build', 18.48), figure('apex', 188), figure('governs', 1)], [figure('apex', 190), figure('build', 18.52)])).toEqual([
      { label: 'APEX', before: '188.0 mm (est.)', after: '190.0 mm (est.)' }, { label: 'GOVERNS', before: '1.0 mm', after: 'none' },
    ]);
  });
});
