import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import { designWith } from '../../src/designWith.ts';
import type { Side } from '../../src/fitting/words.ts';
import type { LookedAt } from '../../src/targets/outcome.ts';
import { seek } from '../../src/targets/seek.ts';
import { withLoosened, withTaken } from '../../src/targets/taken.ts';
import { changed, faultsIn, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { answerTo, sampleWith, solved } from './support.ts';

/** The figures of a shoe as the whole program makes it: pair levelled, solids meshed. */
function madeFigures(sheet: Json, side: Side): (key: string) => number {
  const fitting = fittingOf(sheet), designing = designWith(() => [], fitting);
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('\n'));
  const figures = figuresOf(designing.design.shoes.find((shoe) => shoe.side === side)!, fitting);
  return (key) => figures.find((one) => one.key === key)!.value;
}

const SAME_AS: Readonly<Partial<Record<LookedAt, string>>> = {
  seatHeight: 'seatHeight', ballHeight: 'ballHeight', ballThickness: 'thicknessTread', tip: 'thicknessTip', toeSpring: 'toeSpringOfShoe', weight: 'soleWeight',
  strike: 'strikeReached', toeOff: 'toeOff', dropStrike: 'hipDropStrike', dropToeOff: 'hipDropToeOff', flat: 'standingFlat', lean: 'lean',
};

/** An upright sole that is solved quickly. */
const sheetWith = (targets: Json, changes: Json = {}): Json => changed(lockedSheet(), { 'left.order.targets': targets, 'left.order.apex': 65, 'left.last.camber': 0, 'making.chordGap': 0.4, ...changes });

describe('the sheet with the values taken is the shoe that was promised', () => {
  const CASES: Readonly<Record<string, readonly [Json, Side]>> = {
    'inches, a weight, another last': [sampleWith('bookbinder', 'left', { seatHeightAtMost: 1.04, ballThicknessAtMost: 0.5, weightAtMost: 92, free: ['apex', 'toe radius', 'last spring'] }), 'left'],
    'toe spring within two limits, the other shoe not far': [sampleWith('market-gardener', 'right', { toeSpringAtLeast: 20, toeSpringAtMost: 22, seatDifferenceAtMost: 7, free: ['apex', 'toe radius'] }), 'right'],
  };
  for (const [name, [sheet, side]] of Object.entries(CASES)) test(name, () => {
    const best = solved(answerTo(sheet, side)), taken = withTaken(sheet, side, best) as Json, figure = madeFigures(taken, side);
    for (const [own, key] of Object.entries(SAME_AS)) if (own !== 'weight' || best.figures.weight > 0) expect([own, figure(key)]).toEqual([own, expect.closeTo(best.figures[own as LookedAt], 7)]);
    for (const { limit, reached, name: limited } of best.limits) if (limited.endsWith('AtMost')) expect(reached).toBeLessThanOrEqual(limit + 1e-9); else expect(reached).toBeGreaterThanOrEqual(limit - 1e-9);
    expect(best.values.some((value) => value.changed)).toBe(true);
    expect(best.limits.some(({ bites }) => bites)).toBe(true);
  });

  test('what is not changed stays as it was written, and a last that is changed says so', () => {
    const sheet = sheetWith({ seatHeightAtMost: 29, free: ['apex', 'last spring'], spans: { apex: { least: 64, most: 65 } } }), best = solved(answerTo(sheet, 'left')), spring = best.values.find(({ name }) => name === 'last spring')!;
    expect(spring.changed).toBe(true);
    const apex = best.values.find(({ name }) => name === 'apex')!, expected = changed(sheet, { 'left.last.toeSpring': { value: spring.value, how: 'for the targets; was 15 mm' }, ...(apex.changed ? { 'left.order.apex': apex.value } : {}) });
    expect(withTaken(sheet, 'left', best)).toEqual(expected);
  });
});

describe('where no values keep to all limits', () => {
  test('the limit to blame is named with the least value that works: put in it does, a step less and it does not', () => {
    const free = ['apex'], answer = answerTo(sheetWith({ seatHeightAtMost: 24, ballThicknessAtMost: 30, free }), 'left');
    if (answer.ok) throw new Error('there should be none');
    expect(answer.blame.map(({ limits }) => limits.map(({ name }) => name))).toEqual([['seatHeightAtMost']]);
    const { works } = answer.blame[0]!.limits[0]!, again = (seat: number): boolean => answerTo(sheetWith({ seatHeightAtMost: seat, ballThicknessAtMost: 30, free }), 'left').ok;
    expect([again(works), again(works - 0.1)]).toEqual([true, false]);
  });

  test('two that are both too tight are named together, and both values together work', () => {
    const targets = { seatHeightAtMost: 20, toeSpringAtLeast: 60, free: ['apex'] }, answer = answerTo(sheetWith(targets), 'left');
    if (answer.ok) throw new Error('there should be none');
    expect(answer.blame).toHaveLength(1);
    const loosened = Object.fromEntries(answer.blame[0]!.limits.map(({ name, works }) => [name, works]));
    expect(Object.keys(loosened)).toEqual(['seatHeightAtMost', 'toeSpringAtLeast']);
    expect(answerTo(sheetWith({ ...targets, ...loosened }), 'left').ok).toBe(true);
  });

  test('what works is typed in the unit of the sheet, never tighter than it was tried', () => {
    // By hand: 24.3 / 25.4 = 0.95669 and 20 / 25.4 = 0.78740; 25.4 mm are an inch exactly.
    const limits = [['seatHeightAtMost', 'mm', 24.3], ['toeSpringAtLeast', 'mm', 20], ['weightAtMost', 'g', 93], ['tipAtMost', 'mm', 25.4]] as const;
    const blame = { limits: limits.map(([name, unit, works]) => ({ name, label: '', unit, limit: 1, works })) }, sheet = sheetWith({ seatHeightAtMost: 20, free: ['apex'] });
    const typed = (units: 'mm' | 'in'): unknown => withLoosened(sheet, 'left', blame, units);
    expect(typed('in')).toEqual(changed(sheet, { 'left.order.targets': { seatHeightAtMost: 0.957, free: ['apex'], toeSpringAtLeast: 0.787, weightAtMost: 93, tipAtMost: 1 } }));
    expect(typed('mm')).toEqual(changed(sheet, { 'left.order.targets': { seatHeightAtMost: 24.3, free: ['apex'], toeSpringAtLeast: 20, weightAtMost: 93, tipAtMost: 25.4 } }));
  });

  test('a rocker that is built up to the other one says so', () => {
    const answer = answerTo(sampleWith('baker', 'left', { seatHeightAtMost: 30, free: ['apex', 'toe radius'] }), 'left');
    expect(answer).toMatchObject({ ok: false, heldUp: true, blame: [{ limits: [{ name: 'seatHeightAtMost', works: 32.5 }] }] });
  });
});

describe('an answer', () => {
  test('changes nothing where the order keeps to the limits already, and nothing that cannot help', () => {
    const kept = solved(answerTo(sheetWith({ seatHeightAtMost: 60, free: ['apex', 'toe radius', 'standing flat', 'strike angle'] }, { 'left.order.standingFlat': 20 }), 'left'));
    expect(kept.values.filter((value) => value.changed)).toEqual([]);
    expect(kept.loss.weighed).toBe(0);
    const helped = solved(answerTo(sheetWith({ seatHeightAtMost: 29, free: ['apex', 'strike angle'] }), 'left'));   // the tip sets the height, so a shorter heel arc wins nothing
    expect(helped.values.map(({ name, changed: moved }) => [name, moved])).toEqual([['apex', true], ['strike angle', false]]);
  });

  test('is the same each time, in whatever order the measures are named', () => {
    const asked = (free: readonly string[]): object => answerTo(sheetWith({ seatHeightAtMost: 29, free }), 'left');
    expect(asked(['toe radius', 'apex'])).toEqual(asked(['apex', 'toe radius']));
  });

  test('keeps within the spans of the sheet, and thins the tip to what is wanted as far as it can', () => {
    const { values, loss } = solved(answerTo(sheetWith({ seatHeightAtMost: 29, tipWanted: 5, free: ['apex', 'toe radius'], spans: { apex: { most: 66 }, toeRadius: { least: 230 } } }), 'left'));
    expect(values[0]!.value).toBeLessThanOrEqual(66);
    expect(values[1]!.value).toBeGreaterThanOrEqual(230);
    expect(loss.tip).toBeLessThan(0.1);
  });

  test('leans no leg out of what is good for a pitch, and tells how far it is', () => {
    const sheet = sheetWith({ seatHeightAtMost: 30, free: ['pitch', 'toe radius'], spans: { pitch: { least: 0, most: 30 } } }), seeking = seek(fittingOf(sheet), 'left');
    let step = seeking.next(), told = 0;
    for (; !step.done; step = seeking.next()) expect(step.value.looked).toBe(told++);
    const answer = step.value!;
    expect(answer.looked).toBe(told);
    expect(solved(answer).figures.lean).toBeGreaterThanOrEqual(2 - 1e-9);
  });

  test('there is none for a shoe without targets', () => {
    expect(answerTo(lockedSheet(), 'left')).toBeUndefined();
    expect(answerTo(sheetWith({ seatHeightAtMost: 29, free: ['apex'] }), 'right')).toBeUndefined();
  });
});

test('all that is wrong with targets is told at once', () => {
  const faults = (targets: Json, changes: Json = {}): string[] => faultsIn(JSON.stringify(sheetWith(targets, changes))).map(({ path, rule }) => `${path} ${rule}`);
  expect(faults({ free: ['apex'] })).toEqual([expect.stringMatching(/^left\.order\.targets must ask for something: seatHeightAtMost/)]);
  expect(faults({ seatHeightAtMost: 2, toeSpringAtLeast: 30, toeSpringAtMost: 20, free: ['apex', 'toe radius', 'colour'], spans: { apex: { least: 70, most: 60 }, toeRadius: { least: 1 } } })).toEqual(expect.arrayContaining([
    'left.order.targets.seatHeightAtMost must be 5 to 120 mm', 'left.order.targets.toeSpringAtMost must not be less than toeSpringAtLeast', expect.stringMatching(/^left\.order\.targets\.free\[2\] must be one of/),
    'left.order.targets.spans.apex.most must not be less than least', 'left.order.targets.spans.toeRadius.least must be 10 to 5000 mm',
  ]));
  expect(faults({ seatHeightAtMost: 29, free: ['pitch'] }, { 'left.last.heights': [[0, 14], [60, 14], [202, 0], [282, 15]] })).toEqual([expect.stringMatching(/^left\.order\.targets\.free must not name "pitch" where the underside was measured/)]);
  expect(faults({ seatHeightAtMost: 29, free: [] })).toHaveLength(1);
  expect(faults({ seatHeightAtMost: 29, free: ['apex'], spans: { pitch: { most: 20 } } })).toEqual(['left.order.targets.spans.pitch must be left out, or "pitch" be named in free']);
});
