import { MM_PER_INCH } from '../geometry/units.ts';

/** What lengths can be written, shown and spoken of in. */
export type LengthUnit = 'mm' | 'in';

/** As fine as a maker reads a rule: hundredths of a mm, thousandths of an inch. */
export const LENGTH_DIGITS: Readonly<Record<LengthUnit, number>> = { mm: 2, in: 3 };
/** Room for a typed number to come back as typed. */
const DIGITS_KEPT = 12;

export const changedUnit = (value: number, from: LengthUnit, to: LengthUnit): number => (from === to ? value : from === 'in' ? value * MM_PER_INCH : value / MM_PER_INCH);

/** A length of the sheet as it is shown. In the sheet's own unit it stays as it was written. */
export const shownLength = (value: number, own: LengthUnit, shown: LengthUnit): number =>
  own === shown ? value : Number(changedUnit(value, own, shown).toFixed(LENGTH_DIGITS[shown]));

/** A length typed in the unit shown as the sheet takes it. */
export const typedLength = (value: number, shown: LengthUnit, own: LengthUnit): number =>
  own === shown ? value : Number(changedUnit(value, shown, own).toPrecision(DIGITS_KEPT));
