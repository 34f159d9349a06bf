import { describe, expect, test } from 'vitest';
import { all, changed, codesOf, designWith, one, type Part } from './support.ts';

describe('measures', () => {
  test('an unusual one asks for a second reading, once taken twice no more', () => {
    const found = one('TAKEN_TWICE', { left: { foot: { pivotForward: 80 } } })!;
    expect(found).toMatchObject({ severity: 'warn', side: 'left', measured: 80, limit: 75, unit: 'mm' });
    expect(codesOf({ left: { foot: { pivotForward: { value: 80, twice: true } } } })).not.toContain('TAKEN_TWICE');
  });
  test('an unusual one that would be usual in another unit is asked after', () => {
    expect(one('TAKEN_TWICE', { left: { last: { toeSpring: 1.4 } } })!.text).toContain('1.4 cm would be 14 mm');
    expect(one('TAKEN_TWICE', { left: { foot: { pivotForward: 80 } } })!.text).toMatch(/when both readings agree\.$/);
    expect(one('TAKEN_TWICE', { wearer: { mass: 140 } })!.text).not.toContain('would be');
  });
  test('a sheet that does not say whether risks were asked about is asked back; an empty list says there are none', () => {
    const silent = designWith({ wearer: { risks: undefined } });
    expect(silent.findings.find(({ code }) => code === 'RISKS_NOT_ASKED')).toMatchObject({ severity: 'warn', text: expect.stringContaining('(wearer.risks; [] for none)') });
    for (const risks of [[], ['child']]) expect(codesOf({ wearer: { risks } })).not.toContain('RISKS_NOT_ASKED');
  });
  test('a leg difference finer than can be found is asked after, with what it would be in centimetres', () => {
    const correct = (value: number, change: Part = {}): Part => changed({ wearer: { legDifference: { correct: value, shorter: 'left', found: 'blocks' } } }, change);
    expect(one('LEG_DIFFERENCE_FINE', correct(1.2))).toMatchObject({ severity: 'warn', measured: 1.2, limit: 3, unit: 'mm' });
    expect(one('LEG_DIFFERENCE_FINE', correct(1.2))!.text).toContain('1.2 cm would be 12 mm');
    expect(codesOf(correct(2.9))).toContain('LEG_DIFFERENCE_FINE');
    expect(codesOf(correct(3))).not.toContain('LEG_DIFFERENCE_FINE');
    expect(codesOf()).not.toContain('LEG_DIFFERENCE_FINE');
  });
  test('an unusual spring of the last is said once', () =>
    expect(designWith({ left: { last: { toeSpring: 27 } } }).findings.filter(({ text, severity }) => severity === 'warn' && /spring/i.test(text))).toHaveLength(1));
  test('one about the client belongs to no side', () => expect('side' in one('TAKEN_TWICE', { wearer: { mass: 140 } })!).toBe(false));
  test('every estimate has one note with its rule and error', () => {
    const found = all('ESTIMATED', { wearer: { crotchHeight: 800 }, left: { foot: { hipHeight: undefined }, last: { seatLength: undefined } } }).filter(({ side }) => side === 'left');
    expect(found.map(({ text }) => text.split(' was')[0])).toEqual(['The hip height', 'The seat length']);
    expect(found[0]!.text).toMatch(/± 19\.3 mm: hip height = 0\.97289 × crotch height/);
    expect(found[0]!.basis).toContain('Gordon');
    expect(found[1]!.text).toContain('a quarter of the last length');
  });
  test('an estimate of a match is named only where a figure rests on it', () => {
    const said = (change: Part = {}): string[] => all('ESTIMATED', change).filter(({ side }) => side === 'right').map(({ text }) => text.split(' was')[0]!);
    expect(new Set(said())).toEqual(new Set(['The inflare', 'The inner toe joint on the last', 'The outer toe joint on the last']));
    expect(said({ right: { last: { pitch: undefined, toeSpring: undefined } } })).toEqual(['The toe spring of the last', ...said()]);
    expect(said({ right: { order: { seatHeightNow: 39, ballHeightNow: 27 } } })).toEqual([]);
  });
  test('angles are said in degrees', () => expect(one('ESTIMATED', { left: { foot: { strikeAngle: undefined } } })).toMatchObject({ unit: 'deg', measured: expect.closeTo(25, 9) }));
  test('a tape is not trusted with the leg difference', () => {
    const found = one('LEG_BY_TAPE', { wearer: { legDifference: { found: 'tape' } } })!;
    expect(found.text).toContain('7 of 20');
    expect(found.basis).toBe('J Rheumatol 2014;41:1689');
    for (const way of ['blocks', 'x-ray', 'none found']) expect(codesOf({ wearer: { legDifference: { found: way } } })).not.toContain('LEG_BY_TAPE');
  });
  test('prescriber and date are asked for', () => {
    expect(one('PRESCRIPTION_MISSING', { job: { prescriber: undefined } })!.text).toContain('who prescribed the shoes. A rocker is prescribed: enter it before cutting (job.prescriber)');
    expect(all('PRESCRIPTION_MISSING', { job: { prescriber: undefined, prescribed: undefined } })).toHaveLength(1);
    const short = { wearer: { legDifference: { correct: 6, shorter: 'left' } }, job: { prescribed: undefined } } as const;
    expect(one('PRESCRIPTION_MISSING', short)!.text).toContain('when they were prescribed. A rocker and a leg difference are prescribed');
    expect(codesOf().filter((code) => code.startsWith('PRESCRI'))).toEqual([]);
  });
});
