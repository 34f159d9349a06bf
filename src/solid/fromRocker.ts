import type { Mm } from '../geometry/units.ts';
import { lately } from '../geometry/lately.ts';
import { rollX } from '../profile/rollLine.ts';
import { solveRocker, type Rocker, type RockerCase } from '../profile/rocker.ts';
import type { SoleShape } from './soleShape.ts';
import { bodiesOf, type Bodies } from './solids.ts';

/** A solved rocker as a sole whose walls close. */
export interface SolvedSole { readonly given: RockerCase; readonly rocker: Rocker; readonly shape: SoleShape; readonly bodies: Bodies }

/** How high the middle of the seat stands above the ground. */
export const seatOf = ({ shape: { last, upper, build } }: Pick<SolvedSole, 'shape'>): Mm => upper(last.seatLength / 2, 0) + build;

/** @throws Infeasible when there is no such rocker, or its walls would meet above the ground */
export const soleFrom: (given: RockerCase) => SolvedSole = lately(4, solveSole);

function solveSole(given: RockerCase): SolvedSole {
  const rocker = solveRocker(given), shape = shapeOf(rocker, given);
  return { given, rocker, shape, bodies: bodiesOf(shape) };
}

/** The sole over a rocker as exact faces; whether its walls close is not looked at yet. */
export function shapeOf(rocker: Rocker, { last, order }: RockerCase): SoleShape {
  const { upper, build, face, line, feather, edge } = rocker;
  return {
    last, upper, build, face, line, feather, edge, taper: order.taper, stiffener: order.stiffener,
    outsole: order.outsole.thickness, stations: [rollX(line, rocker.thinnest.at)],
  };
}
