import type { Mm } from '../geometry/units.ts';
import type { Shoe, SoleParts } from '../pair/shoe.ts';
import { lengthBetween } from '../profile/groundFace.ts';
import { foamLeft } from '../solid/foamLeft.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { plain, type Plain } from './figure.ts';
import { stationAt } from './stations.ts';
import { weightsOf } from './weights.ts';

/** Figures that a rocker and a raise have in common. */

type Place = 'Back' | 'Pivot' | 'SeatEnd' | 'Apex' | 'Tread' | 'Tip';

/** Thickness at a place both ways a maker may measure it. */
export function thicknessPair(shape: SoleShape, place: Place, words: string, x: Mm): readonly Plain[] {
  const { thickness, square } = stationAt(shape, x);
  return [
    plain(`thickness${place}`, `Thickness at the ${words}, vertical`, thickness, 'mm', x),
    plain(`square${place}`, `Thickness at the ${words}, square to the ground face`, square, 'mm', x),
  ];
}

export function foamFigure({ shape }: SoleParts): Plain {
  const { thickness, at } = foamLeft(shape);
  return plain('foamLeft', 'Foam left where it is thinnest', thickness, 'mm', at[0]);
}

export function weightFigures(shoe: Shoe, parts: SoleParts): readonly Plain[] {
  const { volume, weight } = weightsOf(shoe, parts), { upperWeight } = shoe.fitting;
  const stiffener = shoe.kind === 'match' ? [] : [
    plain('stiffenerVolume', 'Volume of the stiffener, out to the edge', volume.stiffener, 'cm³'),
    plain('stiffenerWeight', shoe.order.packGrams === undefined ? 'Weight of the stiffener, out to the edge' : 'Weight of the stiffener, plies and core', weight.stiffener, 'g'),
  ];
  return [
    plain('foamVolume', 'Volume of the foam', volume.foam, 'cm³'),
    plain('foamWeight', 'Weight of the foam', weight.foam, 'g'),
    plain('outsoleVolume', 'Volume of the outsole', volume.outsole, 'cm³'),
    plain('outsoleWeight', 'Weight of the outsole', weight.outsole, 'g'),
    ...stiffener,
    plain('soleVolume', 'Volume of the sole', volume.sole, 'cm³'),
    plain('soleWeight', 'Weight of the sole', weight.sole, 'g'),
    ...(upperWeight === undefined ? [] : [plain('shoeWeight', 'Weight of the whole shoe', weight.sole + upperWeight, 'g')]),
  ];
}

export const outsoleFigure = ({ shape: { face }, bodies: { whole: { rim } } }: SoleParts): Plain =>
  plain('outsoleLength', 'Outsole unrolled, along the ground face', lengthBetween(face, rim.start, rim.end), 'mm');
