import type { RockerShoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { mm } from './say.ts';
import { over, type Seen } from './seen.ts';
import { HEEL_RISE } from './sources.ts';

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
    ? `Change the pitch of the last to ${mm(aligned)}, or have the prosthetist align the foot anew and enter the name.`
    : `${named} agreed with another heel rise: have the alignment checked in the finished shoe.`;
  return [{
    code: 'PROSTHESIS_HEEL_RISE', severity: stops ? 'stop' : 'warn', side, measured: off, limit: over(off, RISE_STOP) ? RISE_STOP : RISE_WARN, unit: 'mm',
    where: 'seat to tread', text: `${what}. ${todo}`, basis: HEEL_RISE,
  }];
}
