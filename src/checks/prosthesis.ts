import type { ShoeFitting } from '../fitting/fitting.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { mm } from './say.ts';
import { over, type Seen } from './seen.ts';
import { HEEL_RISE } from './sources.ts';

/** True for a foot that stands as a prosthetist aligned it: that is not for the maker to change, and nor is the pitch under it. */
export const isAligned = ({ foot }: ShoeFitting): boolean => foot?.stance.kind === 'locked' && foot.stance.found === 'prosthesis alignment';

/** How far the shoe's heel rise may be from the one a prosthetic foot was aligned to, mm. */
const RISE_WARN = 3, RISE_STOP = 6;

export function alignedHeelRise({ shoe: { side, fitting }, number }: Seen<RockerShoe>): Finding[] {
  const prosthesis = fitting.foot?.prosthesis;
  if (!prosthesis) return [];
  const aligned = prosthesis.heelRise.value, rise = number('pitchOfSole'), off = Math.abs(rise - aligned);
  if (!over(off, RISE_WARN)) return [];
  const named = prosthesis.prosthetist, stops = over(off, RISE_STOP) && named === undefined;
  const what = `The prosthetic foot was aligned to a heel rise of ${mm(aligned)}; this shoe has ${mm(rise)}, ${mm(off)} ${rise < aligned ? 'less' : 'more'}`;
  const todo = named === undefined
    ? 'Ask the prosthetist: either the shoe is made to the aligned heel rise, or the foot is aligned anew and the name entered (foot.prosthesis.heelRise, foot.prosthesis.prosthetist).'
    : `${named} agreed with another heel rise: have the alignment checked in the finished shoe.`;
  return [{
    code: 'PROSTHESIS_HEEL_RISE', severity: stops ? 'stop' : 'warn', side, measured: off, limit: over(off, RISE_STOP) ? RISE_STOP : RISE_WARN, unit: 'mm',
    where: 'seat to tread', text: `${what}. ${todo}`, basis: HEEL_RISE,
  }];
}
