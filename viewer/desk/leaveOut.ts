import { readSheet, type Fault } from '../../src/fitting/readSheet.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import type { FaultShown } from './protocol.ts';

type Group = { readonly [name: string]: unknown };
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Faults, each with the field or group that may be taken off the sheet instead: it was taken off, and that fault was gone. */
export function withLeaveOut(sheet: string, faults: readonly Fault[], spoken: LengthUnit | undefined): FaultShown[] {
  const whole: unknown = parsed(sheet);
  if (!isGroup(whole)) return [...faults];
  const tried = new Map<string, boolean>();
  const mends = (path: string): boolean => {
    const known = tried.get(path) ?? isGoneWithout(whole, path, faults, spoken);
    tried.set(path, known);
    return known;
  };
  return faults.map((fault) => {
    const leaveOut = placesOver(fault.path).find(mends);
    return leaveOut === undefined ? fault : { ...fault, leaveOut };
  });
}

function parsed(text: string): unknown {
  try { return JSON.parse(text); } catch { return undefined; }
}

/** The field itself, then the group it is in; a whole shoe, foot, last or order is never left out for a fault within. */
function placesOver(path: string): string[] {
  const steps = path.split('.'), least = /^(left|right)$/.test(steps[0]!) ? 3 : 2;
  return [steps, steps.slice(0, -1)].filter(({ length }) => length >= least).map((names) => names.join('.'));
}

function isGoneWithout(whole: Group, path: string, faults: readonly Fault[], spoken: LengthUnit | undefined): boolean {
  const less = without(whole, path.split('.'));
  if (!less) return false;
  const reading = readSheet(JSON.stringify(less), spoken);
  if (reading.ok) return true;
  const near = (one: Fault): boolean => one.path === path || one.path.startsWith(`${path}.`) || path.startsWith(`${one.path}.`);
  return !reading.faults.some((one) => near(one) || !faults.some((before) => before.path === one.path));
}

/** Undefined where there is no such field. */
function without(group: Group, [name, ...rest]: readonly string[]): Group | undefined {
  if (!Object.hasOwn(group, name!)) return undefined;
  const { [name!]: inner, ...others } = group;
  if (rest.length === 0) return others;
  const less = isGroup(inner) ? without(inner, rest) : undefined;
  return less && { ...group, [name!]: less };
}
