import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { lengthBetween } from '../profile/groundFace.ts';
import { axisX } from '../profile/rollLine.ts';
import { carriedBy } from '../roll/carried.ts';
import { heightExtreme, leverExtreme } from '../roll/extremes.ts';
import { STEP_TURNS } from '../roll/gait.ts';
import { midTurns, turningOf, type Turns } from '../roll/midArc.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { ORDINARY, ordinaryBody } from '../roll/ordinary.ts';
import { anglesCovered, placedAt, type RollBody } from '../roll/rollBody.ts';
import { rollOverCircle } from '../roll/rollOver.ts';
import { plain, type Plain } from './figure.ts';

/** Published values shown beside a figure; they are no targets. */
const ROLL_PUBLISHED = 'least energy at about 0.29 in one experiment, Adamczyk and Kuo 2013';
const RADIUS_PUBLISHED = 'people walking roll like a wheel of about 0.3, Adamczyk, Collins and Kuo 2006';
const CIRCLE_PUBLISHED = 'people with free ankles about 0.3, Adamczyk, Collins and Kuo 2006; children about 0.17 of stature, Hansen and Meier 2010';

/** How a rocker rolls, in the order a maker reads it. */
export function rollFigures(shoe: RockerShoe): readonly Plain[] {
  const body = rollBodyOf(shoe);
  return [...reach(shoe, body), ...length(shoe, body), ...rollHeights(shoe, body)];
}

const taken = (figure: Plain, roll: Rad): Plain => ({ ...figure, rolled: inDegrees(roll) });

/** Which angles it covers, and which arcs they come from. */
function reach(shoe: RockerShoe, body: RollBody): readonly Plain[] {
  const { order, rocker: { line }, bodies: { whole: { rim } } } = shoe, { from, to } = anglesCovered(body), { heel, mid, toe } = turningOf(body, midTurns(shoe, body));
  return [
    plain('strikeAsked', 'Strike angle asked for', inDegrees(order.strike), 'deg'),
    plain('strikeReached', 'Strike angle reached at the back end of the ground line', inDegrees(-from), 'deg', axisX(line, rim.start)),
    plain('toeOff', 'Toe-off angle reached at the front end of the ground line', inDegrees(to), 'deg', axisX(line, rim.end)),
    plain('totalTurning', `Total turning, strike to toe-off (a step with a fixed ankle takes ${inDegrees(STEP_TURNS.least)} to ${inDegrees(STEP_TURNS.most)}° until the other foot lands)`, inDegrees(to - from), 'deg'),
    plain('turnHeel', 'Turning on the heel arc', inDegrees(heel), 'deg'),
    plain('turnMid', 'Turning on the mid arc', inDegrees(mid), 'deg'),
    plain('turnToe', 'Turning on the toe arc', inDegrees(toe), 'deg'),
  ];
}

function length({ fitting, shape: { face }, bodies: { whole: { rim } }, rocker: { mid, strikePoint } }: RockerShoe, body: RollBody): readonly Plain[] {
  const rolled = lengthBetween(face, Math.max(strikePoint[0], rim.start), rim.end), leg = fitting.foot?.hipHeight.value ?? NaN, { radius } = rollOverCircle(body);
  return [
    plain('rollLength', 'Usable roll along the ground face, strike to toe-off', rolled, 'mm'),
    plain('rollShare', `Usable roll / leg length (${ROLL_PUBLISHED})`, rolled / leg, ''),
    plain('midRadiusShare', `Mid radius / leg length (${RADIUS_PUBLISHED})`, mid.radius / leg, ''),
    plain('rollOverRadius', 'Radius of the whole roll: the circle that fits the contact path best, strike until the other foot lands, leg held to the shoe', radius, 'mm'),
    plain('rollOverShare', `Radius of the whole roll / leg length (${CIRCLE_PUBLISHED})`, radius / leg, ''),
  ];
}

/** Roll angles at which heights are compared: those that an underside covers, and those of its mid arc. */
export interface RollTurns extends Turns { readonly mid: Turns }
export const turnsOf = (shoe: RockerShoe, body: RollBody): RollTurns => ({ ...anglesCovered(body), mid: midTurns(shoe, body) });

/**
 * What the arcs cannot keep level at once. The pivot keeps its height on the heel arc and rises over the mid arc; the
 * hip, with the leg held to the shoe, keeps its height on the mid arc and drops once the roll leaves it.
 * @param body what rolls: the planned arcs, or a solid made after them, then over the same angles
 */
export function rollHeights(shoe: RockerShoe, body: RollBody, { from, to, mid }: RollTurns = turnsOf(shoe, body)): readonly Plain[] {
  const carried = carriedBy(shoe), { pivot, hip, ball } = carried, { order: { strike }, bodies: { whole: { rim } } } = shoe;
  const pivotAt = (roll: Rad): Mm => placedAt(body, pivot, roll)[1], dropAt = (roll: Rad): Mm => hip[1] - placedAt(body, hip, roll)[1];
  const sinks = (on: RollBody): Mm => placedAt(on, pivot, -strike)[1] - heightExtreme(on, pivot, [-strike, 0], -1).value;
  const lever = leverExtreme(body, ball, [0, to], 1);
  return [
    taken(plain('pivotDrop', 'Ankle pivot drops from heel strike on', sinks(body), 'mm'), -strike),
    taken(plain('pivotDropOrdinary', `Ankle pivot drops from heel strike on in ${ORDINARY}`, sinks(ordinaryBody(carried, rim.start)), 'mm'), -strike),
    taken(plain('pivotRise', 'Ankle pivot rises while the shoe rolls over the mid arc, up to the apex', pivotAt(mid.to) - pivotAt(mid.from), 'mm'), mid.to),
    taken(plain('hipDropStrike', 'Hip drops from standing back to heel strike, leg held to the shoe', dropAt(from), 'mm'), from),
    taken(plain('hipDropToeOff', 'Hip drops from standing to toe-off, leg held to the shoe', dropAt(to), 'mm'), to),
    taken(plain('leverBall', 'Lever of the floor about the ball, at most: how far ahead of it the floor pushes', lever.value, 'mm'), lever.roll),
  ];
}
