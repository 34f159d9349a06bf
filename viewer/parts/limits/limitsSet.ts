import type { Side } from '../../../src/fitting/words.ts';
import { LIMITS } from '../../../src/targets/asked.ts';
import { isLengthUnit, shownLength, typedLength, type LengthUnit } from '../../keep/lengths.ts';
import { valueAt, withValue, type Json, type Sheet } from '../../keep/sheet.ts';

/** What a limit on a sheet says, and where its field is. */
export interface LimitSet { readonly path: string; readonly words: string }

export const ownLengths = (sheet: Sheet): LengthUnit => { const units = valueAt(sheet, 'units'); return isLengthUnit(units) ? units : 'mm'; };
const targetsAt = (side: Side): string => `${side}.order.targets`;
export const hasTargets = (sheet: Sheet, side: Side): boolean => valueAt(sheet, targetsAt(side)) !== undefined;

/** Each limit that stands on the sheet, lengths in the unit shown. What is not filled in yet, or is no number, is told as it stands. */
export function limitsSet(sheet: Sheet, side: Side, lengths: LengthUnit): LimitSet[] {
  const said = (name: string, unit: 'mm' | 'g', label: string): LimitSet[] => {
    const path = `${targetsAt(side)}.${name}`, value = valueAt(sheet, path);
    return value === undefined ? [] : [{ path, words: `${label} ${valueSaid(value, unit, ownLengths(sheet), lengths)}` }];
  };
  return [...Object.entries(LIMITS).flatMap(([name, { label, unit }]) => said(name, unit, label)), ...said('tipWanted', 'mm', 'Thickness at the tip wanted (no limit)')];
}

const valueSaid = (value: Json, unit: 'mm' | 'g', own: LengthUnit, shown: LengthUnit): string =>
  (typeof value !== 'number' ? 'not filled in' : unit === 'g' ? `${value} g` : `${shownLength(value, own, shown)} ${shown}`);

/** What may be changed, as the sheet names it. */
export function freeOn(sheet: Sheet, side: Side): readonly string[] {
  const free = valueAt(sheet, `${targetsAt(side)}.free`);
  return Array.isArray(free) ? free.map(String) : [];
}

/** A seat is limited in steps of this when limits are first set, in each unit. */
const STEPS: Readonly<Record<LengthUnit, number>> = { mm: 1, in: 0.05 };
/** What makers change first. */
const FIRST_FREE = ['apex', 'toe radius'];

/** The sheet with a limit to begin with: the seat no higher than it stands now, so that nothing is lost yet. @param seat mm */
export function withFirstLimit(sheet: Sheet, side: Side, seat: number): Sheet {
  const own = ownLengths(sheet), step = STEPS[own], steps = Math.ceil(typedLength(seat, 'mm', own) / step - 1e-6);
  return withValue(sheet, targetsAt(side), { seatHeightAtMost: Number((steps * step).toFixed(2)), free: FIRST_FREE });
}

/** Where the first limit is typed. */
export const firstLimitAt = (side: Side): string => `${targetsAt(side)}.seatHeightAtMost`;
