import type { RockerShoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import type { FigureKey } from './restsOn.ts';
import { rounded } from './say.ts';
import { outside, type Seen } from './seen.ts';
import { PUBLISHED_ROCKERS } from './sources.ts';

interface Tested { readonly code: string; readonly figure: FigureKey; readonly span: readonly [number, number]; readonly unit: 'deg' | '%'; readonly words: string }

/** The rockers that were tried on people and published. Outside them there is no number to lean on; it is no fault. */
const TESTED: readonly Tested[] = [
  { code: 'PUBLISHED_APEX', figure: 'apexShare', span: [52, 67], unit: '%', words: 'apex, counted from the heel,' },
  { code: 'PUBLISHED_APEX_ANGLE', figure: 'crestAngle', span: [80, 100], unit: 'deg', words: 'apex angle against the long axis' },
  { code: 'PUBLISHED_ROCKER_ANGLE', figure: 'rockerAngle', span: [10, 20], unit: 'deg', words: 'rocker angle from apex to tip' },
];

export function publishedWindow({ shoe: { side }, number, place }: Seen<RockerShoe>): Finding[] {
  return TESTED.flatMap(({ code, figure, span, unit, words }): Finding[] => {
    const value = number(figure), [least, most] = span, sign = unit === '%' ? ' % of the shoe length' : '°';
    if (!outside(value, span)) return [];
    return [{
      code, severity: 'note', side, measured: value, limit: value > most ? most : least, unit, where: 'apex', ...place(figure),
      text: `The ${words} is ${rounded(value, 1)}${sign}; rockers tried in published studies had ${least} to ${most}${unit === '%' ? ' %' : '°'}.`, basis: PUBLISHED_ROCKERS,
    }];
  });
}
