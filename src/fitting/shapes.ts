import * as z from 'zod';
import { MM_PER_INCH } from '../geometry/units.ts';
import { accuracyRow, rangeOf, type RangeName, type Unit } from './ranges.ts';
import { SIZE_SYSTEMS } from './words.ts';

/**
 * The building blocks of the sheet. Each `error` completes "must be …"; each description is what an editor shows beside
 * the field. Limits go into the published schema as a help to editors; the sheet itself is held to them in mm.
 */

/** What is asked for where a length belongs; a fault on a sheet that names its units says only those. */
export const LENGTH_WANTED = 'a length in mm (in inches where units is "in")';

const UNIT_WORDS: Record<Unit, string> = {
  mm: LENGTH_WANTED, deg: 'an angle in degrees', kg: 'a mass in kg', g: 'a weight in g', 'g/cm³': 'a density in g/cm³', 'g/m²': 'a weight of cloth in g/m²', MPa: 'a modulus or strength in MPa (N/mm²)', '%': 'a percentage', size: 'a size number', '': 'a number',
};
const UNIT_MARK: Record<Unit, string> = { mm: 'mm or in', deg: 'degrees', kg: 'kg', g: 'g', 'g/cm³': 'g/cm³', 'g/m²': 'g/m²', MPa: 'MPa', '%': 'percent', size: 'size number', '': 'plain number' };

export const group = <Shape extends z.core.$ZodLooseShape>(shape: Shape) => z.strictObject(shape, { error: 'a group of fields in braces' });

/** Limits that hold in either unit: an inch sheet has numbers 25.4 times smaller. */
function editorLimits(name: RangeName): { minimum: number; maximum: number } {
  const { unit, limits: [least, most] } = rangeOf(name);
  return { minimum: unit === 'mm' && least > 0 ? least / MM_PER_INCH : least, maximum: most };
}

function described(name: RangeName, about: string): string {
  const { unit, usual } = rangeOf(name), [least, most] = usual?.() ?? [];
  const mark = unit === 'mm' ? 'mm' : UNIT_MARK[unit];
  return `${about} Unit: ${UNIT_MARK[unit]}.${least === undefined ? '' : ` Usual: ${least} to ${most} ${mark}.`}`;
}

const number = (name: RangeName, description: string) =>
  z.number({ error: UNIT_WORDS[rangeOf(name).unit] }).meta({ ...editorLimits(name), description });

/** A plain number of the order or the workshop. */
export const setting = (name: RangeName, about: string) => number(name, described(name, about));

/** One line of writing: not blank, no control marks, nothing that turns the line round. */
export const line = (most: number, about: string) => {
  const rule = `one line of text, 1 to ${most} characters, without control marks`;
  return z.string({ error: rule }).max(most, { error: rule })
    .regex(/^(?=.*\S)[^\p{Cc}\p{Cs}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]*$/u, { error: rule }).meta({ description: about });
};

/** Several lines of writing, tabs allowed. */
export const rows = (about: string) => {
  const rule = `lines of text, 1 to ${ROWS_MOST} characters, without other control marks than tabs`;
  return z.string({ error: rule }).max(ROWS_MOST, { error: rule }).regex(/^(?=[\s\S]*\S)(?:[\t\r\n]|[^\p{Cc}\p{Cs}])*$/u, { error: rule }).meta({ description: about });
};
const ROWS_MOST = 20_000;

export const word = <const Words extends readonly [string, ...string[]]>(words: Words, about: string) =>
  z.enum(words, { error: `one of: ${words.join(', ')}` }).meta({ description: about });

export const yesNo = (about: string) => z.boolean({ error: 'true or false' }).meta({ description: about });

export const date = (about: string) =>
  z.iso.date({ error: 'a real date as year-month-day, like 2026-03-11' }).meta({ description: about });

const twice = () => z.literal(true, { error: 'true, or left out' })
  .meta({ description: 'Taken twice, and both readings agree. An unusual value is then not asked about again.' }).optional();
const how = () => line(80, 'How it was taken, in your words.').optional();

const accuracy = (name: RangeName) =>
  setting(accuracyRow(name), 'How far off the reading may be, one standard deviation: two readings of three lie within it. Where left out, what is usual for how it is taken.').optional();

const reading = (name: RangeName) => number(name, `The reading. Unit: ${UNIT_MARK[rangeOf(name).unit]}.`);
const measured = (name: RangeName) =>
  [reading(name), group({ value: reading(name), how: how(), twice: twice(), accuracy: accuracy(name) })] as const;

const asMeasure = (name: RangeName, about: string) => ({
  wanted: { error: `${UNIT_WORDS[rangeOf(name).unit]}, or {"value": …, "how": …, "twice": true}` }, told: { description: described(name, about) },
});

/** A measure: a number, or a number with how it was taken and how surely. */
export function measure(name: RangeName, about: string) {
  const { wanted, told } = asMeasure(name, about);
  return z.union(measured(name), wanted).meta(told);
}

/** A measure of the wearer, on which no shape rests directly: how surely it was taken is not asked. */
export function wearerMeasure(name: RangeName, about: string) {
  const { wanted, told } = asMeasure(name, about);
  return z.union([reading(name), group({ value: reading(name), how: how(), twice: twice() })], wanted).meta(told);
}

/** A measure that may also be given as a shoe size. */
export const lengthOrSize = (name: 'foot.length' | 'last.length', about: string) => z.union([
  ...measured(name),
  group({
    size: setting(`${name}.size`, 'The shoe size.'),
    system: word(SIZE_SYSTEMS, 'Size system. Mondopoint is foot length; Paris points and UK sizes are taken as last length.'),
    allowance: setting(`${name}.allowance`, 'How much longer the last is than the foot, 15 mm where left out.').optional(),
  }),
], { error: `${UNIT_WORDS.mm}, {"value": …, "how": …, "twice": true} or {"size": …, "system": …}` })
  .meta({ description: described(name, about) });

/** An angle of the ankle: the words for how it was found are fixed, because its trust hangs on them. */
export const ankleMeasure = (about: string) => {
  const value = number('foot.ankleAngle', 'The reading. Unit: degrees.');
  const found = word(['goniometer', 'heel plates and plumb line'], 'How the angle was found.').optional();
  return z.union([value, group({ value, how: found, twice: twice(), accuracy: accuracy('foot.ankleAngle') })], { error: `${UNIT_WORDS.deg}, or {"value": …, "how": …}` })
    .meta({ description: described('foot.ankleAngle', about) });
};
