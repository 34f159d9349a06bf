import { inWords, type Figure } from '../../src/checks/figure.ts';
import { mm, rounded } from '../../src/checks/say.ts';
import { changedUnit, LENGTH_DIGITS, type LengthUnit } from '../../src/fitting/lengthUnit.ts';

export { shownLength, typedLength, type LengthUnit } from '../../src/fitting/lengthUnit.ts';

export const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = { mm: 'mm', in: 'inches' };

/** A length in mm in the unit shown. */
export const inUnit = (mm: number, shown: LengthUnit): number => changedUnit(mm, 'mm', shown);

/** "35.1 mm" or "1.382 in". @param size mm */
export const lengthWords = (size: number, shown: LengthUnit, digits = shown === 'mm' ? 1 : LENGTH_DIGITS.in): string => (shown === 'mm' ? mm(size, digits) : `${rounded(inUnit(size, shown), digits)} in`);

/** "1.382 in" for a figure of 35.1 mm; what is no length is said as ever. */
export function figureWords(figure: Figure, shown: LengthUnit): string {
  if (figure.unit !== 'mm' || shown === 'mm') return inWords(figure);
  return inWords({ ...figure, value: changedUnit(figure.value, 'mm', 'in'), unit: '', digits: LENGTH_DIGITS.in }).replace(/^\S+/, '$& in');
}

/** Words in which no line is broken between a number and its unit. */
export const unbroken = (text: string): string => text.replace(/(\d) (?=mm|in|%|N)/g, '$1\u00A0').replace(/± /g, '±\u00A0');

export const isLengthUnit = (word: unknown): word is LengthUnit => word === 'mm' || word === 'in';
