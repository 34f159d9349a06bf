import type { Point } from '../geometry/point.ts';
import { degrees, inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { asin, atan2, cos, sin, tan } from '../geometry/trig.ts';
import type { ToeOrder } from '../fitting/fitting.ts';
import { Infeasible } from './infeasible.ts';
import { pointAt, type GroundFace, type GroundPiece, type RollArc } from './groundFace.ts';

/** The two halves of the mid arc: centred at the hip, pushed apart by the standing flat. */
export interface MidArcs { readonly radius: Mm; readonly rearX: Mm; readonly frontX: Mm }

/** The toe arc is asked to take over at least this far ahead of where the shoe stands, or standing still would tip it. */
export const APEX_AHEAD: Mm = 10;

/**
 * Mid arc: centred at the hip, so that rolling on it keeps the hip at one height like the hub of a wheel.
 * The low point cannot lie behind the pivot, or the shoe would stand on its heel arc.
 * All places lie along the walking line.
 * @param standing right under the hip; @param pivotX the ankle pivot; @param hip height of the hip above the ground
 */
export function midArcs(standing: Mm, pivotX: Mm, hip: Mm, flat: Mm): MidArcs {
  return { radius: hip, rearX: Math.max(standing - flat / 2, pivotX), frontX: Math.max(standing + flat / 2, pivotX) };
}

/**
 * Heel arc and what lies behind it: centred on the ankle pivot and tangent to the rear half of the mid arc, so the
 * pivot neither drops nor rises while the foot lowers. Needed only to the strike angle; behind that the face runs
 * straight on. Where the mid arc alone turns past the strike angle there is no heel arc.
 */
export function heelPieces(pivot: Point, mid: MidArcs, strike: Rad): GroundPiece[] {
  const [xA, h] = pivot, centre: Point = [mid.rearX, mid.radius];
  const join = atan2(xA - mid.rearX, mid.radius - h);
  const radius = mid.radius - Math.hypot(xA - mid.rearX, h - mid.radius);
  const hasHeel = join > -strike;
  const heel: RollArc = { kind: 'arc', name: 'heel arc', centre: pivot, radius, from: -strike, to: join };
  const rear: RollArc = { kind: 'arc', name: 'mid arc, rear', centre, radius: mid.radius, from: hasHeel ? join : -strike, to: 0 };
  const arcs: RollArc[] = [...(hasHeel ? [heel] : []), ...(rear.to > rear.from ? [rear] : [])];
  return [runOnBehind(arcs[0]!), ...arcs];
}

/** How far a straight end piece is drawn; it runs on beyond that. */
const RUN_ON: Mm = 100;

function runOnBehind(arc: RollArc): GroundPiece {
  const [x, z] = pointAt(arc, arc.from);
  return { kind: 'straight', name: 'behind the strike point', from: [x - RUN_ON * cos(arc.from), z - RUN_ON * sin(arc.from)], to: [x, z] };
}

/** The apex: where the toe arc leaves the front half of the mid arc, and at what roll angle. */
export interface Apex { readonly point: Point; readonly angle: Rad }

/** @throws Infeasible when the apex line passes too near the standing point, square to itself */
export function apexOn(mid: MidArcs, apexX: Mm): Apex {
  const ahead = apexX - mid.frontX;
  if (!(ahead >= APEX_AHEAD)) {
    const from = mid.frontX > mid.rearX ? 'the front end of the standing flat' : 'the standing point';
    throw new Infeasible('APEX_TOO_NEAR',
      `the apex line passes ${Math.abs(ahead).toFixed(1)} mm ${ahead < 0 ? 'behind' : 'ahead of'} ${from}; it must pass at least ${APEX_AHEAD} mm ahead`,
      ['standingFlat', 'apexX', 'pitch']);
  }
  const angle = asin(ahead / mid.radius);
  return { point: [apexX, mid.radius * (1 - cos(angle))], angle };
}

/** A toe arc flatter than this is no arc a maker could tell from a straight piece: 80 mm of it bulge 0.16 mm. */
const FLATTEST: Mm = 5000;

/** Steeper than this at its end a toe can be neither cut nor glued. Common practice of the trade. */
export const STEEPEST: Rad = degrees(85);

/** What a toe rule may look at. */
interface ToeSetting { readonly apex: Apex; readonly pivot: Point; readonly tipX: Mm }

/** The shortest radius that still reaches the tip (where it would stand upright). */
const shortestToeRadius = ({ apex, tipX }: ToeSetting): Mm => (tipX - apex.point[0]) / (1 - sin(apex.angle));

/**
 * Radius of the toe arc by its rule.
 * @throws Infeasible when a wanted toe spring or toe-off angle is out of reach
 */
function toeRadius(order: ToeOrder, setting: ToeSetting): Mm {
  const { pivot: [xA, h], tipX } = setting;
  switch (order.rule) {
    case 'pivot-to-toe': return Math.hypot(tipX - xA, h);
    case 'pivot-height': return h;
    case 'given': return order.radius!;
    case 'for-toe-off': return radiusForToeOff(order.toeOff!, setting);
    case 'for-toe-spring': return radiusForToeSpring(order.toeSpring!, order.endAngle, setting);
  }
}

function radiusForToeOff(wanted: Rad, { apex, tipX }: ToeSetting): Mm {
  if (!(wanted > apex.angle)) {
    throw new Infeasible('TOE_OFF_OUT_OF_REACH',
      `a toe-off angle of ${inDegrees(wanted).toFixed(1)}° is already passed at the apex (${inDegrees(apex.angle).toFixed(1)}°)`, ['toe.toeOff', 'apexX']);
  }
  return (tipX - apex.point[0]) / (sin(wanted) - sin(apex.angle));
}

/** A circle tangent to the mid arc at the apex and through the wanted tip; with an end angle, arc then straight. */
function radiusForToeSpring(wanted: Mm, endAngle: Rad | undefined, setting: ToeSetting): Mm {
  const { apex, tipX } = setting, run = tipX - apex.point[0], rise = wanted - apex.point[1];
  const least = run * tan(apex.angle), sine = sin(apex.angle), cosine = cos(apex.angle);
  const most = shortestToeRadius(setting) * cosine;
  const refuse = (): never => {
    throw new Infeasible('TOE_SPRING_OUT_OF_REACH',
      `a toe spring of ${wanted.toFixed(1)} mm cannot be reached: from this apex the tip can rise between ${(apex.point[1] + least).toFixed(1)} and ${(apex.point[1] + (endAngle === undefined ? most : run * tan(endAngle))).toFixed(1)} mm`,
      ['toe.toeSpring', 'apexX', 'toe.endAngle']);
  };
  if (!(rise > least)) return refuse();
  const plain = (rise * rise + run * run) / (2 * (rise * cosine - run * sine));
  const reachesTip = rise <= most && plain * cosine >= rise;
  if (endAngle === undefined) return reachesTip ? plain : refuse();
  const turnAtTip = reachesTip ? asin((run + plain * sine) / plain) : Math.PI / 2;
  if (turnAtTip <= endAngle) return plain;
  const slope = tan(endAngle);
  const radius = (rise - run * slope) / (cosine - cos(endAngle) - (sin(endAngle) - sine) * slope);
  return radius > 0 ? radius : refuse();
}

/**
 * Toe arc: tangent to the front half of the mid arc at the apex, centre on that normal, optionally ended at an end
 * angle and run on straight. An end angle steeper than the arc reaches at the tip does nothing.
 * @throws Infeasible when the end angle is passed at the apex, or the arc is too short to reach the tip
 */
export function toePieces(order: ToeOrder, setting: ToeSetting): GroundPiece[] {
  const { apex, tipX } = setting, { endAngle } = order;
  if (endAngle !== undefined && !(endAngle > apex.angle)) {
    throw new Infeasible('END_ANGLE_TOO_SMALL',
      `an end angle of ${inDegrees(endAngle).toFixed(1)}° is already passed at the apex (${inDegrees(apex.angle).toFixed(1)}°)`, ['toe.endAngle', 'apexX']);
  }
  const radius = toeRadius(order, setting);
  if (!(radius <= FLATTEST)) {
    throw new Infeasible(order.rule === 'for-toe-off' ? 'TOE_OFF_OUT_OF_REACH' : 'TOE_SPRING_OUT_OF_REACH',
      `the toe would hardly turn at all: its arc would need a radius of more than ${FLATTEST} mm`, ['toe.toeOff', 'toe.toeSpring', 'toe.radius', 'apexX']);
  }
  const centre: Point = [apex.point[0] - radius * sin(apex.angle), apex.point[1] + radius * cos(apex.angle)];
  const sine = (tipX - centre[0]) / radius, atTip = sine < 1 ? asin(sine) : Math.PI / 2;
  const ends = endAngle !== undefined && endAngle <= atTip + SAME_ANGLE;
  if (!ends && !(sine < 1)) {
    throw new Infeasible('TOE_ARC_TOO_SHORT',
      `a toe arc of radius ${radius.toFixed(1)} mm stands upright before the tip; from this apex it must be more than ${shortestToeRadius(setting).toFixed(1)} mm`,
      order.rule === 'given' ? ['toe.radius', 'apexX', 'toe.endAngle'] : ['apexX', 'toe.endAngle']);
  }
  const arc: RollArc = { kind: 'arc', name: 'toe arc', centre, radius, from: apex.angle, to: ends ? endAngle : atTip };
  return ends ? [arc, runOnAhead(arc)] : [arc];
}

/** Angles nearer than this are one: an arc that ends right at the tip is ended there at every build. */
const SAME_ANGLE: Rad = 1e-9;

function runOnAhead(arc: RollArc): GroundPiece {
  const [x, z] = pointAt(arc, arc.to);
  return { kind: 'straight', name: 'beyond the end angle', from: [x, z], to: [x + RUN_ON * cos(arc.to), z + RUN_ON * sin(arc.to)] };
}

/** The whole ground face for one build. Tangent at every joint by construction. */
export function groundFace(heel: readonly GroundPiece[], mid: MidArcs, apex: Apex, toe: readonly GroundPiece[]): GroundFace {
  const flat: GroundPiece[] = mid.frontX > mid.rearX
    ? [{ kind: 'straight', name: 'standing flat', from: [mid.rearX, 0], to: [mid.frontX, 0] }] : [];
  const front: RollArc = { kind: 'arc', name: 'mid arc, front', centre: [mid.frontX, mid.radius], radius: mid.radius, from: 0, to: apex.angle };
  return { pieces: [...heel, ...flat, front, ...toe] };
}
