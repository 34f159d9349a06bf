import type { Fitting, SheetMatch, ShoeFitting } from './fitting/fitting.ts';
import { SIDES, type Side } from './fitting/words.ts';
import type { Mm } from './geometry/units.ts';
import { lastFrom } from './last/fromFitting.ts';
import { isRockerFitting, rockerCase, type RockerFitting } from './profile/fromFitting.ts';
import type { Remedy, Trouble } from './profile/infeasible.ts';
import { tryMaking, type Making } from './profile/remedy.ts';
import type { RockerCase } from './profile/rocker.ts';
import { seatOf, soleFrom, type SolvedSole } from './solid/fromRocker.ts';
import { solidsOf, type Bodies, type Solids } from './solid/solids.ts';
import { raiseFor, type FootHeights } from './pair/level.ts';
import { raiseUnder } from './pair/raise.ts';
import type { MatchShoe, Pair, RockerShoe, Shoe } from './pair/shoe.ts';
import { findingsOf } from './checks/findings.ts';
import { inTurn } from './stiffener/inTurn.ts';
import { countedLast, keepPack, packFor, type Pack } from './stiffener/pack.ts';
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
  const waits = pace === 'quick', laid = layingFor(fitting, waits);
  const asked = ordered.filter(isRockerFitting).map((shoe): Asked => ({ shoe, given: rockerCase(shoe) }));
  const alone = solveAll(waits ? asked.map((one) => asLast(one, fitting)) : asked, laid);
  const together = alone.troubles.length ? alone : solveAll(levelled(fitting, alone.solved), laid);
  if (together.troubles.length) return { ok: false, troubles: together.troubles };
  const fineness = (bodies: Bodies): Solids => solidsOf(bodies, fitting.making.chordGap);
  const rockers = together.solved.map((solved) => rockerShoe(solved, fineness));
  const shoes = ordered.map((shoe): Shoe => rockers.find(({ side }) => side === shoe.side) ?? matchShoe(fitting, shoe as MatchFitting, rockers[0]!, fineness));
  const pair: Pair = { fitting: withPacks(fitting, rockers.map((shoe) => shoe.fitting)), shoes }, besides = waits ? [] : find(pair);
  return { ok: true, design: { ...pair, findings: findingsOf(pair, pace, besides), besides: besides.map(({ code }) => code), mouldFaults: mouldFaults(pair) } };
}

/** A fitting as whoever works on from it alone is to take it: with the packs that its stiffeners ask for counted; itself where none does or there is no shape. */
export function packsCounted(fitting: Fitting): Fitting {
  const wished = SIDES.flatMap((side) => fitting.shoes[side] ?? []).filter(isRockerFitting).filter(({ order }) => order.pack);
  return wished.length === 0 ? fitting : withPacks(fitting, solveAll(wished.map((shoe) => ({ shoe, given: rockerCase(shoe) })), layingFor(fitting, false)).solved.map(({ shoe }) => shoe));
}

/** A sole that is solved already is kept. */
interface Asked { readonly shoe: RockerFitting; readonly given: RockerCase; readonly sole?: SolvedSole }
interface Solved extends Asked { readonly sole: SolvedSole }

type Lay = (solved: Solved) => Trial;
type Trial = Making<SolvedSole> & { readonly shoe: RockerFitting; readonly given: RockerCase };

function solveAll(asked: readonly Asked[], lay: Lay): { readonly solved: readonly Solved[]; readonly troubles: readonly ShapeTrouble[] } {
  const trials = asked.map((one): Trial => {
    const trial = one.sole ? { ok: true, made: one.sole } as const : tryMaking(one.given, soleFrom);
    return trial.ok ? lay({ ...one, sole: trial.made }) : { ...one, ...trial };
  });
  return {
    solved: trials.flatMap((trial) => trial.ok ? [{ shoe: trial.shoe, given: trial.given, sole: trial.made }] : []),
    troubles: trials.flatMap((trial) => trial.ok ? []
      : [{ side: trial.shoe.side, trouble: trial.trouble.trouble, text: trial.trouble.message, given: trial.given, remedies: [...trial.remedies] }]),
  };
}

/** Each rocker over the pack it asks for, worked out in turn. */
function layingFor(fitting: Fitting, waits: boolean): Lay {
  return (first) => {
    const laid = inTurn<Solved, Pack, Trial>(first, {
      packOn: (solved) => packFor(unmeshed(solved), fitting, waits ? 'waits' : 'seeks'), isCounted, isAlike, stifferOf: (one, other) => (other.assessed.bench.bend < one.assessed.bench.bend ? other : one),
      over: (solved, pack) => {
        const asked = counting(solved, pack), trial = tryMaking(asked.given, soleFrom);
        return trial.ok ? { ok: true, shoe: { ...asked, sole: trial.made } } : { ok: false, trouble: { ...asked, ...trial } };
      },
    });
    if (!laid.ok) return laid.trouble;
    const { shoe: solved, kept } = laid;
    if (kept) keepPack(unmeshed(solved), kept);
    return { ok: true, shoe: solved.shoe, given: solved.given, made: solved.sole };
  };
}

/** Nearer than this two packs are as thick: what is counted is what was found. */
const SAME_THICKNESS: Mm = 1e-6;
const isCounted = ({ given: { order } }: Solved, { thickness, grams }: Pack): boolean => Math.abs(order.stiffener - thickness) < SAME_THICKNESS && order.packGrams === grams.pack;
const isAlike = (one: Pack, other: Pack): boolean => Math.abs(one.thickness - other.thickness) < SAME_THICKNESS && one.plies === other.plies && one.grams.pack === other.grams.pack;

/** Over the pack that was found last for the same wishes: most likely it stays, and the shoe need not be solved twice. */
function asLast(one: Asked, { wearer }: Fitting): Asked {
  const last = countedLast(one.shoe, wearer);
  return last ? counting(one, last) : one;
}

/** A shoe that counts a pack in its stack and its weight, on its sheet as well: whatever is worked out anew from that takes it as it is. */
function counting({ shoe, given }: Asked, { thickness, grams }: Pick<Pack, 'thickness' | 'grams'>): Pick<Asked, 'shoe' | 'given'> {
  const counted = { stiffener: thickness, packGrams: grams.pack };
  return { shoe: { ...shoe, order: { ...shoe.order, ...counted } }, given: { ...given, order: { ...given.order, ...counted } } };
}

/** The fitting with the thickness of each pack where a usual one stood in for it. */
function withPacks(fitting: Fitting, shoes: readonly ShoeFitting[]): Fitting {
  const laid = shoes.filter(({ order }) => order.kind === 'rocker' && order.packGrams !== undefined);
  return laid.length === 0 ? fitting : { ...fitting, shoes: { ...fitting.shoes, ...Object.fromEntries(laid.map((shoe) => [shoe.side, shoe])) } };
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

const rockerShoe = (solved: Solved, fineness: Fineness): RockerShoe => ({ ...unmeshed(solved), solids: fineness(solved.sole.bodies) });

const unmeshed = ({ shoe, given, sole }: Solved): Omit<RockerShoe, 'solids'> => ({
  kind: 'rocker', side: shoe.side, fitting: shoe, last: given.last, stands: standing(sole),
  order: given.order, rocker: sole.rocker, shape: sole.shape, bodies: sole.bodies,
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
