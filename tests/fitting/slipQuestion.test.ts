import fc from 'fast-check';
import { expect, test } from 'vitest';
import { slipQuestion } from '../../src/fitting/convert.ts';
import { RANGES, rangeOf, type RangeName } from '../../src/fitting/ranges.ts';

// One inch is 25.4 mm exactly (1959 agreement).

const usualOf = (name: RangeName): readonly [number, number] => rangeOf(name).usual?.() ?? rangeOf(name).limits;
const LENGTHS = (Object.keys(RANGES) as RangeName[]).filter((name) => rangeOf(name).unit === 'mm' && usualOf(name)[0] > 1);

test.each([
  ['last.toeSpring', 1.4, 'mm', 'Lengths are in mm: is it in cm? 1.4 cm would be 14 mm.'],
  ['last.toeSpring', 0.55, 'mm', 'Lengths are in mm: is it in cm or inches? 0.55 cm would be 5.5 mm, 0.55 inches would be 13.97 mm.'],
  ['wearer.stature', 1.68, 'mm', 'Lengths are in mm: is it in m? 1.68 m would be 1680 mm.'],
  ['last.pitch', 1.4 * 25.4, 'in', 'Lengths are in inches: is it in cm? 1.4 cm would be 0.5512 in.'],
  ['foot.pivotForward', 62 * 25.4, 'in', 'Lengths are in inches: is it in mm? 62 mm would be 2.441 in.'],
] as const)('%s of %d mm on a sheet in %s', (name, value, units, question) => expect(slipQuestion(name, value, units)).toBe(question));

test.each([
  ['last.toeSpring', 14], ['last.toeSpring', 2800], ['last.toeSpring', 0], ['last.heelBack', -12], ['last.camber', 10], ['foot.ankleAngle', 40], ['wearer.mass', 20], ['last.pitch', NaN],
] as const)('%s of %d: no slip explains it, or it is usual', (name, value) => {
  expect(slipQuestion(name, value, 'mm')).toBe('');
  expect(slipQuestion(name, value, 'in')).toBe('');
});

test('a usual length typed in cm, or in inches, is told what it would be', () => {
  const slip = fc.record({ name: fc.constantFrom(...LENGTHS), share: fc.double({ min: 0.01, max: 0.99, noNaN: true }), unit: fc.constantFrom(['cm', 10] as const, ['inches', 25.4] as const) });
  fc.assert(fc.property(slip, ({ name, share, unit: [unit, mm] }) => {
    const [least, most] = usualOf(name), meant = least + share * (most - least), typed = Number((meant / mm).toPrecision(4));
    fc.pre(typed < least && typed * mm >= least && typed * mm <= most);
    const would = new RegExp(`${typed} ${unit} would be ([\\d.]+) mm`).exec(slipQuestion(name, typed, 'mm'));
    expect(Number(would?.[1]) / meant).toBeCloseTo(1, 2);
  }), { seed: 17, numRuns: 300 });
});
