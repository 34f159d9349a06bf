import { describe, expect, test } from 'vitest';
import { troubleWords, type TroubleWords } from '../../src/checks/troubleWords.ts';
import { design } from '../../src/design.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import type { Trouble } from '../../src/profile/infeasible.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { byText } from '../support/byText.ts';

/** Apex and walls both wrong: neither mends it alone. */
const TWO_AT_ONCE: Json = { 'left.order.apex': 46, 'left.order.seatHeightAtLeast': 110, 'left.order.taper': { heelInner: 25, heelOuter: 25, foreInner: 25, foreOuter: 25 } };

/** Sheets that leave no shape, one for each way they can fail. Lengths in mm. */
const SHEETS: readonly { readonly trouble: Trouble; readonly blamed: string; readonly changes: Json }[] = [
  { trouble: 'APEX_TOO_NEAR', blamed: 'left.order.apex', changes: { 'left.order.apex': 46 } },
  { trouble: 'APEX_TOO_NEAR', blamed: 'left.order.apex', changes: { 'left.order.apex': 62, 'left.order.standingFlat': 60 } },
  { trouble: 'TOE_ARC_TOO_SHORT', blamed: 'left.order.toe', changes: { 'left.order.toe': { rule: 'given', radius: 60 } } },
  { trouble: 'TOE_SPRING_OUT_OF_REACH', blamed: 'left.order.toe.toeSpring', changes: { 'left.order.toe': { rule: 'for-toe-spring', toeSpring: 2 } } },
  { trouble: 'TOE_OFF_OUT_OF_REACH', blamed: 'left.order.toe.toeOffAngle', changes: { 'left.order.apex': 90, 'left.order.toe': { rule: 'for-toe-off', toeOffAngle: 5 } } },
  { trouble: 'END_ANGLE_TOO_SMALL', blamed: 'left.order.toe.endAngle', changes: { 'left.order.toe': { rule: 'pivot-to-toe', endAngle: 2 } } },
  { trouble: 'WALLS_MEET', blamed: 'left.order.taper', changes: { 'left.order.seatHeightAtLeast': 110, 'left.order.taper': { heelInner: 25, heelOuter: 25, foreInner: 25, foreOuter: 25 } } },
  { trouble: 'TOE_ARC_TOO_TIGHT', blamed: 'left.order.toe', changes: { 'left.order.apex': 88, 'left.order.outsole': { thickness: 14 }, 'left.order.minima': { edge: 16, seat: 16, waist: 16, tread: 16, tip: 16 }, 'left.order.toe': { rule: 'given', radius: 16, endAngle: 40 } } },
  { trouble: 'APEX_TOO_NEAR', blamed: 'left.order.apex', changes: TWO_AT_ONCE },
];

/** With foam left at the tip, so that each sheet fails for its own reason only. */
const base = changed(lockedSheet(), { 'making.chordGap': 0.4, 'left.order.stiffener': 1.5, 'left.order.outsole': { thickness: 2 } });

/** Where a number of the sheet is a length. */
const isAngleOrShare = /Angle$|^apex$|taper|ankleAngle|mass|version/;

/** The same sheet in inches: every length divided, to four places. */
function inInches(value: unknown, name = ''): unknown {
  if (isAngleOrShare.test(name)) return value;
  if (typeof value === 'number') return Number((value / 25.4).toFixed(4));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inInches(one, key)]));
}

const failing = byText((text: string) => {
  const fitting = fittingOf(JSON.parse(text) as Json), designing = design(fitting);
  if (designing.ok) throw new Error('this sheet was to fail');
  return { fitting, first: designing.troubles[0]! };
});

function words(sheet: Json, spoken?: 'mm' | 'in'): { readonly trouble: Trouble; readonly words: TroubleWords } {
  const { fitting, first } = failing(JSON.stringify(sheet));
  return { trouble: first.trouble, words: troubleWords(first, fitting, spoken) };
}

/** Whether a sheet is without fault and has a shape. */
const works = byText((text: string): boolean => {
  const reading = readSheet(text);
  expect(reading.ok ? [] : reading.faults).toEqual([]);
  return reading.ok && design(reading.fitting).ok;
});

/** Puts a value in where the words say. */
function withValue(sheet: Json, path: string, value: number): Json {
  const [side, , part] = path.split('.'), order = (sheet[side!] as { order: Json }).order;
  const group = part === undefined ? {} : (order[part] as Record<string, number> | undefined) ?? {};
  if (path.endsWith('.taper')) return changed(sheet, { [path]: Object.fromEntries(Object.entries(group).map(([name, now]) => [name, Math.min(now, value)])) });
  return changed(sheet, { [path]: value });
}

for (const units of ['mm', 'in'] as const) {
  describe(`in a sheet in ${units}`, () => {
    for (const { trouble, blamed, changes } of SHEETS) {
      const inMm = changed(base, changes);
      const sheet = units === 'mm' ? inMm : { ...(inInches(inMm) as Json), units: 'in' };

      test(`${trouble} (${JSON.stringify(changes)}) names the field, and values in the sheet's units that work when they are typed in`, () => {
        const said = words(sheet);
        expect(said.trouble).toBe(trouble);
        expect(said.words.path).toBe(blamed);
        expect(said.words.text).toContain(`${blamed}: `);
        expect(said.words.works.length).toBeGreaterThan(0);
        for (const { values, text } of said.words.works) {
          for (const { value } of values) expect(text).toContain(String(value));
          expect(works(JSON.stringify(values.reduce((now, { path, value }) => withValue(now, path, value), sheet))), text).toBe(true);
        }
        const all = [said.words.text, ...said.words.works.map((one) => one.text)].join('\n');
        expect(all).not.toContain(units === 'in' ? ' mm' : ' in\n');
        for (const { value, unit } of said.words.works.flatMap(({ values }) => values)) expect(Number(value.toFixed(unit === 'in' ? 3 : 1))).toBe(value);
      });
    }
  });
}

describe.each([['mm', 'in', / mm\b/, / in\b/], ['in', 'mm', / in\b/, / mm\b/]] as const)('in a sheet in %s, spoken in %s', (units, spoken, own, other) => {
  test.each(SHEETS)('$trouble: the sentences name no length in the sheet\'s unit, and what they name works when it is put into the sheet', ({ blamed, changes }) => {
    const inMm = changed(base, changes), sheet = units === 'mm' ? inMm : { ...(inInches(inMm) as Json), units: 'in' };
    const said = words(sheet, spoken).words, all = [said.text, ...said.works.map(({ text }) => text)].join('\n');
    expect([said.path, said.works.length > 0, own.test(all)]).toEqual([blamed, true, false]);
    expect(other.test(said.text)).toBe(own.test(words(sheet).words.text));
    for (const { values, text } of said.works) {
      for (const { value, unit } of values) {
        const isLength = unit === 'mm' || unit === 'in', shown = unit === 'mm' ? value / 25.4 : value * 25.4;
        expect(isLength ? unit : units).toBe(units);
        expect(text).toContain(isLength ? `${Number(shown.toFixed(3))} ${spoken}` : String(value));
      }
      expect(works(JSON.stringify(values.reduce((now, { path, value }) => withValue(now, path, value), sheet))), text).toBe(true);
    }
  });
});

test('a value a step nearer to what was asked does not work, so the one named is the nearest', () => {
  const sheet = changed(base, { 'left.order.apex': 46 }), values = words(sheet).words.works.flatMap((one) => one.values);
  const { value } = values.find(({ path }) => path === 'left.order.apex')!;
  expect(design(fittingOf(changed(sheet, { 'left.order.apex': Number((value - 0.1).toFixed(1)) }))).ok).toBe(false);
});

test('a group of fields is spoken of as a whole, and two values that go together as a pair', () => {
  const texts = SHEETS.flatMap(({ changes }) => words(changed(base, changes)).words.works.map(({ text }) => text));
  expect(texts.some((text) => /^no taper of left\.order\.taper above \d+(\.\d)?°$/.test(text))).toBe(true);
  const pairs = words(changed(base, TWO_AT_ONCE)).words.works;
  expect(pairs.map(({ values }) => values.length)).toEqual([2]);
  expect(pairs[0]!.text).toContain(' together with ');
});

test('no pitch is named for a prosthetic foot; for others it is said to mean another last', () => {
  const near: Json = { 'left.order.apex': 46 };
  const aligned = changed(base, { ...near, 'left.foot.stiff': { joint: 'whole foot', state: 'prosthetic' }, 'left.foot.ankleAngle': undefined, 'left.foot.prosthesis': { heelRise: 12, shankLean: 4 } });
  const pitches = (sheet: Json): string[] => words(sheet).words.works.filter(({ values }) => values.some(({ path }) => path === 'left.last.pitch')).map(({ text }) => text);
  expect(pitches(aligned)).toEqual([]);
  expect(words(aligned).words.works.length).toBeGreaterThan(0);
  const [pitch] = pitches(changed(base, { 'left.order.apex': 50 }));
  expect(pitch).toMatch(/^left\.last\.pitch [\d.]+ mm \(another last, or this one altered to that pitch\)$/);
});

test('an ankle angle with the wrong sign is asked after, and only where the other sign would have the leg lean as it should', () => {
  const said = (changes: Json): string => words(changed(base, { 'left.last.pitch': 26, ...changes })).words.text;
  expect(said({ 'left.foot.ankleAngle': 4.5 })).toMatch(/Check the sign of ankleAngle: .* With -4\.5° the leg would lean 4\.2°/);
  expect(said({ 'left.foot.ankleAngle': -4.5, 'left.order.apex': 46 })).not.toMatch(/sign/);
  expect(said({ 'left.foot.ankleAngle': 9 })).not.toMatch(/sign/);
  expect(said({ 'left.foot.ankleAngle': 4.5, 'left.foot.heelPlates': undefined, 'left.last.pitch': 40, 'left.order.apex': 46 })).not.toMatch(/sign/);
});

describe('a wrong sign of the ankle angle', () => {
  const WRONG: Json = { 'left.last.pitch': 26, 'left.foot.ankleAngle': 4.5 };
  test('is mended by turning it round alone: no apex, no pitch, and what is named works', () => {
    const sheet = changed(base, WRONG), { works } = words(sheet).words;
    expect(works).toEqual([{ values: [{ path: 'left.foot.ankleAngle', value: -4.5, unit: '°' }], text: 'left.foot.ankleAngle -4.5° (the other sign)' }]);
    expect(design(fittingOf(changed(sheet, { 'left.foot.ankleAngle': -4.5 }))).ok).toBe(true);
  });
  test('comes first where something else is wrong as well', () => {
    const sheet = changed(base, { ...WRONG, 'left.order.toe': { rule: 'given', radius: 60 } }), { works } = words(sheet).words;
    expect(works.map(({ values }) => values.map(({ path }) => path)[0])).toEqual(['left.foot.ankleAngle']);
    expect(works[0]!.text).toContain(' together with ');
    expect(design(fittingOf(works[0]!.values.reduce((now, { path, value }) => withValue(now, path, value), sheet))).ok).toBe(true);
  });
  test('is asked of an angle said to be found on plates too, never of one worked out from them', () => {
    const typed = changed(base, { ...WRONG, 'left.foot.ankleAngle': { value: 4.5, how: 'heel plates and plumb line' } });
    expect(words(typed).words.text).toMatch(/Check the sign/);
    const plates = changed(base, { ...WRONG, 'left.foot.ankleAngle': undefined, 'left.foot.heelPlates': { height: 0, span: 230, hipAhead: 64 } });
    expect(words(plates).words.text).not.toMatch(/sign/);
  });
});
