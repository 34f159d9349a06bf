import { readSheet, type Fault } from '../../src/fitting/readSheet.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import { readText, sheetText, valueAt, withValue, type Sheet } from '../keep/sheet.ts';
import type { FaultShown } from './protocol.ts';

/** Faults, each with the field or group that may be taken off the sheet instead: it was taken off, and that fault was gone. */
export function withLeaveOut(sheet: string, faults: readonly Fault[], spoken: LengthUnit | undefined): FaultShown[] {
  const read = readText(sheet);
  if (!read.ok) return [...faults];
  const tried = new Map<string, boolean>();
  const mends = (path: string): boolean => {
    const known = tried.get(path) ?? isGoneWithout(read.sheet, path, faults, spoken);
    tried.set(path, known);
    return known;
  };
  return faults.map((fault) => {
    const leaveOut = placesOver(fault.path).find(mends);
    return leaveOut === undefined ? fault : { ...fault, leaveOut };
  });
}

/** The field itself, then the group it is in; a whole shoe, foot, last or order is never left out for a fault within. */
function placesOver(path: string): string[] {
  const steps = path.split('.'), least = /^(left|right)$/.test(steps[0]!) ? 3 : 2;
  return [steps, steps.slice(0, -1)].filter(({ length }) => length >= least).map((names) => names.join('.'));
}

function isGoneWithout(sheet: Sheet, path: string, faults: readonly Fault[], spoken: LengthUnit | undefined): boolean {
  if (valueAt(sheet, path) === undefined) return false;
  const reading = readSheet(sheetText(withValue(sheet, path, undefined)), spoken);
  if (reading.ok) return true;
  const near = (one: Fault): boolean => one.path === path || one.path.startsWith(`${path}.`) || path.startsWith(`${one.path}.`);
  return !reading.faults.some((one) => near(one) || !faults.some((before) => before.path === one.path));
}
