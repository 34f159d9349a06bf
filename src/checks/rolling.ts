import { inDegrees } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { pieceNamed } from '../profile/groundFace.ts';
import { ROLL_OTHER_LANDS, ROLL_TOE_OFF, STEP_TURNS } from '../roll/gait.ts';
import type { Finding } from './finding.ts';
import { deg, mm, rounded } from './say.ts';
import { over, shortOf, under, type Seen } from './seen.ts';
import { GAIT, PRACTICE, TRIPPING } from './sources.ts';

/** The heel arc is asked to carry the roll from the strike angle on; a short heel ends before it. */
export function strikeReached({ shoe: { side }, number, place }: Seen<RockerShoe>): Finding[] {
  const asked = number('strikeAsked'), reached = number('strikeReached');
  if (!under(reached, asked - 1e-6)) return [];
  return [{
    code: 'STRIKE_NOT_REACHED', severity: 'warn', side, measured: reached, limit: asked, unit: 'deg', where: 'back edge', ...place('strikeReached'),
    text: `The roll is to begin at ${deg(asked)} but the sole ends at ${deg(reached)}: heel strike comes on the back edge. Let the edge stand out further at the heel (order.edgeBeyond.heel), take away heel taper (order.taper), or ask for ${deg(Math.floor(reached * 10) / 10)} (foot.strikeAngle).`,
    basis: 'common practice; tilt at heel strike 15 to 26° in published gait data',
  }];
}

function noHeelArc({ shoe: { side, rocker: { heelArc } }, number }: Seen<RockerShoe>): Finding[] {
  if (heelArc) return [];
  return [{
    code: 'NO_HEEL_ARC', severity: 'note', side, measured: number('strikeAsked'), unit: 'deg', where: 'heel',
    text: `There is no heel arc: the mid arc turns past the ${deg(number('strikeAsked'))} asked for at heel strike by itself. Ask for a greater strike angle (foot.strikeAngle), or bring the standing point back.`, basis: PRACTICE,
  }];
}

/** Steeper than this a tip cannot be walked over, degrees. */
export const TIP_STEEPEST = 45;

export function tipSlope({ shoe: { side }, number, place }: Seen<RockerShoe>): Finding[] {
  const slope = number('tipSlope');
  if (!over(slope, TIP_STEEPEST)) return [];
  return [{
    code: 'TIP_STEEP', severity: 'warn', side, measured: slope, limit: TIP_STEEPEST, unit: 'deg', where: 'tip', ...place('tipSlope'),
    text: `The ground face stands at ${deg(slope)} at the tip; more than ${TIP_STEEPEST}° cannot be walked over and the outsole will not lie on it. Take a longer toe arc (order.toe) or an end angle (order.toe.endAngle).`, basis: PRACTICE,
  }];
}

export function forwardAngle({ shoe: { side, fitting }, number, place }: Seen<RockerShoe>): Finding[] {
  const reached = number('toeOff'), measured = fitting.foot?.toeOffAngle, wanted = inDegrees(measured?.value ?? ROLL_TOE_OFF), lands = inDegrees(ROLL_OTHER_LANDS);
  const short = shortOf(reached, lands, wanted);
  if (!short) return [];
  const common = { side, severity: short.severity, measured: reached, limit: short.limit, unit: 'deg', where: 'toe arc', ...place('toeOff'), code: 'FORWARD_ANGLE', basis: GAIT } as const;
  return [short.severity === 'warn'
    ? { ...common, text: `Ahead of standing the shoe rolls only ${deg(reached)}; the other foot lands at about ${deg(lands, 0)}, so the client has to climb over the tip. Put the apex back (order.apex) or take a shorter toe arc (order.toe).` }
    : { ...common, text: `The shoe rolls ${deg(reached)} forward; toe-off ${measured ? 'was measured' : 'comes'} at ${measured ? '' : 'about '}${deg(wanted, 0)}, so the last of the step is on the tip.` }];
}

const TURNING_WARN = inDegrees(STEP_TURNS.least), TURNING_NOTE = inDegrees(STEP_TURNS.most);

export function totalTurning({ shoe: { side }, number }: Seen<RockerShoe>): Finding[] {
  const turning = number('totalTurning'), short = shortOf(turning, TURNING_WARN, TURNING_NOTE);
  if (!short) return [];
  return [{
    code: 'TURNING', severity: short.severity, side, measured: turning, limit: short.limit, unit: 'deg', where: 'whole sole',
    text: `The arcs turn ${deg(turning)} in all; from heel contact until the other foot lands a step takes ${rounded(TURNING_WARN, 0)} to ${rounded(TURNING_NOTE, 0)}°. A shorter toe arc (order.toe) turns more.`, basis: GAIT,
  }];
}

function idleEndAngle({ shoe: { side, order: { toe }, rocker: { face } }, number, place }: Seen<RockerShoe>): Finding[] {
  if (toe.endAngle === undefined || pieceNamed(face, 'beyond the end angle')) return [];
  const asked = inDegrees(toe.endAngle), slope = number('tipSlope');
  return [{
    code: 'END_ANGLE_IDLE', severity: 'note', side, measured: asked, limit: slope, unit: 'deg', where: 'toe arc', ...place('tipSlope'),
    text: `The end angle of ${deg(asked)} does nothing: the toe arc reaches the tip at ${deg(slope)}. Leave it out (order.toe.endAngle), or ask for less than that.`, basis: PRACTICE,
  }];
}

const CLEARANCE_WARN = 10, CLEARANCE_NOTE = 15;

/** A stiff shoe cannot lift its toe by itself, so the tip of its ground face has to clear the floor. */
export function toeClearance({ shoe: { side }, number, place }: Seen<RockerShoe>): Finding[] {
  const spring = number('toeSpringOfShoe'), short = shortOf(spring, CLEARANCE_WARN, CLEARANCE_NOTE);
  if (!short) return [];
  return [{
    code: 'TOE_CLEARANCE', severity: short.severity, side, measured: spring, limit: short.limit, unit: 'mm', where: 'tip', ...place('toeSpringOfShoe'),
    text: `The tip of the ground face stands ${mm(spring)} above the floor; less than ${short.limit} mm ${short.severity === 'warn' ? 'catches on the floor' : 'may catch on carpets and kerbs'}, because a stiff shoe cannot lift its toe. Put the apex back (order.apex) or take a shorter toe arc (order.toe).`,
    basis: TRIPPING,
  }];
}

export const rollingChecks = [strikeReached, noHeelArc, tipSlope, forwardAngle, totalTurning, idleEndAngle, toeClearance] as const;
