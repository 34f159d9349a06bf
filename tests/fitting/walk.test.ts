import { describe, expect, test } from 'vitest';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { stanceTable } from '../../src/fitting/stanceTable.ts';
import { changed, faultsIn, fittingOf, freeSheet, lockedSheet, type Json } from './sheets.ts';

const withWalk = (walk: unknown, more: Json = {}): Json => changed(lockedSheet(), { 'left.foot.walk': walk, ...more });
const walkOf = (sheet: Json) => fittingOf(sheet).shoes.left!.foot!.walk;
const faultsOf = (sheet: Json): string[] => faultsIn(JSON.stringify(sheet)).map(({ text }) => text);

const ROWS = [[0, -18.5], [20, -2.25], [50, 8], [80, 24], [100, 45.5]] as const;
const table = (apart: string, decimal = '.', end = '\n'): string => ROWS.map((row) => row.map((value) => String(value).replace('.', decimal)).join(apart)).join(end);

describe('a pasted table', () => {
  test.each([['tabs', table('\t')], ['tabs and decimal commas', table('\t', ',')], ['semicolons', table(';')], ['semicolons and decimal commas', table('; ', ',')], ['commas', table(',')], ['spaces', table('   ')], ['lines of another system', table(' ', '.', '\r\n')], ['a heading and empty lines', `% of stance\tshank\n\n${table('\t')}\n\n`]])('%s', (_, text) => {
    const walk = walkOf(withWalk({ table: text }));
    expect(walk?.kind === 'table' && walk.rows.map(({ share, shank }) => [share * 100, inDegrees(shank)])).toEqual(ROWS.map((row) => row.map((value) => expect.closeTo(value, 9) as number)));
  });

  test('a minus as printed is a minus', () => expect(stanceTable(table('\t').replaceAll('-', '−'), undefined)).toEqual(stanceTable(table('\t'), undefined)));

  const pushed = (most: number): string => ROWS.map((row, i) => [...row, [10, most, 80, 105, 5][i]].join('\t')).join('\n');
  test('a push is in % of body weight up to 200, in newtons above', () => {
    const push = (text: string): readonly (number | undefined)[] => { const walk = walkOf(withWalk({ table: text })); return walk?.kind === 'table' ? walk.rows.map((row) => row.push) : []; };
    expect(push(pushed(110))).toEqual([0.1, 1.1, 0.8, 1.05, 0.05].map((one) => expect.closeTo(one, 9) as number));
    expect(push(pushed(840))[1]).toBeCloseTo(840 / (78 * 9.80665), 9);
    expect(push(table('\t'))).toEqual(ROWS.map(() => undefined));
  });

  test.each([
    ['a word for a number', table('\t').replace('-2.25', 'back'), /shank angle; line 2 has "back"/],
    ['an angle nobody walks at', table('\t').replace('24', '240'), /a number from -60 to 85 ° as shank angle; line 4 has "240"/],
    ['a share beyond the whole', table('\t').replace('100', '101'), /a number from 0 to 100 % as share of stance; line 5 has "101"/],
    ['a push upwards out of the floor', pushed(-3), /push; line 2 has "-3"/],
    ['a column too few', table('\t').replace('50\t8', '50'), /the same on every line; line 3 has 1: "50"/],
    ['decimal commas beside spaces', table(' ', ','), /tabs or semicolons where decimals have a comma; line 1 has "0 -18,5"/],
    ['shares that go back', table('\t').replace('50\t', '10\t'), /rising; line 3 has 10 after 20/],
    ['half a stance', ROWS.map(([share, shank]) => [share / 2, shank].join('\t')).join('\n'), /runs from 0 to 50/],
    ['too few lines', '0\t-18\n100\t44', /at least 5 lines of numbers; it has 2/],
    ['no numbers', 'share and shank', /at least 5 lines of numbers; it has 0/],
    ['a walk read backwards', ROWS.map(([share, shank]) => [share, -shank].join('\t')).join('\n'), /turns forward over the standing foot, forward of upright positive; it goes from 18.5 to -45.5 °/],
    ['a push in body weights', ROWS.map((row, i) => [...row, [0.1, 1.1, 0.8, 1.05, 0][i]].join('\t')).join('\n'), /in N or % of body weight; the hardest, on line 2, is 1.1: in body weights that would be 110 %/],
    ['no push at all', ROWS.map((row) => [...row, 0].join('\t')).join('\n'), /the hardest, on line 1, is 0$|the hardest, on line 1, is 0;/],
    ['a push of a horse', pushed(9000), /at most 3 body weights, 2295 N; line 2 has 9000/],
  ])('%s is told with line and value', (_, text, told) => {
    const faults = faultsOf(withWalk({ table: text }));
    expect(faults[0]).toMatch(told);
    expect(faults.every((fault) => fault.startsWith('left.foot.walk.table must '))).toBe(true);
  });

  test('newtons need the body mass', () => expect(faultsOf(withWalk({ table: pushed(840) }, { 'wearer.mass': undefined }))[0]).toMatch(/wearer\.mass\); line 2 has 840/));
});

describe('three angles', () => {
  test('are read as measures', () => {
    expect(walkOf(withWalk({ angles: { contact: -17, midStance: { value: 8, how: 'side video', twice: true }, toeOff: 46 } }))).toEqual({
      kind: 'angles', contact: { value: degrees(-17), origin: 'measured' }, midStance: { value: degrees(8), origin: 'measured', how: 'side video', twice: true }, toeOff: { value: degrees(46), origin: 'measured' },
    });
  });
  test.each([
    ['do not rise', { angles: { contact: -17, midStance: 30, toeOff: 12 } }, /walk\.angles\.toeOff must be at least 1 ° more/],
    ['are out of reach', { angles: { contact: -70, midStance: 8, toeOff: 46 } }, /walk\.angles\.contact must be -60 to 20 °/],
    ['are only two', { angles: { contact: -17, toeOff: 46 } }, /walk\.angles\.midStance must be given/],
    ['come with a table', { angles: { contact: -17, midStance: 8, toeOff: 46 }, table: table('\t') }, /walk\.table must be left out/],
    ['are an empty walk', {}, /walk\.angles must be given, or table/],
  ])('that %s are refused', (_, walk, told) => {
    const faults = faultsOf(withWalk(walk));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(told);
  });
});

test('movement left belongs to an ankle that must not bend', () => {
  expect(fittingOf(changed(lockedSheet(), { 'left.foot.ankleRange': 8 })).shoes.left!.foot!.ankleRange).toEqual({ value: degrees(8), origin: 'measured' });
  expect(faultsOf(changed(freeSheet(), { 'left.foot.ankleRange': 8 }))[0]).toMatch(/ankleRange must be left out/);
});
