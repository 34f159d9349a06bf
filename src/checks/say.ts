import { LENGTH_DIGITS, type LengthUnit } from '../fitting/lengthUnit.ts';
import { MM_PER_INCH } from '../geometry/units.ts';

/** Numbers as a maker reads them. A value that rounds to nothing has no sign. */
export function rounded(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

export const mm = (value: number, digits = 1): string => `${rounded(value, digits)} mm`;
export const deg = (value: number, digits = 1): string => `${rounded(value, digits)}°`;
/** @param volume in mm³ */
export const cubic = (volume: number, digits = 1): string => `${rounded(volume / 1000, digits)} cm³`;
export const grams = (value: number, digits = 0): string => `${rounded(value, digits)} g`;
/** "1 ply", "3 plies" */
export const pliesWords = (count: number): string => `${count} ${count === 1 ? 'ply' : 'plies'}`;
/** `220 × 220 × 250 mm`, to a tenth where they are not whole. */
export const sizeWords = (...lengths: readonly number[]): string => `${lengths.map((one) => String(Number(rounded(one, 1)))).join(' × ')} mm`;
export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
export const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
/** What a pitch other than the last's means for the maker. */
export const ANOTHER_LAST = 'another last, or this one altered to that pitch';

export const fromHeel = (x: number): string => (x < 0.5 ? 'at the back edge' : `${rounded(x, 0)} mm from the heel`);

const ENDS_SENTENCE = /[.?]$/;
/** Parts put one after the other as sentences; empty ones drop out. */
export const sentences = (...parts: readonly string[]): string =>
  parts.filter((part) => part !== '').map((part) => (ENDS_SENTENCE.test(part) ? part : `${part}.`)).join(' ');

/** Lengths in a sentence: one, or some that share their unit, like "10.0 and 12.5 mm" and "310 mm × 135 mm". */
const LENGTHS = /-?\d+(?:\.\d+)?(?:(?: mm)? (?:and|to|or|×|±) -?\d+(?:\.\d+)?)* mm(?![³²\w])/g;
const inch = (mm: string): string => String(Number((Number(mm) / MM_PER_INCH).toFixed(LENGTH_DIGITS.in)));
const lengthsInInches = (lengths: string): string => `${lengths.replace(/ mm/g, '').replace(/-?\d+(?:\.\d+)?/g, inch)} in`;

/** A sentence with its lengths turned into inches. */
export const inInches = (text: string): string => text.replace(LENGTHS, lengthsInInches);
/** A sentence as it is told of a sheet: what is advised for a field can be typed there. In inches both stand, for papers and files are in mm. */
export const inUnitOf = (units: LengthUnit, text: string): string => (units === 'mm' ? text : text.replace(LENGTHS, (lengths) => `${lengths} (${lengthsInInches(lengths)})`));
