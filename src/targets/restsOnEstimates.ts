import { estimatesIn, type FigureKey } from '../checks/restsOn.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { orInfeasible, Infeasible } from '../profile/infeasible.ts';
import type { RockerFitting } from '../profile/fromFitting.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { seatOf, soleFrom } from '../solid/fromRocker.ts';
import { solidsOf } from '../solid/solids.ts';
import type { LookedAt } from './outcome.ts';

/** The figure of a shoe that each thing looked at is. */
const FIGURE: Readonly<Record<Exclude<LookedAt, 'seatDifference'>, FigureKey>> = {
  seatHeight: 'seatHeight', ballHeight: 'ballHeight', ballThickness: 'thicknessTread', tip: 'thicknessTip', toeSpring: 'toeSpringOfShoe', weight: 'soleWeight',
  strike: 'strikeReached', toeOff: 'toeOff', dropStrike: 'hipDropStrike', dropToeOff: 'hipDropToeOff', flat: 'standingFlat', lean: 'lean',
};

/** What of a shoe rests on a measure that was not taken: it is marked wherever it is told. Coarse solids do, for no number is read off them. */
export function estimatedOf(fitting: Fitting, shoe: RockerFitting, given: RockerCase): readonly LookedAt[] {
  const sole = orInfeasible(() => soleFrom(given));
  if (sole instanceof Infeasible) return [];
  const { rocker, shape, bodies } = sole, { last, order } = given;
  const stands = { seat: seatOf(sole) + last.insole, ball: shape.upper(last.tread, 0) + shape.build + last.insole };
  const isEstimated = estimatesIn({ kind: 'rocker', side: shoe.side, fitting: shoe, last, stands, order, rocker, shape, bodies, solids: solidsOf(bodies, COARSE) }, fitting);
  const own = (Object.keys(FIGURE) as (keyof typeof FIGURE)[]).filter((name) => isEstimated(FIGURE[name]));
  return isEstimated('standsSeat') ? [...own, 'seatDifference'] : own;
}
const COARSE = 3;
