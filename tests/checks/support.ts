import type { Finding } from '../../src/checks/finding.ts';
import { design, type Design } from '../../src/design.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import type { MatchShoe, RockerShoe, Shoe } from '../../src/pair/shoe.ts';
import type { FigureKey } from '../../src/checks/figures.ts';
import { see, type Seen } from '../../src/checks/seen.ts';

/** Part of a sheet as it is written; what is undefined is taken off. */
export interface Part { readonly [field: string]: unknown }

const ROCKER = {
  foot: {
    stiff: { joint: 'ankle', state: 'fused' }, length: 267, ballInner: 197, ballOuter: 168, pivotForward: 62, pivotHeight: 78, hipHeight: 890,
    ankleAngle: { value: 0, how: 'heel plates and plumb line' }, strikeAngle: 25,
  },
  last: { length: 282, pitch: 12, toeSpring: 15, seatLength: 56, tread: 202, heelBack: 0, camber: 0, ballWidth: 95, heelWidth: 66, inflare: 4, insole: 4 },
  order: { kind: 'rocker', apex: 62, outsole: { thickness: 2 } },
};
const MATCH = {
  last: { length: 282, pitch: 12, toeSpring: 8, seatLength: 56, tread: 202, ballWidth: 95, heelWidth: 66 },
  order: { kind: 'match', seatHeightNow: 27, ballHeightNow: 15, outsole: { thickness: 2 } },
};
const WEARER = { sex: 'male', risks: [], legDifference: { correct: 0, found: 'blocks' } };
const JOB = { reference: 'A-1', date: '2026-03-11', prescriber: 'Dr A', prescribed: '2026-03-02' };

/** The worked case as a sheet: a fused left ankle, the right shoe raised to match; every measure taken. */
export const SHEET: Part = { version: 1, units: 'mm', job: JOB, wearer: WEARER, left: ROCKER, right: MATCH };

const isPart = (value: unknown): value is Part => typeof value === 'object' && value !== null && !Array.isArray(value);

/** The sheet with some fields changed, added, or (undefined) taken off. */
export function changed(sheet: Part, change: Part): Part {
  const merged = Object.entries(change).map(([key, value]): [string, unknown] => {
    const before = sheet[key];
    return [key, isPart(value) && isPart(before) ? changed(before, value) : value];
  });
  return Object.fromEntries(Object.entries({ ...sheet, ...Object.fromEntries(merged) }).filter(([, value]) => value !== undefined));
}

export function fittingWith(change: Part = {}): Fitting {
  const reading = readSheet(JSON.stringify(changed(SHEET, change)));
  if (!reading.ok) throw new Error(`the sheet of this test is wrong: ${JSON.stringify(reading.faults)}`);
  return reading.fitting;
}

/** A made-up fitting itself, for what no sheet can say. */
export function designOf(fitting: Fitting): Design {
  const made = design(fitting);
  if (!made.ok) throw new Error(`the sheet of this test has no shape: ${made.troubles.map(({ text }) => text).join('; ')}`);
  return made.design;
}
export const designWith = (change: Part = {}): Design => designOf(fittingWith(change));

/** The change that makes the right shoe a rocker like the left one, but for some fields. */
export function bothRockers(right: Part = {}): Part {
  const rocker = changed(ROCKER, right);
  return { right: { ...rocker, order: { ...(rocker.order as Part), seatHeightNow: undefined, ballHeightNow: undefined } } };
}

export const codesOf = (change: Part = {}): string[] => designWith(change).findings.map(({ code }) => code);

const seenAs = (shoe: Shoe, fitting: Fitting, numbers: Numbers): Seen => {
  const seen = see(shoe, fitting);
  return { ...seen, number: (key) => numbers[key] ?? seen.number(key) };
};
export type Numbers = Partial<Record<FigureKey, number>>;

/** The rocker of a sheet as the checks see it, with some figures replaced by others. */
export function rockerSeen(numbers: Numbers = {}, change: Part = {}): Seen<RockerShoe> {
  const { shoes, fitting } = designWith(change);
  return seenAs(shoes.find(({ kind }) => kind === 'rocker')!, fitting, numbers) as Seen<RockerShoe>;
}
export function matchSeen(numbers: Numbers = {}, change: Part = {}): Seen<MatchShoe> {
  const { shoes, fitting } = designWith(change);
  return seenAs(shoes.find(({ kind }) => kind === 'match')!, fitting, numbers) as Seen<MatchShoe>;
}

/** Findings of a code on the sheet with some fields changed, and the first of them. */
export const all = (code: string, change: Part = {}): Finding[] => designWith(change).findings.filter((finding) => finding.code === code);
export const one = (code: string, change: Part = {}): Finding | undefined => all(code, change)[0];
/** The left shoe, which is a rocker, with some fields changed. */
export const rockerWith = (change: Part = {}): RockerShoe => {
  const shoe = designWith(change).shoes[0]!;
  if (shoe.kind !== 'rocker') throw new Error('the left shoe is a rocker here');
  return shoe;
};

/** An order whose ankle is free: the toe joint must not bend, and the hip was plumbed. */
export const FREE: Part = { stiff: { joint: 'toe joint', state: 'arthritic' }, ankleAngle: undefined, hipAhead: 62 };
