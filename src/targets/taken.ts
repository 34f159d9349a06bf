import type { Side } from '../fitting/words.ts';
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
  values.filter(({ changed }) => changed).reduce<unknown>((made, value) => putIn(made, [side, ...value.path.split('.')], value), sheet);

function putIn(here: unknown, [step, ...rest]: readonly string[], value: ValueToTake): Group {
  const group = groupIn(here), now = group[step!];
  if (rest.length > 0) return { ...group, [step!]: step === 'toe' ? radiusFor(now, value) : putIn(now, rest, value) };
  return { ...group, [step!]: MEASURES.has(value.path) ? measureOf(value) : value.value };
}

/** A radius that is given takes with it what another rule worked from. */
function radiusFor(toe: unknown, { value }: ValueToTake): Group {
  const { endAngle } = groupIn(toe);
  return { rule: 'given', radius: value, ...(endAngle === undefined ? {} : { endAngle }) };
}

const measureOf = ({ value, ordered, digits, unit }: ValueToTake): Group =>
  ({ value, how: `for the targets; was ${Number(ordered.toFixed(digits))}${unit === '°' ? '' : ' '}${unit}` });
