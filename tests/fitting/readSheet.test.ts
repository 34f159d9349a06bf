import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { degrees } from '../../src/geometry/units.ts';
import { POPULATION } from './population.ts';
import { changed, fittingOf, freeSheet, lockedSheet, numbersIn, pairSheet, type Json } from './sheets.ts';

// Bodies of the random sheets: persons of ANSUR II (2012 US Army survey, Gordon et al. 2014). One inch is 25.4 mm exactly (1959 agreement).

describe('a sheet that says little', () => {
  test('is completed by the defaults of the trade', () => {
    const { last, order, foot } = fittingOf(changed(freeSheet(), { 'left.last': { pitch: 14, toeSpring: 15 } })).shoes.left!;
    expect(last).toMatchObject({
      length: { value: 280, origin: 'estimated' }, seatLength: { value: 70, origin: 'estimated' }, tread: { origin: 'estimated' },
      heelBack: { value: 0, origin: 'default' }, camber: { value: 0, origin: 'default' }, insole: { value: 4, origin: 'default' }, inflare: { value: 4, origin: 'default' },
      ballWidth: { value: 0.376 * 265, error: 4.6 }, heelWidth: { value: 0.268 * 265, error: 4.8 }, toeShape: 'round',
      innerBall: { value: 196, origin: 'measured' }, outerBall: { value: 167, origin: 'measured' },
    });
    expect(last.tread.value).toBeCloseTo(0.715 * 280, 9);
    expect(foot!.strikeAngle).toMatchObject({ value: degrees(25), origin: 'default' });
    expect(order).toEqual({
      kind: 'rocker', toe: { rule: 'pivot-to-toe' }, standingFlat: 0, crestAngle: Math.PI / 2, stiffener: 1.5,
      taper: { heelInner: 0, heelOuter: 0, foreInner: 0, foreOuter: 0 }, edgeBeyond: { heel: 0, ball: 0, toe: 0 },
      outsole: { thickness: 2, material: 'microcellular rubber' }, foam: 'firm EVA', minima: { edge: 4, seat: 8, waist: 8, tread: 8, tip: 5 },
    });
  });

  test('a match without a foot takes shares of its last', () => {
    const { last, foot } = fittingOf(changed(pairSheet(), { 'right.last': { length: 280 } })).shoes.right!;
    expect(foot).toBeUndefined();
    expect(last).toMatchObject({ pitch: { value: 12, origin: 'default' }, toeSpring: { value: 8, origin: 'default' } });
    expect([last.innerBall, last.outerBall, last.ballWidth, last.heelWidth].map(({ value, origin }) => [Number(value.toFixed(6)), origin]))
      .toEqual([[196, 'estimated'], [168, 'estimated'], [99.4, 'estimated'], [70.84, 'estimated']]);
  });

  test('balls are carried onto the last with their marks', () => {
    const { last } = fittingOf(changed(lockedSheet(), { 'left.last.heelBack': 5, 'left.foot.ballOuter': undefined })).shoes.left!;
    expect(last.innerBall).toMatchObject({ value: 191, origin: 'measured' });
    expect(last.outerBall).toMatchObject({ origin: 'estimated', rule: expect.stringContaining('0.63') as string });
  });

  test('workshop: degrees, percent and defaults', () => {
    const { board, rack, ...plain } = fittingOf(lockedSheet()).making;
    expect(plain).toEqual({ chordGap: 0.05 });
    expect(board).toEqual({ thickness: 6, measured: false, length: 600, width: 400, kerf: 0.15, clearance: 0.1, apart: 5 });
    expect(rack.map(({ thickness, usual }) => [thickness, usual])).toEqual([[3, true], [6, true], [10, true], [12, true], [20, true]]);
    const { making } = fittingOf(changed(lockedSheet(), { making: { mould: { part: 'whole sole', shrink: { length: 1.2 } } } }));
    expect(making.mould).toMatchObject({
      part: 'whole sole', draft: degrees(3), shrink: [1.012, 1.01, 1.01], rim: 20, floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false,
      by: 'routed', closing: 'bolts', bolt: 6.6, cast: { name: 'self-skinning PU', density: 0.5, shrinkBasis: expect.stringMatching(/^as on the sheet where it says; else common practice/) },
    });
  });

  test('how a measure was taken stays with it; risks are ticked once', () => {
    const fitting = fittingOf(changed(lockedSheet(), { 'left.foot.length': { value: 265, how: 'size stick', twice: true }, 'wearer.risks': ['child', 'child'] }));
    expect(fitting.shoes.left!.foot!.length).toEqual({ value: 265, origin: 'measured', how: 'size stick', twice: true });
    expect(fitting.wearer.risks).toEqual(['child']);
  });

  test('risks that nobody asked about are told apart from none that are present', () => {
    const asked = (risks: unknown) => fittingOf(changed(lockedSheet(), { 'wearer.risks': risks })).wearer;
    expect(asked(undefined)).toMatchObject({ risks: [], risksAsked: false });
    expect(asked([])).toMatchObject({ risks: [], risksAsked: true });
    expect(asked(['child'])).toMatchObject({ risks: ['child'], risksAsked: true });
  });

  test('a leg difference may stand as the prescriber writes it', () => {
    const legDifference = { correct: 8, shorter: 'left', found: 'prescription' };
    expect(fittingOf(changed(lockedSheet(), { 'wearer.legDifference': legDifference })).wearer.legDifference).toEqual(legDifference);
  });
});

const between = (least: number, most: number): fc.Arbitrary<number> => fc.double({ min: least, max: most, noNaN: true });
const perhaps = <T>(arb: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(arb, { nil: undefined });

/** Lengths in mm and angles in degrees of one random but possible shoe. */
const shoeNumbers = fc.record({
  person: fc.constantFrom(...POPULATION.filter((_, i) => i % 13 === 0)), ankle: fc.constantFrom('free', 'angle', 'plates', 'prosthesis'),
  angle: between(-15, 10), ahead: between(30, 90), plate: between(0, 40), span: between(150, 300), heelRise: between(0, 40),
  beyondFoot: between(10, 22), pitch: between(5, 35), spring: between(5, 25), insole: perhaps(between(0, 12)), camber: perhaps(between(0, 6)), heelBack: perhaps(between(0, 6)),
  flat: perhaps(between(0, 60)), edge: perhaps(between(0, 6)), taper: perhaps(between(-15, 25)), radius: perhaps(between(120, 600)), seat: perhaps(between(20, 60)),
  size: fc.boolean(), tip: between(5, 12), gap: perhaps(between(0.005, 0.5)), rim: perhaps(between(10, 40)), correct: between(0, 30), heights: fc.boolean(),
});
type ShoeNumbers = typeof shoeNumbers extends fc.Arbitrary<infer T> ? T : never;

/** The sheet of these numbers, every length through `len`. */
function sheetOf(n: ShoeNumbers, units: 'mm' | 'in', len: (mm: number) => number): Json {
  const lens = (mm: number | undefined): number | undefined => (mm === undefined ? undefined : len(mm));
  const { person } = n, foot = person.footLength, last = foot + n.beyondFoot;
  const stance = {
    free: { hipAhead: { value: len(n.ahead), how: 'plumb line' } }, angle: { ankleAngle: n.angle },
    plates: { heelPlates: { height: len(n.plate), span: len(n.span), hipAhead: len(n.ahead) } }, prosthesis: { prosthesis: { heelRise: len(n.heelRise), shankLean: 3 } },
  }[n.ankle];
  const stiff = { free: { joint: 'toe joint', state: 'fused' }, angle: { joint: 'ankle', state: 'fused' }, plates: { joint: 'whole foot', state: 'arthritic' }, prosthesis: { joint: 'whole foot', state: 'prosthetic' } }[n.ankle];
  return JSON.parse(JSON.stringify({
    version: 1, units, job: { reference: 'P-1', date: '2026-01-31' },
    wearer: { mass: person.mass, stature: len(person.stature), crotchHeight: len(person.crotchHeight), sex: person.sex, legDifference: { correct: len(n.correct), shorter: 'left', found: 'blocks' } },
    left: {
      foot: {
        stiff, length: n.size ? { size: foot, system: 'mondopoint', allowance: len(n.beyondFoot) } : len(foot), ballInner: len(person.ballLength), ballOuter: len(person.ballLength * 0.85),
        pivotForward: len(foot * 0.24), malleolusHeight: len(person.malleolusHeight), ...stance,
      },
      last: {
        length: len(last), pitch: len(n.pitch), toeSpring: len(n.spring), insole: lens(n.insole), camber: lens(n.camber), heelBack: lens(n.heelBack),
        ...(n.heights && { heights: [[0, n.pitch], [last / 4, n.pitch], [last * 0.7, 0], [last, n.spring]].map((pair) => pair.map(len)) }),
      },
      order: {
        kind: 'rocker', standingFlat: lens(n.flat), edgeBeyond: { ball: lens(n.edge) }, taper: { heelOuter: n.taper }, seatHeightAtLeast: lens(n.seat), apex: 65,
        toe: n.radius === undefined ? undefined : { rule: 'given', radius: len(n.radius), endAngle: 40 }, minima: { tip: len(n.tip) },
      },
    },
    right: { last: { length: len(last) }, order: { kind: 'match', seatHeightNow: len(30), ballHeightNow: { value: len(11), twice: true } } },
    making: { chordGap: lens(n.gap), mould: { part: 'foam body', rim: lens(n.rim) }, printBed: { x: len(300), y: len(200), z: len(150) } },
  })) as Json;
}

describe('any sheet', () => {
  test('a possible one reads, and in inches gives the same fitting to 1e-9', () => {
    fc.assert(fc.property(shoeNumbers, (n) => {
      const mm = fittingOf(sheetOf(n, 'mm', (x) => x)), inches = fittingOf(sheetOf(n, 'in', (x) => x / 25.4));
      const a = [...numbersIn(mm)], b = [...numbersIn(inches)];
      expect(b.map(([place]) => place)).toEqual(a.map(([place]) => place));
      a.forEach(([place, value], i) => expect(Math.abs(value - b[i]![1]), place).toBeLessThan(1e-9));
    }), { seed: 25, numRuns: 200 });
  });

  test('a sheet with one length left in mm is not the same, so the test above can fail', () => {
    const sheet = changed(lockedSheet(), { 'left.order.standingFlat': 30 });
    const inches = changed(sheet, Object.fromEntries([...numbersIn(sheet)].filter(([place]) => !/version|mass|Angle|standingFlat/.test(place)).map(([place, value]) => [place, value / 25.4])));
    const reading = readSheet(JSON.stringify(changed(inches, { units: 'in' })));
    expect(reading).toMatchObject({ ok: false, faults: [{ path: 'left.order.standingFlat', rule: 'must be 0 to 2.362 in' }] });
  });

  test('whatever is put into any field: an answer without a hole in it, or faults that name a place', () => {
    const sheets = [lockedSheet(), freeSheet(), pairSheet()], places = sheets.map((sheet) => [...groupsIn(sheet)]);
    fc.assert(fc.property(fc.nat(2), fc.nat(), fc.jsonValue({ maxDepth: 3 }), fc.boolean(), (which, at, value, gone) => {
      const list = places[which]!, sheet = changed(sheets[which]!, { [list[at % list.length]!]: gone ? undefined : value });
      const reading = readSheet(JSON.stringify(sheet));
      if (reading.ok) for (const [place, number] of numbersIn(reading.fitting)) expect(Number.isFinite(number), place).toBe(true);
      else for (const { path, rule, value: came, text } of reading.faults) expect([path, rule, came, text].every((part) => part.length > 0)).toBe(true);
      expect(reading.ok || reading.faults.length > 0).toBe(true);
    }), { seed: 78, numRuns: 600 });
  });

  test('any text at all', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => { readSheet(text); }), { seed: 79, numRuns: 500 });
  });
});

/** Every place of a sheet, groups and fields alike. */
function* groupsIn(value: unknown, place = ''): Generator<string> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
  for (const [name, inner] of Object.entries(value)) {
    const here = place === '' ? name : `${place}.${name}`;
    yield here;
    yield* groupsIn(inner, here);
  }
}
