import { inDegrees } from '../geometry/units.ts';
import { angleAt, pieceNamed } from '../profile/groundFace.ts';
import type { MatchShoe, SoleParts } from '../pair/shoe.ts';
import { plain, type Plain } from './figure.ts';
import { foamFigure, outsoleFigure, thicknessPair, weightFigures } from './soleFigures.ts';
import { stationAt } from './stations.ts';

type Figures = readonly Plain[];

/** Every figure of a match, in the order a maker reads them; those of the raise only where there is one to make. */
export function matchFigures(shoe: MatchShoe): Figures {
  const { last, raise, stands, made } = shoe, centre = last.seatLength / 2;
  const always = [
    plain('raiseSeat', 'Raise at the centre of the seat', raise.seat, 'mm', centre),
    plain('raiseBall', 'Raise at the ball', raise.ball, 'mm', last.tread),
    plain('standsSeat', 'Foot stands at the seat', stands.seat, 'mm', centre),
    plain('standsBall', 'Foot stands at the ball', stands.ball, 'mm', last.tread),
  ];
  return made ? [...always, ...raiseFigures(shoe, made)] : always;
}

function raiseFigures(shoe: MatchShoe, made: SoleParts): Figures {
  const { last } = shoe, { shape } = made, centre = last.seatLength / 2;
  const seat = stationAt(shape, centre), toeArc = pieceNamed(shape.face, 'toe arc');
  return [
    plain('seatHeight', 'Seat height: floor to the face the raise is glued to, centre of the seat', seat.upper, 'mm', centre),
    plain('heelHeightBack', 'Heel height at the back edge: floor to the face the raise is glued to', stationAt(shape, 0).upper, 'mm', 0),
    plain('seatThickness', 'Thickness under the centre of the seat', seat.thickness, 'mm', centre),
    plain('ballHeight', 'Ball height: floor to the face the raise is glued to, at the tread', stationAt(shape, last.tread).upper, 'mm', last.tread),
    plain('toeSpringOfShoe', 'Toe spring of the shoe: ground face above the ground, under the tip of the last', stationAt(shape, last.length).ground, 'mm', last.length),
    ...(toeArc?.kind === 'arc' ? [plain('radiusToe', 'Radius of the toe arc', toeArc.radius, 'mm')] : []),
    plain('tipSlope', 'Slope of the ground face at the tip', inDegrees(angleAt(shape.face, last.length)), 'deg', last.length),
    ...thicknessPair(shape, 'Back', 'back edge', 0), ...thicknessPair(shape, 'SeatEnd', 'seat end', last.seatLength),
    ...thicknessPair(shape, 'Tread', 'tread', last.tread), ...thicknessPair(shape, 'Tip', 'tip', last.length),
    foamFigure(made), ...weightFigures(shoe, made), outsoleFigure(made),
  ];
}
