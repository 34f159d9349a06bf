import { degrees, type Mm } from '../geometry/units.ts';
import { tan } from '../geometry/trig.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { deg, mm } from './say.ts';
import { under, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

const LEAST_TIPPING = 16;

/** What is asked for is rounded up to this: it is enough, and never nothing. */
const STEP: Mm = 0.5;

/** How far a shoe that stands on its lesser side edge may tip before the ankle pivot is over it. */
export function sideStability({ shoe: { side }, number }: Seen<RockerShoe>): Finding[] {
  const angle = number('sideTipping');
  if (!under(angle, LEAST_TIPPING)) return [];
  const said = Math.floor(angle * 10) / 10;   // never rounded up to the limit it misses
  const missing = number('pivotHeight') * tan(degrees(LEAST_TIPPING)) - number('halfBase'), wider = Math.max(STEP, Math.ceil(missing / STEP) * STEP);
  return [{
    code: 'SIDE_TIPPING', severity: 'warn', side, measured: said, limit: LEAST_TIPPING, unit: 'deg', where: 'seat',
    text: `The shoe tips sideways at ${deg(said)} (half base ${mm(number('halfBase'))}, ankle pivot ${mm(number('pivotHeight'))} high); at least ${LEAST_TIPPING}° is steady. Set the heel ${mm(wider)} wider on each side at the ground: flare the walls (order.taper) or let the edge stand out (order.edgeBeyond).`,
    basis: PRACTICE,
  }];
}
