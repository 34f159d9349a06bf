import { inDegrees } from '../geometry/units.ts';
import { atan2 } from '../geometry/trig.ts';
import { pointAt } from '../profile/groundFace.ts';
import { axisX, rollX } from '../profile/rollLine.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { tipOf } from '../last/outline.ts';
import { packFor } from '../stiffener/pack.ts';
import { packFigures } from './packFigures.ts';
import { plain, type Plain } from './figure.ts';
import { halfBaseOf } from './halfBase.ts';
import { rollFigures } from './rollFigures.ts';
import { standFigures } from './standFigures.ts';
import { foamFigure, outsoleFigure, thicknessPair, weightFigures } from './soleFigures.ts';
import { stationAt } from './stations.ts';

type Figures = readonly Plain[];

/** Every figure of a rocker, in the order a maker reads them. */
export const rockerFigures = (shoe: RockerShoe, fitting: Fitting): Figures => [
  ...heights(shoe), ...standing(shoe), ...arcs(shoe), ...rollFigures(shoe), ...standFigures(shoe, fitting.wearer.mass?.value), ...thicknesses(shoe),
  foamFigure(shoe), ...stability(shoe), ...packFigures(packFor(shoe, fitting)), ...weightFigures(shoe, shoe), outsoleFigure(shoe),
];

function heights({ last, rocker, shape, stands }: RockerShoe): Figures {
  const { governs, thinnest } = rocker, centre = last.seatLength / 2;
  const seat = stationAt(shape, centre), ball = stationAt(shape, last.tread), back = stationAt(shape, 0), tip = stationAt(shape, last.length);
  return [
    plain('seatHeight', 'Seat height: floor to the face the sole is glued to, centre of the seat', seat.upper, 'mm', centre),
    plain('heelHeightBack', 'Heel height at the back edge: floor to the face the sole is glued to', back.upper, 'mm', 0),
    plain('seatThickness', 'Thickness under the centre of the seat', seat.thickness, 'mm', centre),
    plain('ballHeight', 'Ball height: floor to the face the sole is glued to, at the tread', ball.upper, 'mm', last.tread),
    plain('standsSeat', 'Foot stands at the seat, insole counted', stands.seat, 'mm', centre),
    plain('standsBall', 'Foot stands at the ball, insole counted', stands.ball, 'mm', last.tread),
    plain('pitchOfSole', 'Pitch of the sole: seat above tread', seat.upper - ball.upper, 'mm'),
    plain('pitchOfLast', 'Pitch of the last', last.pitch, 'mm'),
    plain('toeSpringOfShoe', 'Toe spring of the shoe: ground face above the ground, under the tip of the last', tip.ground, 'mm', last.length),
    plain('toeSpringOfLast', 'Toe spring of the last', shape.upper(last.length, 0), 'mm', last.length),
    plain('heelRise', 'Rise of the ground face at the back edge of the heel', back.ground, 'mm', 0),
    plain('build', 'Build: tread plane above the ground', rocker.build, 'mm'),
    typeof governs === 'string'
      ? plain('governs', `What sets the height: ${governs === 'order' ? 'the seat height asked for' : 'the height of the other shoe'}`, seat.upper, 'mm', centre)
      : plain('governs', `What sets the height: thickness at the ${governs.zone}`, governs.thickness, 'mm', governs.at[0]),
    plain('thinnest', `Thickness where it is nearest to its least (${thinnest.zone}, least ${thinnest.minimum.toFixed(1)} mm)`, thinnest.thickness, 'mm', thinnest.at[0]),
  ];
}

function standing({ rocker: { stance, pivot, hip, mid, line } }: RockerShoe): Figures {
  return [
    plain('tilt', 'Tilt of the foot in the shoe, nose down', inDegrees(stance.tilt), 'deg'),
    plain('lean', 'Lean of the leg, forward', inDegrees(stance.lean), 'deg'),
    plain('pivotX', 'Ankle pivot from the heel', stance.pivot[0], 'mm', stance.pivot[0]),
    plain('pivotHeight', 'Ankle pivot above the ground', pivot[1], 'mm', stance.pivot[0]),
    plain('standingPoint', 'Standing point from the heel, right under the hip', stance.standing, 'mm', stance.standing),
    plain('standingAhead', 'Standing point ahead of the ankle pivot', stance.hipAhead, 'mm', stance.standing),
    plain('hipHeight', 'Hip joint above the ground', hip[1], 'mm', stance.standing),
    plain('standingFlat', 'Standing flat', mid.frontX - mid.rearX, 'mm', axisX(line, (mid.frontX + mid.rearX) / 2)),
  ];
}

function arcs({ last, order, shape, rocker: { heelArc, mid, toeArc, apex, tipAngle, line } }: RockerShoe): Figures {
  const joint = heelArc && axisX(line, pointAt(heelArc, heelArc.to)[0]);
  const heel = heelArc && joint !== undefined ? [
    plain('radiusHeel', 'Radius of the heel arc', heelArc.radius, 'mm'),
    plain('heelJointAngle', 'Roll angle where heel arc and mid arc join', inDegrees(heelArc.to), 'deg', joint),
    plain('heelJoint', 'Heel arc and mid arc join, from the heel on the long axis', joint, 'mm', joint),
  ] as const : [];
  const rise = stationAt(shape, last.length).ground - apex.point[1];
  return [
    ...heel,
    plain('radiusMid', 'Radius of the mid arc', mid.radius, 'mm'),
    plain('radiusToe', 'Radius of the toe arc', toeArc.radius, 'mm'),
    plain('apex', 'Apex from the heel: the toe arc begins', order.apexX, 'mm', order.apexX),
    plain('apexShare', 'Apex as a share of the last length, from the heel', (100 * order.apexX) / last.length, '%', order.apexX),
    plain('apexRollAngle', 'Roll angle at the apex', inDegrees(apex.angle), 'deg', order.apexX),
    plain('crestAngle', 'Crest: apex line against the long axis, 90° is square across', inDegrees(order.crestAngle), 'deg', order.apexX),
    plain('rockerAngle', 'Rocker angle: line from apex to tip against the ground', inDegrees(atan2(rise, rollX(line, tipOf(last)) - apex.point[0])), 'deg'),
    plain('tipSlope', 'Slope of the ground face at the tip', inDegrees(tipAngle), 'deg', last.length),
  ];
}

/** Where a maker puts the caliper. */
function thicknesses({ last, order, rocker: { stance }, shape }: RockerShoe): Figures {
  const places = [
    ['Back', 'back edge', 0], ['Pivot', 'ankle pivot', stance.pivot[0]], ['SeatEnd', 'seat end', last.seatLength],
    ['Apex', 'apex', order.apexX], ['Tread', 'tread', last.tread], ['Tip', 'tip', last.length],
  ] as const;
  return places.flatMap(([place, words, x]) => thicknessPair(shape, place, words, x));
}

function stability(shoe: RockerShoe): Figures {
  const halfBase = halfBaseOf(shoe), { rocker: { pivot } } = shoe;
  return [
    plain('halfBase', 'Half base width under the seat, the lesser side', halfBase, 'mm'),
    plain('sideTipping', 'Side tipping angle: half base width against ankle pivot height', inDegrees(atan2(halfBase, pivot[1])), 'deg'),
  ];
}
