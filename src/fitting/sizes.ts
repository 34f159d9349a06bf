import { MM_PER_INCH, type Mm } from '../geometry/units.ts';
import type { Measure } from './measure.ts';
import type { SizeSystem } from './words.ts';

/** A shoe size as it stands on the sheet. The allowance (last longer than foot) is in mm here. */
export interface Size { readonly size: number; readonly system: SizeSystem; readonly allowance?: number | undefined }

/** What the last is longer than the foot; 15 to 20 is published for the inside of a shoe. */
export const ALLOWANCE: Mm = 15;

/** Two thirds of a centimetre (ISO/TS 19407:2015 on the European size: interval 6.67 mm, from zero). */
const PARIS_POINT: Mm = 20 / 3;

/** UK sizes are good to half a size, a sixth of an inch. */
const UK_ERROR: Mm = 4.2;

/** Each system measures one thing; the other follows with the allowance. UK adult sizes: last = (size + 25) / 3 inches, from memory. */
const SYSTEMS: Record<SizeSystem, { readonly of: 'foot' | 'last'; readonly mm: (size: number) => Mm }> = {
  mondopoint: { of: 'foot', mm: (size) => size },
  'paris points': { of: 'last', mm: (size) => size * PARIS_POINT },
  uk: { of: 'last', mm: (size) => ((size + 25) / 3) * MM_PER_INCH },
};

const WHAT = { foot: 'foot length', last: 'last length' } as const;
const STEP: Record<SizeSystem, string> = {
  mondopoint: 'Mondopoint is foot length in mm',
  'paris points': 'the size is taken as last length, two thirds of a centimetre a point',
  uk: 'the size is taken as last length, (size + 25) / 3 inches, approximate',
};

/**
 * Foot length or last length that a shoe size stands for, mm.
 * Source: ISO/TS 19407:2015 for Mondopoint and the Paris point; the UK offset is from memory and marked estimated.
 */
export function lengthOfSize({ size, system, allowance = ALLOWANCE }: Size, wanted: 'foot' | 'last'): Measure {
  const { of, mm } = SYSTEMS[system];
  const value = mm(size) + (of === wanted ? 0 : wanted === 'last' ? allowance : -allowance);
  const changed = of === wanted ? '' : `; ${WHAT[wanted]} is ${WHAT[of]} ${wanted === 'last' ? 'plus' : 'less'} an allowance of ${Number(allowance.toFixed(2))} mm`;
  const rule = `size ${size} (${system}): ${STEP[system]}${changed}`;
  return system === 'uk' ? { value, origin: 'estimated', rule, error: UK_ERROR } : { value, origin: 'converted', rule };
}
