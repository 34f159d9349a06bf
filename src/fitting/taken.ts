import type { Mm } from '../geometry/units.ts';
import type { Readable } from './checkShape.ts';
import type { Measure } from './measure.ts';
import { lengthOfSize, type Size } from './sizes.ts';

type Reading = { readonly value: number; readonly how?: string | undefined; readonly twice?: true | undefined; readonly accuracy?: number | undefined };
/** A measure as it stands on the sheet, already in mm or radians; NaN where it could not be read. */
type RawMeasure = number | Readable<Reading>;
type RawLength = RawMeasure | Readable<Size>;

/** The fields that were given, for optional properties. */
export function given<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

/** A measure the maker took. */
export function taken(raw: RawMeasure): Measure {
  if (typeof raw === 'number') return { value: raw, origin: 'measured' };
  return { value: raw.value ?? NaN, origin: 'measured', ...given({ how: raw.how, accuracy: raw.accuracy, twice: raw.twice }) };
}

/** A measure that is left out where the sheet leaves it out. */
export const takenIf = (raw: RawMeasure | undefined): Measure | undefined => (raw === undefined ? undefined : taken(raw));

const isSize = (raw: RawLength): raw is Readable<Size> => typeof raw === 'object' && 'size' in raw;

/** A length the maker took, or the length its shoe size stands for. */
export function takenLength(raw: RawLength, wanted: 'foot' | 'last'): Measure {
  if (!isSize(raw)) return taken(raw);
  const { size, system, allowance } = raw;
  if (size === undefined || system === undefined) return taken(NaN);
  return lengthOfSize({ size, system, allowance }, wanted);
}

/** How much longer than the foot the maker said the last is, mm, if a size was given with it. */
export const allowanceOf = (raw: RawLength | undefined): Mm | undefined =>
  raw !== undefined && isSize(raw) ? raw.allowance : undefined;
