import { readFileSync } from 'node:fs';
import type { Sex } from '../../src/fitting/words.ts';

/** One person of the open survey, mm and kg. Source: ANSUR II, 2012 US Army survey, Gordon et al. 2014 (see CREDIT.md beside the file). */
export interface Person {
  readonly sex: Sex; readonly mass: number; readonly stature: number; readonly crotchHeight: number; readonly hipHeight: number;
  readonly footLength: number; readonly ballLength: number; readonly footWidth: number; readonly heelWidth: number; readonly malleolusHeight: number;
}

const COLUMNS = {
  mass: 'mass_kg', stature: 'stature', crotchHeight: 'crotchheight', hipHeight: 'trochanterionheight', footLength: 'footlength',
  ballLength: 'balloffootlength', footWidth: 'footbreadthhorizontal', heelWidth: 'heelbreadth', malleolusHeight: 'lateralmalleolusheight',
} as const;

const [head, ...rows] = readFileSync(new URL('../data/anthropometry/ansur2.csv', import.meta.url), 'utf8').trim().split(/\r?\n/).map((row) => row.split(','));
const column = (name: string): number => head!.indexOf(name);

export const POPULATION: readonly Person[] = rows.map((row) => {
  const numbers = Object.entries(COLUMNS).map(([name, title]) => [name, Number(row[column(title)])]);
  return { sex: row[column('sex')] === 'F' ? 'female' : 'male', ...Object.fromEntries(numbers) } as Person;
});

export const ofSex = (sex: Sex | undefined): readonly Person[] => (sex ? POPULATION.filter((person) => person.sex === sex) : POPULATION);

/** The value below which a share of the list lies, by straight lines between neighbours. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b), at = (sorted.length - 1) * share, below = Math.floor(at);
  return sorted[below]! + (at - below) * ((sorted[below + 1] ?? sorted[below]!) - sorted[below]!);
}
