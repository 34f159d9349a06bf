import { readSheet, type Fault } from '../../src/fitting/readSheet.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';

/** Sheets of invented people for the tests. All are the text a maker would write, as plain values. */
export type Json = { [key: string]: unknown };

const LAST = { length: 282, pitch: 14, toeSpring: 15, seatLength: 66, tread: 202 };

/** A fused ankle measured with heel plates; everything stated, little estimated. */
export const lockedSheet = (): Json => ({
  $schema: 'urn:rockerbench:fitting-sheet:1', version: 1, units: 'mm',
  job: { reference: 'T-1', date: '2026-03-11' },
  wearer: { mass: 78, stature: 1740, sex: 'male', legDifference: { correct: 0, found: 'none found' } },
  left: {
    foot: {
      stiff: { joint: 'ankle', state: 'fused' }, length: 265, ballInner: 196, ballOuter: 167, pivotForward: 62, pivotHeight: 78,
      hipHeight: 890, ankleAngle: 0,
    },
    last: LAST, order: { kind: 'rocker' },
  },
});

/** A stiff toe joint: the ankle is free, so more may be estimated. */
export const freeSheet = (): Json => changed(lockedSheet(), { 'left.foot.stiff': { joint: 'toe joint', state: 'fused' }, 'left.foot.ankleAngle': undefined });

/** A prosthetic foot. */
export const prostheticSheet = (): Json => changed(lockedSheet(), {
  'left.foot.stiff': { joint: 'whole foot', state: 'prosthetic' }, 'left.foot.ankleAngle': undefined, 'left.foot.prosthesis': { heelRise: 16, shankLean: 4 },
});

/** With the other shoe as a match. */
export const pairSheet = (): Json => changed(lockedSheet(), {
  right: { last: { length: 282 }, order: { kind: 'match', seatHeightNow: 28, ballHeightNow: 12 } },
});

/** A copy with fields set, added, or (undefined) taken out; places are written like `left.foot.length`. */
export function changed(sheet: Json, changes: Json): Json {
  const copy = structuredClone(sheet);
  for (const [place, value] of Object.entries(changes)) {
    const steps = place.split('.'), name = steps.pop()!;
    let group = copy;
    for (const step of steps) group = (group[step] ??= {}) as Json;
    if (value === undefined) delete group[name];
    else group[name] = value;
  }
  return copy;
}

export function fittingOf(sheet: Json): Fitting {
  const reading = readSheet(JSON.stringify(sheet));
  if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join('\n'));
  return reading.fitting;
}

export function faultsIn(text: string): readonly Fault[] {
  const reading = readSheet(text);
  return reading.ok ? [] : reading.faults;
}

/** Every number anywhere in a value, with its place. */
export function* numbersIn(value: unknown, place = ''): Generator<readonly [string, number]> {
  if (typeof value === 'number') yield [place, value];
  if (typeof value === 'object' && value !== null)
    for (const [name, inner] of Object.entries(value)) yield* numbersIn(inner, place === '' ? name : `${place}.${name}`);
}
