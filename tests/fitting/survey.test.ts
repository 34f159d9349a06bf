import { describe, expect, test } from 'vitest';
import {
  ballInnerFor, ballWidthFor, heelWidthFor, hipHeightFor, pivotHeightFor,
} from '../../src/fitting/estimates.ts';
import { RANGES } from '../../src/fitting/ranges.ts';
import { SURVEY, type SurveyName } from '../../src/fitting/survey.ts';
import { unusualMeasures } from '../../src/fitting/unusual.ts';
import type { Measure } from '../../src/fitting/measure.ts';
import type { Sex } from '../../src/fitting/words.ts';
import { ofSex, percentile, POPULATION, type Person } from './population.ts';
import { changed, fittingOf, freeSheet, type Json } from './sheets.ts';

// Outside values: ANSUR II, the 2012 US Army survey (Gordon et al. 2014), all 6,068 persons (tests/data/anthropometry, CREDIT.md there).

const measured = (value: number): Measure => ({ value, origin: 'measured' });
const COLUMN: Record<SurveyName, keyof Person> = {
  footLength: 'footLength', ballLength: 'ballLength', hipHeight: 'hipHeight', stature: 'stature', crotchHeight: 'crotchHeight', mass: 'mass',
  malleolusHeight: 'malleolusHeight',
};
const values = (people: readonly Person[], name: keyof Person): number[] => people.map((person) => person[name] as number);

describe('windows of the survey', () => {
  test('the file is whole', () => {
    expect(POPULATION).toHaveLength(6068);
    expect(ofSex('female')).toHaveLength(1986);
  });

  test.each(Object.keys(SURVEY) as SurveyName[])('%s: smallest, P1, P99 and largest as in the data', (name) => {
    for (const sex of ['female', 'male'] as const) {
      const all = values(ofSex(sex), COLUMN[name]);
      const found = [Math.min(...all), percentile(all, 0.01), percentile(all, 0.99), Math.max(...all)];
      found.forEach((value, i) => expect(Math.abs(SURVEY[name][sex][i]! - value)).toBeLessThan(0.0501));
    }
  });

  test('the ankle pivot is the outer ankle bone and 5 mm', () => {
    expect(RANGES['foot.pivotHeight'].usual!()).toEqual([56, 92]);
    expect(RANGES['foot.pivotHeight'].usual!('female')).toEqual([56, 80]);
    expect(RANGES['foot.pivotHeight'].limits).toEqual([24, 147]);
  });
});

/** Mean and root mean square of estimate less truth over a group. */
function errorsOver(people: readonly Person[], estimate: (person: Person) => number, truth: keyof Person, beyond = 0): { readonly mean: number; readonly spread: number } {
  const errors = people.map((person) => estimate(person) - beyond - (person[truth] as number));
  return {
    mean: errors.reduce((sum, error) => sum + error, 0) / errors.length,
    spread: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length),
  };
}

const sexes: readonly (Sex | undefined)[] = ['female', 'male', undefined];
const wearer = (sex: Sex | undefined, known: { readonly stature?: Measure; readonly crotchHeight?: Measure }) =>
  ({ ...known, ...(sex && { sex }), risks: [], risksAsked: true, legDifference: { correct: 0, found: 'none found' as const } });

describe('estimates against every person of the survey', () => {
  const cases = sexes.flatMap((sex) => [
    ['hip from crotch height', sex, (p: Person) => hipHeightFor(wearer(sex, { crotchHeight: measured(p.crotchHeight) }))!, 'hipHeight', 0],
    ['hip from stature', sex, (p: Person) => hipHeightFor(wearer(sex, { stature: measured(p.stature) }))!, 'hipHeight', 0],
    ['pivot from stature', sex, (p: Person) => pivotHeightFor(wearer(sex, { stature: measured(p.stature) }))!, 'malleolusHeight', 5],
  ] as const);
  const any = [
    ['inner ball', undefined, (p: Person) => ballInnerFor(p.footLength), 'ballLength', 0],
    ['ball width', undefined, (p: Person) => ballWidthFor(p.footLength), 'footWidth', 0],
    ['heel width', undefined, (p: Person) => heelWidthFor(p.footLength), 'heelWidth', 0],
  ] as const;

  test.each([...cases, ...any])('%s (%s): right on average, and the error stated is the error seen', (_, sex, estimate, truth, beyond) => {
    const { mean, spread } = errorsOver(ofSex(sex), (person) => estimate(person).value, truth, beyond);
    const stated = estimate(POPULATION[0]!);
    expect(Math.abs(mean)).toBeLessThan(0.5);
    expect(stated.origin).toBe('estimated');
    expect(Math.abs(stated.error! - spread)).toBeLessThan(0.1);
  });

  test('crotch height beats stature, and knowing the sex helps, so the order of the rules is right', () => {
    const spread = (sex: Sex | undefined, name: 'crotchHeight' | 'stature'): number => hipHeightFor(wearer(sex, { [name]: measured(1000) }))!.error!;
    expect(Math.max(...sexes.map((sex) => spread(sex, 'crotchHeight')))).toBeLessThan(Math.min(...sexes.map((sex) => spread(sex, 'stature'))));
    expect(hipHeightFor(wearer('male', { crotchHeight: measured(860), stature: measured(1780) }))!.rule).toContain('crotch height');
    expect(hipHeightFor(wearer(undefined, {}))).toBeUndefined();
  });

  test('another slope would miss, so the check above can fail', () => {
    const { mean } = errorsOver(POPULATION, ({ footLength }) => 0.72 * footLength, 'ballLength');
    expect(Math.abs(mean)).toBeGreaterThan(4);
  });
});

/** A sheet with the body of one person of the survey; what the survey lacks is left to estimates. */
function sheetOf(person: Person, known: boolean): Json {
  const { footLength, ballLength, malleolusHeight, hipHeight, stature, crotchHeight, mass, sex } = person;
  return changed(freeSheet(), {
    wearer: { mass, stature, crotchHeight, ...(known && { sex }), legDifference: { correct: 0, found: 'none found' } },
    'left.foot': {
      stiff: { joint: 'toe joint', state: 'fused' }, length: footLength, ballInner: ballLength, hipHeight,
      ...(known ? { malleolusHeight } : { pivotHeight: malleolusHeight + 5 }),
    },
    'left.last': { pitch: 14, toeSpring: 15 },
  });
}

const MEASURED = ['mass', 'stature', 'crotchHeight', 'hipHeight', 'footLength', 'ballLength', 'malleolusHeight'] as const;

describe('whose measures are unusual', () => {
  test('nobody who is between P5 and P95 of his or her sex on every measure', () => {
    let ordinary = 0;
    for (const sex of ['female', 'male'] as const) {
      const people = ofSex(sex), spans = MEASURED.map((name) => [name, percentile(values(people, name), 0.05), percentile(values(people, name), 0.95)] as const);
      const middle = people.filter((person) => spans.every(([name, least, most]) => person[name] >= least && person[name] <= most));
      ordinary += middle.length;
      for (const person of middle.filter((_, i) => i % 10 === 0))
        for (const known of [true, false]) expect(unusualMeasures(fittingOf(sheetOf(person, known)))).toEqual([]);
    }
    expect(ordinary).toBeGreaterThan(3000);
  });

  test('every twentieth person of the survey reads, whatever the body', () => {
    for (const person of POPULATION.filter((_, i) => i % 20 === 0)) expect(() => fittingOf(sheetOf(person, true))).not.toThrow();
  });

  test('a measure beyond P99 is, until it was taken twice', () => {
    const person = POPULATION.find(({ sex }) => sex === 'female')!;
    const sheet = changed(sheetOf(person, true), { 'left.foot.hipHeight': 960 });
    expect(unusualMeasures(fittingOf(sheet)).find(({ path }) => path === 'left.foot.hipHeight')).toMatchObject({
      value: 960, least: 745.9, most: 952, unit: 'mm',
      text: 'left.foot.hipHeight is 960 mm; usual is 745.9 to 952 mm (2012 US Army survey, Gordon et al. 2014, P1 to P99 of women). Take it again, and mark it "twice": true when both readings agree.',
    });
    expect(unusualMeasures(fittingOf(changed(sheet, { 'left.foot.hipHeight': { value: 960, twice: true } })))).toEqual(unusualMeasures(fittingOf(sheetOf(person, true))));
    expect(unusualMeasures(fittingOf(changed(sheet, { 'wearer.sex': undefined })))).not.toContainEqual(expect.objectContaining({ path: 'left.foot.hipHeight' }));
  });

  test('an estimate is not asked about: the measure behind it is', () => {
    const sheet = changed(freeSheet(), { 'wearer.stature': 2010, 'left.foot.hipHeight': undefined, 'left.foot.pivotHeight': undefined });
    expect(unusualMeasures(fittingOf(sheet)).map(({ path }) => path)).toEqual(['wearer.stature']);
  });

  test('angles are told in degrees', () => {
    const [only] = unusualMeasures(fittingOf(changed(freeSheet(), { 'left.foot.strikeAngle': 30 })));
    expect(only).toMatchObject({ path: 'left.foot.strikeAngle', value: 30, least: 10, most: 25, unit: 'deg' });
  });
});
