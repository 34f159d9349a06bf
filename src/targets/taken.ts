import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { MM_PER_INCH } from '../geometry/units.ts';
import { LIMITS } from './asked.ts';
import type { Blame, Loosened } from './blame.ts';
import type { Solution, ValueToTake } from './seek.ts';

/** A group of fields of a sheet as it is written: plain JSON. */
type Group = { readonly [name: string]: unknown };
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value);
const groupIn = (value: unknown): Group => (isGroup(value) ? value : {});

/** Measures, and not settings of the order: how they came to be is told with them. */
const MEASURES: ReadonlySet<string> = new Set(['foot.strikeAngle', 'last.pitch', 'last.toeSpring']);

/**
 * A new sheet with the values of an answer on it; all else as it was. A measure that is changed tells so: the last has to be
 * another one, or altered, before it is true.
 * @param sheet as it is written, in its own units
 */
export const withTaken = (sheet: unknown, side: Side, { values }: Pick<Solution, 'values'>): unknown =>
  values.filter(({ changed }) => changed).reduce<unknown>((made, value) => taken(made, side, value), sheet);

function taken(sheet: unknown, side: Side, value: ValueToTake): Group {
  const { path } = value, toe = [side, 'order', 'toe'];
  if (path === 'order.toe.radius') return putIn(sheet, toe, radiusFor(toe.reduce<unknown>((here, step) => groupIn(here)[step], sheet), value));
  return putIn(sheet, [side, ...path.split('.')], MEASURES.has(path) ? measureOf(value) : value.value);
}

function putIn(here: unknown, [step, ...rest]: readonly string[], value: unknown): Group {
  const group = groupIn(here);
  return { ...group, [step!]: rest.length > 0 ? putIn(group[step!], rest, value) : value };
}

/** A radius that is given takes with it what another rule worked from. */
function radiusFor(toe: unknown, { value }: ValueToTake): Group {
  const { endAngle } = groupIn(toe);
  return { rule: 'given', radius: value, ...(endAngle === undefined ? {} : { endAngle }) };
}

const measureOf = ({ value, ordered, digits, unit }: ValueToTake): Group =>
  ({ value, how: `for the targets; was ${Number(ordered.toFixed(digits))}${unit === '°' ? '' : ' '}${unit}` });

/** A new sheet with limits on it that work in place of those that cannot be kept; all else as it was. @param units of the sheet */
export const withLoosened = (sheet: unknown, side: Side, { limits }: Pick<Blame, 'limits'>, units: Fitting['units']): unknown =>
  limits.reduce<unknown>((made, limit) => putIn(made, [side, 'order', 'targets', limit.name], typedLimit(limit, units)), sheet);

/** Thousandths of an inch, never tighter than what works. */
const INCH_STEPS = 1000;

function typedLimit({ name, unit, works }: Loosened, units: Fitting['units']): number {
  if (unit === 'g' || units === 'mm') return works;
  const { sign } = LIMITS[name];
  return (sign * Math.ceil((sign * works * INCH_STEPS) / MM_PER_INCH - 1e-7)) / INCH_STEPS;
}
