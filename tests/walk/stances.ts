import { readFileSync } from 'node:fs';

/** The open stances (tests/data/gait, CREDIT.md there), read apart from what the project made of them: a list of numbers for each stance and column. */
export type Column = 'foot_floor_deg' | 'shank_deg' | 'legline_deg' | 'ankle_x' | 'ankle_y' | 'hip_x' | 'hip_y' | 'COP_rel_ankle' | 'Fy';

const [head, ...lines] = readFileSync(new URL('../data/gait/stance-curves.csv', import.meta.url), 'utf8').trim().split(/\r?\n/).map((line) => line.split(','));
const NAMES = [...new Set(lines.map(([name]) => name!))];

/** Seven lists of 101 numbers. */
export const stances = (column: Column): number[][] =>
  NAMES.map((name) => lines.filter(([own]) => own === name).map((line) => Number(line[head!.indexOf(column)])));

export const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
export const spread = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, one) => sum + (one - mean(values)) ** 2, 0) / (values.length - 1));
/** One number of each stance, percent by percent. */
export const across = (lists: readonly number[][]): number[][] => lists[0]!.map((_, i) => lists.map((list) => list[i]!));
