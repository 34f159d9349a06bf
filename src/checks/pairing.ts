import type { Fitting } from '../fitting/fitting.ts';
import { levelInWords, standsHigherBy } from '../pair/level.ts';
import { isLevel, LEVEL_WITHIN } from '../pair/raise.ts';
import { otherSide } from '../fitting/words.ts';
import type { MatchShoe } from '../pair/shoe.ts';
import { isAligned } from './prosthesis.ts';
import { LEAST_FOAM } from '../profile/thinnest.ts';
import type { Mm } from '../geometry/units.ts';
import type { Finding } from './finding.ts';
import { higherOther, keepsFoam, roomFor } from './raiseRoom.ts';
import { capital, ANOTHER_LAST, mm, sentences } from './say.ts';
import { isRocker, over, type Seen } from './seen.ts';
import { PAIR, PRACTICE } from './sources.ts';

export function oneShoe(seen: readonly Seen[]): Finding[] {
  const [only] = seen;
  if (seen.length !== 1 || !only) return [];
  return [{
    code: 'ONE_SHOE', severity: 'warn', unit: '', where: 'pair',
    text: `Only the ${only.shoe.side} shoe is on the sheet. A stiff rolling sole stands higher than an ordinary one: never hand over one shoe only. Enter the ${otherSide(only.shoe.side)} shoe, as a match or a rocker.`, basis: PRACTICE,
  }];
}

/** Lasts of one pair seldom differ by more; common practice of the trade. */
const ALIKE: Mm = 5;

/** Feet may differ, but where a pair of lasts does so much, one of them was most often measured or typed wrongly. */
export function lastsAlike([left, right]: readonly Seen[]): Finding[] {
  if (!left || !right) return [];
  return ([['length', 'length'], ['ballWidth', 'ball width']] as const).flatMap(([field, name]): Finding[] => {
    const [one, other] = [left, right].map(({ shoe: { last } }) => last[field]) as [Mm, Mm], off = Math.abs(one - other);
    if (!over(off, ALIKE)) return [];
    return [{
      code: 'LASTS_DIFFER', severity: 'warn', measured: off, limit: ALIKE, unit: 'mm', where: 'pair',
      text: `The two lasts differ by ${mm(off)} in ${name}: left ${mm(one)}, right ${mm(other)}. Measure both again (last.${field}).`, basis: PRACTICE,
    }];
  });
}

/** A foot that has done well on its heel height should keep it: a pitch that changes by more is worth a warning; common practice of the trade. */
const SAME_PITCH: Mm = 3;
/** Less is not felt, nor worth a word. */
const PITCH_FELT: Mm = 0.5;

/** What goes under the other shoe, in words: which foot stands higher and by how much, and what becomes of its pitch. */
export function raiseInWords({ shoe: { side, raise, made, order }, fitting: { wearer: { legDifference } } }: Seen<MatchShoe>): Finding[] {
  const level = isLevel(raise), now = order.seatHeightNow.value - order.ballHeightNow.value, more = raise.seat - raise.ball, tilts = !level && over(Math.abs(more), SAME_PITCH);
  if (!made && !level) return [];
  const pitch = `The pitch of the ${side} shoe goes from ${mm(now)} to ${mm(now + more)}`;
  return [{
    code: 'RAISE', severity: tilts ? 'warn' : 'note', side, measured: raise.seat, unit: 'mm', where: 'seat and ball',
    text: sentences(level
      ? `The ${side} shoe needs no raise: it stands as ordered within ${mm(LEVEL_WITHIN)}`
      : `The ${side} shoe gets ${mm(raise.seat)} more under the seat and ${mm(raise.ball)} more at the ball`, tilts ? `${pitch}: try it on blocks first, or give the rocker's last a pitch nearer to it` : !level && over(Math.abs(more), PITCH_FELT) ? pitch : '', levelInWords(legDifference)),
    basis: PRACTICE,
  }];
}

const upOrDown = (by: number): string => (by < 0 ? `down ${mm(-by)}` : `up ${mm(by)}`);

/** A shoe can be built up, not pushed down, and a raise needs foam over its outsole. What does not come level is not cut. */
export function notLevel({ shoe }: Seen<MatchShoe>): Finding[] {
  const { side, raise, trouble, order } = shoe;
  if (!trouble) return [];
  const common = { code: 'CANNOT_BE_RAISED', severity: 'stop', side, unit: 'mm', basis: PAIR } as const;
  const wanted = `To stand as ordered the ${side} shoe would have to go ${upOrDown(raise.seat)} at the seat and ${upOrDown(raise.ball)} at the ball`;
  if (trouble.why === 'tip does not do') return [{
    ...common, measured: trouble.tip, limit: trouble.works, where: 'tip',
    text: sentences(`${wanted}; with ${mm(trouble.tip)} left at the tip (order.tip) ${trouble.text ?? 'the toe would turn up too steeply or keep no foam'}`, `${mm(trouble.works)} at the tip works, or leave order.tip out`),
  }];
  if (trouble.why === 'walls meet') return [{ ...common, where: 'walls', text: sentences(`${wanted}; ${trouble.text}`, 'Let the walls lean less (order.taper)') }];
  const least = order.outsole.thickness + LEAST_FOAM, { missing } = trouble;
  return [{
    ...common, measured: least - missing, limit: least, where: 'seat and ball',
    text: sentences(`${wanted}; a raise needs at least ${mm(least)} everywhere`, roomWords(shoe, missing)),
  }];
}

/** What makes room, put in and made: the other shoe higher, or this one's own sole taken down, which comes to the same. */
function roomWords(shoe: MatchShoe, missing: Mm): string {
  const room = roomFor(shoe, missing, keepsFoam(LEAST_FOAM));
  if (!room) return 'Make the two shoes more alike in heel height';
  const ways = `${higherOther(shoe, room)}, or ${Math.min(shoe.raise.seat, shoe.raise.ball) < 0 ? `take ${mm(room.more)} off the ${shoe.side} shoe's own sole` : 'raise it inside the shoe'}`;
  return capital(ways);
}

const INSIDE = 10;

export function partlyInside({ shoe: { side, raise, made } }: Seen<MatchShoe>): Finding[] {
  if (!made || !over(raise.seat, INSIDE)) return [];
  return [{
    code: 'RAISE_INSIDE', severity: 'note', side, measured: raise.seat, limit: INSIDE, unit: 'mm', where: 'seat',
    text: `Of the ${mm(raise.seat)} under the ${side} seat up to ${INSIDE} mm may go inside the shoe, if it has the depth; the rest goes under it.`, basis: PRACTICE,
  }];
}

export function bendsAtBall({ shoe: { side, raise, made, last } }: Seen<MatchShoe>): Finding[] {
  if (!made) return [];
  return [{
    code: 'RAISE_BENDS', severity: 'note', side, measured: raise.ball, unit: 'mm', where: 'ball', at: last.tread,
    text: `The ${side} foot still bends at the ball: cut a groove across the raise there, or use soft foam across the ball.`, basis: PRACTICE,
  }];
}

/** The pitch under a prosthetic foot is left alone. */
function alikeInPitch(seen: readonly Seen[]): string {
  const free = seen.filter(({ shoe: { fitting } }) => !isAligned(fitting)).map(({ shoe: { side } }) => side);
  if (free.length === 0) return 'Ask the prosthetist: both feet stand as they were aligned.';
  return free.length === 2 ? `Make the two lasts alike in pitch (last.pitch: ${ANOTHER_LAST}).` : `Give the ${free[0]} last the other one's pitch (last.pitch: ${ANOTHER_LAST}); the prosthetic foot's stays as aligned.`;
}

/** Two rockers are built level at the seat; their balls follow from the pitch. */
export function ballsLevel([left, right]: readonly Seen[], { wearer: { legDifference } }: Fitting): Finding[] {
  if (!left || !right || !isRocker(left) || !isRocker(right)) return [];
  const off = left.number('standsBall') - right.number('standsBall') - standsHigherBy('left', legDifference);
  if (!over(Math.abs(off), LEVEL_WITHIN)) return [];
  return [{
    code: 'BALLS_NOT_LEVEL', severity: 'warn', measured: Math.abs(off), limit: LEVEL_WITHIN, unit: 'mm', where: 'ball',
    text: `The ${off > 0 ? 'left' : 'right'} ball stands ${mm(Math.abs(off))} higher than ordered beside the other. ${alikeInPitch([left, right])} ${levelInWords(legDifference)}`, basis: PAIR,
  }];
}
