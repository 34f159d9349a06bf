import { expect, test } from 'vitest';
import { design } from '../src/design.ts';
import { readSheet } from '../src/fitting/readSheet.ts';
import { inDegrees } from '../src/geometry/units.ts';
import { chosen, everyone } from './support/everyone.ts';
import { chanceFrom, fittedCase } from './support/population.ts';
import type { Person } from './support/people.ts';

/** A sheet as a maker would write it for one person of the survey: one shoe, the default order, lean 4 degrees. */
function sheetFor(person: Person, seed: number): string {
  const { foot, last } = fittedCase(person, chanceFrom(seed));
  if (foot.stance.kind !== 'locked') throw new Error('the cases have a locked ankle');
  return JSON.stringify({
    version: 1, units: 'mm', job: { reference: `S-${person.id}`, date: '2026-03-11', prescriber: 'Dr. Ottilie Varrow', prescribed: '2026-03-01' },
    wearer: { mass: person.mass, stature: person.stature, sex: person.sex, crotchHeight: person.crotch, legDifference: { correct: 0, found: 'blocks' } },
    right: {
      foot: {
        stiff: { joint: 'ankle', state: 'fused' }, length: person.foot, ballInner: person.ball, pivotForward: foot.pivotForward,
        pivotHeight: foot.pivotHeight, hipHeight: person.trochanter, ankleAngle: { value: inDegrees(foot.stance.ankleAngle), how: 'heel plates and plumb line' },
      },
      last: { length: last.length, pitch: last.pitch, toeSpring: last.toeSpring },
      order: { kind: 'rocker' },
    },
  });
}

const designFor = (person: Person, seed: number) => {
  const reading = readSheet(sheetFor(person, seed));
  if (!reading.ok) throw new Error(`${person.id}: ${reading.faults.map(({ text }) => text).join('; ')}`);
  const designing = design(reading.fitting);
  if (!designing.ok) throw new Error(`${person.id}: no shape`);
  return designing.design;
};

/** Middle nine tenths of one sex on every measure the survey has of the sheet's. */
function usualPeople(): Set<string> {
  const measures = ['foot', 'ball', 'malleolus', 'trochanter', 'crotch', 'stature', 'mass'] as const;
  const usual = (['female', 'male'] as const).flatMap((sex) => {
    const group = everyone.filter((person) => person.sex === sex);
    const spans = measures.map((measure) => { const sorted = group.map((person) => person[measure]).sort((a, b) => a - b); return [sorted[Math.ceil(0.05 * sorted.length)]!, sorted[Math.floor(0.95 * sorted.length)]!] as const; });
    return group.filter((person) => measures.every((measure, i) => person[measure] >= spans[i]![0] && person[measure] <= spans[i]![1]));
  });
  return new Set(usual.map(({ id }) => id));
}

/** Outer ball and pivot forward have no survey behind them: what is usual there is common practice. */
const fromSurvey = (where: string): boolean => !/ballOuter|pivotForward|last\./.test(where);

test(`${chosen.length} sheets from survey to findings: no fault, no stop, and nobody in the middle is asked to measure again`, () => {
  const usual = usualPeople();
  let middle = 0;
  for (const [i, person] of chosen.entries()) {
    const { findings, shoes } = designFor(person, i + 1);
    const stops = findings.filter(({ severity }) => severity === 'stop');
    if (stops.length) throw new Error(`${person.id}: ${stops.map(({ text }) => text).join('; ')}`);
    if (!shoes.every((shoe) => Number.isFinite(shoe.stands.seat) && Number.isFinite(shoe.stands.ball))) throw new Error(`${person.id}: not a number`);
    if (!usual.has(person.id)) continue;
    middle++;
    const again = findings.filter(({ code, where, text }) => code === 'TAKEN_TWICE' && fromSurvey(where + text));
    if (again.length) throw new Error(`${person.id}: ${again.map(({ text }) => text).join('; ')}`);
  }
  expect(middle).toBeGreaterThan(chosen.length / 4);
}, 36_000_000);
