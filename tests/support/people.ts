import { readFileSync } from 'node:fs';

/**
 * One adult of an open survey: ANSUR II, 2012 US Army Anthropometric Survey (Gordon et al. 2014), public release.
 * Lengths in mm, mass in kg.
 */
export interface Person {
  readonly sex: 'female' | 'male';
  readonly id: string;
  readonly stature: number;
  readonly mass: number;
  readonly foot: number;
  readonly ball: number;
  readonly footBreadth: number;
  readonly heelBreadth: number;
  readonly malleolus: number;
  readonly crotch: number;
  readonly trochanter: number;
}

export function people(): Person[] {
  const text = readFileSync(new URL('../data/anthropometry/ansur2.csv', import.meta.url), 'utf8');
  const [header, ...lines] = text.trim().split('\n');
  const columns = header!.trim().split(',');
  return lines.map((line) => {
    const cells = line.trim().split(','), cell = (name: string): string => cells[columns.indexOf(name)]!, number = (name: string): number => Number(cell(name));
    return {
      sex: cell('sex') === 'F' ? 'female' : 'male', id: cell('subjectid'), stature: number('stature'), mass: number('mass_kg'),
      foot: number('footlength'), ball: number('balloffootlength'), footBreadth: number('footbreadthhorizontal'), heelBreadth: number('heelbreadth'),
      malleolus: number('lateralmalleolusheight'), crotch: number('crotchheight'), trochanter: number('trochanterionheight'),
    };
  });
}
