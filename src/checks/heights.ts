import type { RockerShoe, Shoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { isBuiltUpToOther } from './restsOn.ts';
import { mm } from './say.ts';
import { over, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** Heights of the face the sole is glued to, and the pitch they come from. Limits in mm, common practice. */
const SEAT_MOST = 60, BALL_MOST = 35, BALL_STOP = 40, PITCH_WITHIN = 1;

/** What brings a shoe down depends on what holds it up. */
function lowering(shoe: Shoe): string {
  if (shoe.kind === 'match' || isBuiltUpToOther(shoe)) return 'Bring the other shoe down, or ask the prescriber for a smaller correction (wearer.legDifference.correct).';
  if (shoe.rocker.governs === 'order') return 'Ask for less seat height (order.seatHeightAtLeast).';
  return 'Put the apex further forward (order.apex), take a longer toe arc (order.toe) or give the last more spring (last.toeSpring).';
}

export function seatHeight({ shoe, number, place }: Seen): Finding[] {
  const { side } = shoe;
  const height = number('seatHeight');
  if (!over(height, SEAT_MOST)) return [];
  return [{
    code: 'SEAT_HIGH', severity: 'warn', side, measured: height, limit: SEAT_MOST, unit: 'mm', where: 'seat', ...place('seatHeight'),
    text: `The seat stands ${mm(height)} high; more than ${mm(SEAT_MOST)} is unsteady. ${lowering(shoe)}`, basis: PRACTICE,
  }];
}

export function ballHeight({ shoe, number, place }: Seen): Finding[] {
  const { side } = shoe;
  const height = number('ballHeight');
  if (!over(height, BALL_MOST)) return [];
  const stops = over(height, BALL_STOP), limit = stops ? BALL_STOP : BALL_MOST;
  return [{
    code: 'BALL_HIGH', severity: stops ? 'stop' : 'warn', side, measured: height, limit, unit: 'mm', where: 'ball', ...place('ballHeight'),
    text: `The ball stands ${mm(height)} high; ${stops ? 'a sole' : 'usual is'} ${stops ? `higher than ${mm(limit)} there is not made` : `at most ${mm(limit)}`}. ${lowering(shoe)}`,
    basis: PRACTICE,
  }];
}

/** A sole pitched otherwise than its last rocks on it, or twists it. */
export function pitchOfSole({ shoe: { side }, number }: Seen<RockerShoe>): Finding[] {
  const sole = number('pitchOfSole'), last = number('pitchOfLast'), off = Math.abs(sole - last);
  if (!over(off, PITCH_WITHIN)) return [];
  return [{
    code: 'PITCH_DIFFERS', severity: 'warn', side, measured: off, limit: PITCH_WITHIN, unit: 'mm', where: 'seat to tread',
    text: `The sole has a pitch of ${mm(sole)}, the last ${mm(last)}; they must agree within ${mm(PITCH_WITHIN)}. Take the pitch (last.pitch) and the measured heights (last.heights) of the last again.`, basis: PRACTICE,
  }];
}
