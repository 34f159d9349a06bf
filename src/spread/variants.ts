import { ballRules, lastRules } from '../fitting/lastRules.ts';
import { isRockerFitting, rockerCase, type RockerFitting } from '../profile/fromFitting.ts';
import { Infeasible } from '../profile/infeasible.ts';
import { nearbySolver } from '../profile/nearby.ts';
import type { RockerCase } from '../profile/rocker.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { shoeOff, type Off } from './shoeOff.ts';
import { faceUnderLast, resultsOf, standsOf, WATCHED, type Variant, type Walker } from './watched.ts';

/** All numbers followed of a variant: what is watched, where the foot stands, the ground face under the last. */
export type Numbers = readonly number[];
/** What they are numbers of: the results that are watched, the seat and the ball the foot stands on, the ground face. */
export type Kind = 'watched' | 'stands' | 'face';
const STANDS_AT = WATCHED.length, FACE_AT = STANDS_AT + 2;
/** Where each kind begins and ends. */
const SPANS: Readonly<Record<Kind, readonly [from: number, to: number]>> = { watched: [0, STANDS_AT], stands: [STANDS_AT, FACE_AT], face: [FACE_AT, Infinity] };
export const ofKind = (kind: Kind, numbers: Numbers): Numbers => numbers.slice(...SPANS[kind]);

/** The numbers of a shoe had its measures been read that far off; none where they leave no shape. */
export type Vary = (off: Off) => Numbers | undefined;

/**
 * Solves a shoe anew for measures that are off. Where the other shoe asked for height, it asks for the same.
 * That its walls close is not tried: that is for the shoe that is made.
 */
export function variantsOf(shoe: RockerShoe): Vary {
  const { rocker, order } = shoe, solve = nearbySolver(rocker.build), walker: Walker = { pivot: rocker.stance.pivot, strike: order.strike };
  return (off) => {
    const given = caseOff(shoe, off), solved = given && unlessInsideOut(() => solve(given));
    return solved && !(solved instanceof Infeasible) ? numbersOf({ given, rocker: solved }, walker) : undefined;
  };
}

/** Measures off by tens of millimetres may turn an arc inside out, which geometry refuses as out of range: that is no shape. */
function unlessInsideOut<T>(solve: () => T): T | undefined {
  try { return solve(); }
  catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function caseOff({ fitting, order: { seatAtLeast } }: RockerShoe, off: Off): RockerCase | undefined {
  const shoe = shoeOff(fitting, off);
  if (!isRockerFitting(shoe) || !makesSense(shoe)) return undefined;
  const given = rockerCase(shoe);
  return seatAtLeast?.by === 'other shoe' ? { ...given, order: { ...given.order, seatAtLeast } } : given;
}

/** Measures off by much may tell of no foot or last at all. Under a turned crest the outline counts, and must not fold. */
function makesSense({ foot, last, order }: RockerFitting): boolean {
  const { seatLength, tread, length } = last, { stance } = foot, leg = foot.hipHeight.value - foot.pivotHeight.value;
  if (!(seatLength.value > 0 && seatLength.value < tread.value && tread.value < length.value)) return false;
  if (!(leg > (stance.kind === 'free' ? Math.abs(stance.hipAhead.value) : 0)) || (stance.kind === 'locked' && !Number.isFinite(stance.ankleAngle.value))) return false;
  if (order.crestAngle === Math.PI / 2 || last.heights) return true;
  let folds = false;
  const complain = (): void => { folds = true; };
  lastRules(last, [], 'mm', complain);
  ballRules(last, { inner: [], outer: [], behind: last.heelBack.value }, 'mm', complain);
  return !folds;
}

const numbersOf = (variant: Variant, walker: Walker): Numbers => [...resultsOf(variant, walker), ...standsOf(variant), ...faceUnderLast(variant)];
