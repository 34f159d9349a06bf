import type { Fitting, SheetMatch, ShoeFitting } from './fitting/fitting.ts';
import { SIDES, type Side } from './fitting/words.ts';
import type { Mm } from './geometry/units.ts';
import { lastFrom } from './last/fromFitting.ts';
import { isRockerFitting, rockerCase, type RockerFitting } from './profile/fromFitting.ts';
import type { Remedy, Trouble } from './profile/infeasible.ts';
import { tryMaking } from './profile/remedy.ts';
import type { RockerCase } from './profile/rocker.ts';
import { seatOf, soleFrom, type SolvedSole } from './solid/fromRocker.ts';
import { solidsOf, type Bodies, type Solids } from './solid/solids.ts';
import { raiseFor, type FootHeights } from './pair/level.ts';
import { raiseUnder } from './pair/raise.ts';
import type { MatchShoe, Pair, RockerShoe, Shoe } from './pair/shoe.ts';
import { findingsOf } from './checks/findings.ts';
import type { Finding } from './checks/finding.ts';
import type { Pace } from './checks/seen.ts';
import type { Design } from './checks/design.ts';
import { mouldFaults } from './making/mouldFaults.ts';

/** Why the measures and the order of one shoe leave no shape, with values that were put in and work. */
export interface ShapeTrouble { readonly side: Side; readonly trouble: Trouble; readonly text: string; readonly given: RockerCase; readonly remedies: readonly Remedy[] }

export type { Design };
export { rockerCase, type RockerFitting };

export type Designing = { readonly ok: true; readonly design: Design } | { readonly ok: false; readonly troubles: readonly ShapeTrouble[] };

/** Looks for what stands in the way of the things that are made besides the soles. */
export type FindBesides = (pair: Pair) => Finding[];

/**
 * The story on one page: each rocker is solved, the pair is brought level, the soles become solids, and all is checked.
 * Pure: the same fitting gives the same design.
 * @param find looks for what stands in the way of the things that are made besides the soles; handed in, for it is large and
 *   the page loads it only where such things are ordered
 * @param pace quick while a hand drags: the findings come without the advice that must be put in and solved first, and
 *   without those of what is made besides, which takes longer than the shoes themselves
 */
export function designWith(find: FindBesides, fitting: Fitting, pace?: Pace): Designing {
  const ordered = SIDES.flatMap((side) => fitting.shoes[side] ?? []);
  const alone = solveAll(ordered.filter(isRockerFitting).map((shoe) => ({ shoe, given: rockerCase(shoe) })));
  const together = alone.troubles.length ? alone : solveAll(levelled(fitting, alone.solved));
  if (together.troubles.length) return { ok: false, troubles: together.troubles };
  const fineness = (bodies: Bodies): Solids => solidsOf(bodies, fitting.making.chordGap);
  const rockers = together.solved.map((solved) => rockerShoe(solved, fineness));
  const shoes = ordered.map((shoe): Shoe => rockers.find(({ side }) => side === shoe.side) ?? matchShoe(fitting, shoe as MatchFitting, rockers[0]!, fineness));
  const pair: Pair = { fitting, shoes }, besides = pace === 'quick' ? [] : find(pair);
  return { ok: true, design: { ...pair, findings: findingsOf(pair, pace, besides), besides: besides.map(({ code }) => code), mouldFaults: mouldFaults(pair) } };
}

/** A sole that is solved already is kept. */
interface Asked { readonly shoe: RockerFitting; readonly given: RockerCase; readonly sole?: SolvedSole }
interface Solved extends Asked { readonly sole: SolvedSole }

function solveAll(asked: readonly Asked[]): { readonly solved: readonly Solved[]; readonly troubles: readonly ShapeTrouble[] } {
  const trials = asked.map((one) => ({ ...one, trial: one.sole ? { ok: true, made: one.sole } as const : tryMaking(one.given, soleFrom) }));
  return {
    solved: trials.flatMap(({ shoe, given, trial }) => trial.ok ? [{ shoe, given, sole: trial.made }] : []),
    troubles: trials.flatMap(({ shoe, given, trial }) => trial.ok ? []
      : [{ side: shoe.side, trouble: trial.trouble.trouble, text: trial.trouble.message, given, remedies: [...trial.remedies] }]),
  };
}

/** Less than this nobody can cut or measure, and each shoe keeps what sets its own height. */
const LEAST_LEVELLED: Mm = 0.05;

/** Of two rockers the lower one is built up until the seats stand level, leg difference counted. */
function levelled(fitting: Fitting, solved: readonly Solved[]): readonly Asked[] {
  const [one, other] = solved;
  if (!one || !other) return solved;
  return [[one, other], [other, one]].map(([own, opposite]): Asked => {
    const { seat } = raiseFor(own!.shoe.side, standing(own!.sole), standing(opposite!.sole), fitting.wearer.legDifference);
    const { shoe, given, sole } = own!, height = seatOf(sole) + seat;
    return seat > LEAST_LEVELLED ? { shoe, given: { ...given, order: { ...given.order, seatAtLeast: { height, by: 'other shoe' } } } } : own!;
  });
}

/** Where the foot stands: on the insole, over the middle of the seat and over the tread. */
function standing(sole: SolvedSole): FootHeights {
  const { last, upper, build } = sole.shape;
  return { seat: seatOf(sole) + last.insole, ball: upper(last.tread, 0) + build + last.insole };
}

type Fineness = (bodies: Bodies) => Solids;

const rockerShoe = ({ shoe, given, sole }: Solved, fineness: Fineness): RockerShoe => ({
  kind: 'rocker', side: shoe.side, fitting: shoe, last: given.last, stands: standing(sole),
  order: given.order, rocker: sole.rocker, shape: sole.shape, bodies: sole.bodies, solids: fineness(sole.bodies),
});

type MatchFitting = ShoeFitting & { readonly order: SheetMatch };

function matchShoe(fitting: Fitting, shoe: MatchFitting, rocker: RockerShoe, fineness: Fineness): MatchShoe {
  const { side, order } = shoe, last = lastFrom(shoe.last);
  const now: FootHeights = { seat: order.seatHeightNow.value, ball: order.ballHeightNow.value };
  const raise = raiseFor(side, now, rocker.stands, fitting.wearer.legDifference);
  const common = { kind: 'match', side, fitting: shoe, last, order, raise, otherSeat: seatOf(rocker) } as const;
  const raising = raiseUnder(last, order, raise);
  if (raising.kind !== 'made') return { ...common, stands: now, made: undefined, trouble: raising.kind === 'refused' ? raising.trouble : undefined };
  const { made } = raising, stands = { seat: now.seat + raise.seat, ball: now.ball + raise.ball };
  return { ...common, stands, made: { ...made, solids: fineness(made.bodies) }, trouble: undefined };
}
