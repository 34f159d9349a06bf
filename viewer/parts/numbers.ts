import { MM_PER_INCH } from '../../src/geometry/units.ts';
import { inUnit, type LengthUnit } from '../keep/lengths.ts';

/** A number as a maker types it: decimal comma or point, blanks anywhere; undefined where it is none. */
export function numberTyped(text: string): number | undefined {
  const plain = text.replace(/[\s\u00a0]/g, '').replace('−', '-').replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}

const IN_MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: MM_PER_INCH, '"': MM_PER_INCH };

/** A length as a maker types it, in the unit shown or with its own behind it: "6,2 cm". */
export function lengthTyped(text: string, shown: LengthUnit): number | undefined {
  const [, number = text, unit] = /^(.*?)\s*(mm|cm|in|")$/i.exec(text.trim()) ?? [], value = numberTyped(number);
  return value === undefined || unit === undefined ? value : Number(inUnit(value * IN_MM[unit.toLowerCase()]!, shown).toPrecision(12));
}

/** A dragged value in steps a maker would type: tenths, or two hundredths of an inch. */
export const stepped = (value: number, unit: string): number => {
  const step = unit === 'in' ? 0.005 : 0.1;
  return Number((Math.round(value / step) * step).toFixed(3));
};
