import { degrees, inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { sin } from '../geometry/trig.ts';
import { isEstimated } from '../fitting/measure.ts';
import type { ShoeFitting } from '../fitting/fitting.ts';
import { rangeOf } from '../fitting/ranges.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { pitchForLean } from '../profile/stance.ts';
import { APEX_AHEAD, apexOn, heelPieces, midArcs, type MidArcs } from '../profile/arcs.ts';
import { endAngle, pieceNamed } from '../profile/groundFace.ts';
import type { Rocker } from '../profile/rocker.ts';
import { axisX } from '../profile/rollLine.ts';
import { apexBehindJoint } from '../prescription/order.ts';
import type { Finding } from './finding.ts';
import { flatHolds } from './flatHolds.ts';
import { isAligned } from './prosthesis.ts';
import { flatBites } from './restsOn.ts';
import { ANOTHER_LAST, deg, mm, rounded, sentences } from './say.ts';
import { LEAN_GOOD, signQuestion } from './sign.ts';
import { outside, over, under, type Seen } from './seen.ts';
import { PRACTICE, STANDING } from './sources.ts';

/** Lean of the leg in degrees: back from here it stops, and the aim a pitch is named for. */
const LEAN_STOP = 0, LEAN_AIM = 4;

/** The hip must stand over the mid arc; where it does not, the heel height is wrong for the ankle. */
export function lean(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side }, number, place } = seen, angle = number('lean'), ahead = number('standingAhead');
  const common = { side, measured: angle, unit: 'deg', where: 'standing point', ...place('standingPoint'), basis: STANDING } as const;
  if (under(angle, LEAN_STOP)) return [{
    ...common, code: 'HIP_BEHIND_PIVOT', severity: 'stop', limit: LEAN_STOP,
    text: sentences(`The leg leans ${deg(Math.abs(angle))} back: the hip stands ${mm(Math.abs(ahead))} behind the ankle pivot, and the shoe would stand on its heel arc`, remedy(seen)),
  }];
  if (!outside(angle, LEAN_GOOD)) return [];
  const [least, most] = LEAN_GOOD;
  return [{
    ...common, code: 'LEAN_UNUSUAL', severity: 'warn', limit: angle > most ? most : least,
    text: sentences(`The leg leans ${deg(angle)} forward; ${least} to ${most}° is good, and the standing point follows it (${mm(ahead)} ahead of the ankle pivot)`, remedy(seen)),
  }];
}

const remedy = (seen: Seen<RockerShoe>): string => signQuestion(seen.shoe.fitting, seen.shoe.last) || leanRemedy(seen);

function leanRemedy({ shoe: { fitting, last } }: Seen<RockerShoe>): string {
  if (isAligned(fitting)) return alignedRemedy(fitting);
  const stance = fitting.foot?.stance;
  if (stance?.kind !== 'locked') return 'Take the plumb line from hip to ankle again, standing at ease (foot.hipAhead)';
  const pitch = pitchForLean(stance.ankleAngle.value, degrees(LEAN_AIM), last), [least, most] = rangeOf('last.pitch').limits;
  return outside(pitch, [least, most])
    ? `No pitch gives ${LEAN_AIM}° with this ankle angle: take the angle again on heel plates with a plumb line (foot.heelPlates)`
    : `A pitch of ${mm(pitch)} (last.pitch) gives ${LEAN_AIM}°: ${ANOTHER_LAST}`;
}

/** The lean of a prosthetic foot is the prosthetist's: no pitch is named for it. */
function alignedRemedy({ foot }: ShoeFitting): string {
  const lean = foot?.prosthesis?.shankLean, todo = 'Have the prosthetist give the aligned lean of the shank (foot.prosthesis.shankLean), or align the foot anew';
  return lean && isEstimated(lean) ? `The sheet gives no aligned lean of the shank, so it counted as ${deg(inDegrees(lean.value), 0)}. ${todo}` : todo;
}

/** Where the mid arc begins and ends, from the heel on the long axis, mm. */
const midArcEnds = ({ shoe: { rocker: { heelArc, strikePoint, apex, line } }, number }: Seen<RockerShoe>): readonly [Mm, Mm] =>
  [heelArc ? number('heelJoint') : axisX(line, strikePoint[0]), apex.point[0]];

/** Standing still, the client stands between the two ends of the mid arc. */
export function standingPoint(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side, fitting, last }, number, place } = seen, standing = number('standingPoint'), [back, front] = midArcEnds(seen);
  if (!outside(standing, [back, front])) return [];
  const todo = isAligned(fitting) ? 'Have the prosthetist look at the alignment, or change the apex (order.apex)'
    : signQuestion(fitting, last) || `Change the apex (order.apex), or the pitch (last.pitch: ${ANOTHER_LAST})`;
  return [{
    code: 'STANDING_OFF_ARC', severity: 'warn', side, measured: standing, limit: standing > front ? front : back, unit: 'mm', where: 'standing point', ...place('standingPoint'),
    text: `The standing point lies ${mm(standing)} from the heel, off the mid arc (${mm(back)} to ${mm(front)}): the shoe rolls until the arc lies under the hip. ${todo}.`, basis: PRACTICE,
  }];
}

/** What a flat costs: the hip rises on it as on a plank, (distance from the flat's end to the hip) times sine of the roll. */
const riseOn = (mid: MidArcs, standing: Mm, heelRoll: Rad, apexRoll: Rad): { readonly back: Mm; readonly front: Mm } =>
  ({ back: (standing - mid.rearX) * sin(Math.abs(heelRoll)), front: (mid.frontX - standing) * sin(apexRoll) });

function flatRise({ shoe, number, place }: Seen<RockerShoe>): Finding[] {
  const { side, order: { standingFlat, strike }, rocker: { mid, heelArc, apex, pivot, hip } } = shoe;
  if (standingFlat === 0) return [];
  const { back, front } = riseOn(mid, hip[0], heelArc?.to ?? strike, apex.angle);
  const common = { severity: 'note', side, unit: 'mm', where: 'standing flat', ...place('standingFlat'), basis: PRACTICE } as const;
  if (flatBites(shoe)) return [{
    ...common, code: 'FLAT_BITES', measured: front,
    text: `The flat of ${mm(standingFlat)} would reach ${mm(pivot[0] - hip[0] + standingFlat / 2)} behind the ankle pivot, so it begins right under it and is ${mm(number('standingFlat'))} long. The hip rises ${mm(front)} until the apex is reached.`,
  }];
  return [{
    ...common, code: 'FLAT_RISE', measured: Math.max(back, front),
    text: `The flat of ${mm(standingFlat)} lets the hip rise ${mm(back)} where heel and mid arc meet and ${mm(front)} at the apex; without it the hip keeps its height.`,
  }];
}

const OFFERED: Mm = 30, LEAST_OFFERED: Mm = 10;

/** The same for a flat that is not there yet, on the mid arc as it is: the hip is some 900 mm up, so a little more or less build hardly counts. */
function riseWith({ pivot, hip, line: { apexX }, mid: { radius } }: Rocker, strike: Rad, flat: Mm): { readonly back: Mm; readonly front: Mm } {
  const mid = midArcs(hip[0], pivot[0], radius, flat), heel = pieceNamed({ pieces: heelPieces(pivot, mid, strike) }, 'heel arc');
  return riseOn(mid, hip[0], heel ? endAngle(heel) : strike, apexOn(mid, apexX).angle);
}

/** As long a flat as is usual and as the apex leaves room for; nothing where that is too short to stand on. */
export function flatRoom({ order, rocker }: RockerShoe): Mm | undefined {
  const flat = Math.min(OFFERED, Math.floor(2 * (order.apexX - rocker.hip[0] - APEX_AHEAD)));
  return flat >= LEAST_OFFERED ? flat : undefined;
}

/** A flat gives a place to stand. Offered as long as the apex leaves room for it. */
function flatOffered(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side, fitting, order, rocker }, fitting: { wearer: { risks } }, place } = seen;
  const unsteady = risks.includes('fall within a year') || risks.includes('reduced feeling'), locked = fitting.foot?.ankleLocked === true;
  if (order.standingFlat > 0 || !(unsteady || locked)) return [];
  const flat = flatRoom(seen.shoe);
  if (flat === undefined) return [];
  const { back, front } = riseWith(rocker, order.strike, flat);
  return [{
    code: 'FLAT_OFFERED', severity: 'note', side, measured: 0, limit: flat, unit: 'mm', where: 'standing flat', ...place('standingPoint'),
    text: sentences(`The shoe has no standing flat. ${unsteady ? 'With this risk of falling' : 'With an ankle that must not bend'}, a flat of ${flat} mm (order.standingFlat) gives a place to stand still; the hip then rises ${mm(back)} where heel and mid arc meet and ${mm(front)} at the apex`, flatHolds(seen, flat)), basis: PRACTICE,
  }];
}

/** A stiff toe joint is rolled over from behind it: where the crest lies under or ahead of it, the joint is bent before the shoe rolls. */
function apexBehindToeJoint({ shoe: { side, fitting, last, order: { apexX, crestAngle } }, place }: Seen<RockerShoe>): Finding[] {
  const most = apexBehindJoint(last, crestAngle);
  if (fitting.foot?.joint !== 'toe joint' || !over(apexX, most)) return [];
  const share = Math.floor((1000 * most) / last.length) / 10, ahead = last.innerBall - apexX;
  const turned = crestAngle > Math.PI / 2 ? ', and a crest further forward on the inner side passes it nearer still' : '';
  const lies = ahead < 0 ? `${mm(-ahead)} ahead of` : `only ${mm(ahead)} behind`;
  return [{
    code: 'APEX_AT_JOINT', severity: 'warn', side, measured: apexX, limit: most, unit: 'mm', where: 'apex', ...place('apex'),
    text: `The apex lies ${lies} the big-toe joint${turned}: it would have to bend, or be pushed, before the shoe rolls. An apex of ${share.toFixed(1)} % of the last length, from the heel (order.apex), lies ${mm(last.innerBall - most, 0)} behind it.`, basis: PRACTICE,
  }];
}

const GONIOMETER = 4;

/** An angle read with a goniometer alone puts the standing point anywhere within centimetres. */
function goniometerAlone(seen: Seen<RockerShoe>): Finding[] {
  const { shoe: { side, fitting, rocker: { stance } }, number, place } = seen;
  const found = fitting.foot?.stance;
  if (found?.kind !== 'locked' || found.found !== 'goniometer') return [];
  const at = (turn: number): Mm => stance.pivot[0] + stance.leg * sin(stance.lean + degrees(turn)), least = at(-GONIOMETER), most = at(GONIOMETER);
  const [back, front] = midArcEnds(seen), standing = number('standingPoint'), room = Math.min(standing - back, front - standing);
  const behind = stance.pivot[0] - least;
  return [{
    code: 'GONIOMETER_ALONE', severity: 'warn', side, measured: (most - least) / 2, limit: Math.max(room, 0), unit: 'mm', where: 'standing point', ...place('standingPoint'),
    text: sentences(`The ankle angle of ${deg(inDegrees(found.ankleAngle.value))} was read with a goniometer alone: within ±${GONIOMETER}° of it the standing point may lie from ${rounded(least, 0)} to ${rounded(most, 0)} mm from the heel; the mid arc of this shoe runs from ${rounded(back, 0)} to ${rounded(front, 0)} mm`,
      behind > 0 ? `At the lower end the hip stands ${mm(behind)} behind the ankle pivot` : '', 'Find the angle on heel plates with a plumb line from the hip (foot.heelPlates)'),
    basis: 'common practice; goniometer ±3 to 5°',
  }];
}

function hipAheadEstimated({ shoe: { side, fitting }, place }: Seen<RockerShoe>): Finding[] {
  const stance = fitting.foot?.stance;
  if (stance?.kind !== 'free' || !isEstimated(stance.hipAhead)) return [];
  const { value, error, rule } = stance.hipAhead;
  return [{
    code: 'HIP_AHEAD_ESTIMATED', severity: 'note', side, measured: value, unit: 'mm', where: 'standing point', ...place('standingPoint'),
    text: sentences(`Hip ahead of the ankle is estimated as ${mm(value)}${rule ? ` (${rule})` : ''}`, error ? `The standing point may lie ${mm(error)} further back or forward` : '', 'Take it with a plumb line from hip to ankle (foot.hipAhead)'),
    basis: STANDING,
  }];
}

export const standingChecks = [lean, standingPoint, flatRise, flatOffered, apexBehindToeJoint, goniometerAlone, hipAheadEstimated] as const;
