import { FOAM_AT_BALL } from '../profile/thinnest.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import type { Mm } from '../geometry/units.ts';
import { partsOf, type MatchShoe, type RockerShoe, type Shoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { moreRoom } from './raiseRoom.ts';
import { mm, sentences } from './say.ts';
import { under, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';
import { stationAt } from './stations.ts';
import { caseOf } from './thickness.ts';

/** Foam between stiffener and outsole under the tread, upright. */
const ballFoam = (shape: SoleShape): Mm => stationAt(shape, shape.last.tread).foam;
const isEnough = ({ shape }: { readonly shape: SoleShape }): boolean => !under(ballFoam(shape), FOAM_AT_BALL);

/** The ball bears most: foam that is thin there packs down first. Where it is thinner than can be cut THIN_FOAM tells more. */
export function thinAtBall({ shoe, pace }: Seen): Finding[] {
  const shape = partsOf(shoe)?.shape;
  if (!shape || isEnough({ shape })) return [];
  const foam = ballFoam(shape);
  return [{
    code: 'BALL_FOAM', severity: 'note', side: shoe.side, measured: foam, limit: FOAM_AT_BALL, unit: 'mm', where: 'ball', at: shoe.last.tread,
    text: sentences(`${mm(foam)} of foam lie under the ball of the ${shoe.side} shoe; less than ${mm(FOAM_AT_BALL, 0)} packs down where the step bears most`, pace === 'careful' ? moreFor(shoe, FOAM_AT_BALL - foam) : ''), basis: PRACTICE,
  }];
}

const moreFor = (shoe: Shoe, missing: Mm): string => (shoe.kind === 'rocker' ? thickerTread(shoe, missing) : moreUnder(shoe, missing));

const moreUnder = (shoe: MatchShoe, missing: Mm): string => moreRoom(shoe, missing, isEnough);

/** Thickness is asked for in steps of this. */
const ASKED_STEP: Mm = 0.5;

/** The least thickness at the tread that leaves enough, put in and solved; what is asked for there holds ahead of it too. */
function thickerTread(shoe: RockerShoe, missing: Mm): string {
  const given = caseOf(shoe), { minima } = given.order, most = stationAt(shoe.shape, shoe.last.tread).thickness + missing;
  const leavesEnough = (tread: Mm): boolean => { const sole = orInfeasible(() => soleFrom({ ...given, order: { ...given.order, minima: { ...minima, tread } } })); return !(sole instanceof Infeasible) && isEnough(sole); };
  const first = Math.floor(minima.tread / ASKED_STEP) + 1, tries = Array.from({ length: Math.max(0, Math.ceil(most / ASKED_STEP) - first + 1) }, (_, i) => (first + i) * ASKED_STEP), tread = tries.find(leavesEnough);
  return tread === undefined ? '' : `${mm(tread)} asked for at the tread (order.minima.tread, now ${mm(minima.tread)}) leaves enough`;
}
