import { inWords, type Figure } from '../../src/checks/figure.ts';
import { MM_PER_INCH } from '../../src/geometry/units.ts';

/** What lengths are shown and typed in. */
export type LengthUnit = 'mm' | 'in';

export const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = { mm: 'mm', in: 'inches' };

/** As fine as a maker reads a rule: hundredths of a mm, thousandths of an inch. */
const DIGITS: Readonly<Record<LengthUnit, number>> = { mm: 2, in: 3 };
/** Room for a typed number to come back as typed. */
const DIGITS_KEPT = 12;

const changed = (value: number, from: LengthUnit, to: LengthUnit): number => (from === to ? value : from === 'in' ? value * MM_PER_INCH : value / MM_PER_INCH);

/** A length in mm in the unit shown. */
export const inUnit = (mm: number, shown: LengthUnit): number => changed(mm, 'mm', shown);

/** A length of the sheet as it is shown. In the sheet's own unit it stays as it was written. */
export const shownLength = (value: number, own: LengthUnit, shown: LengthUnit): number =>
  own === shown ? value : Number(changed(value, own, shown).toFixed(DIGITS[shown]));

/** A length typed in the unit shown as the sheet takes it. */
export const typedLength = (value: number, shown: LengthUnit, own: LengthUnit): number =>
  own === shown ? value : Number(changed(value, shown, own).toPrecision(DIGITS_KEPT));

/** "1.382 in" for a figure of 35.1 mm; what is no length is said as ever. */
export function figureWords(figure: Figure, shown: LengthUnit): string {
  if (figure.unit !== 'mm' || shown === 'mm') return inWords(figure);
  return inWords({ ...figure, value: changed(figure.value, 'mm', 'in'), unit: '', digits: DIGITS.in }).replace(/^\S+/, '$& in');
}

export const isLengthUnit = (word: unknown): word is LengthUnit => word === 'mm' || word === 'in';
