import { rangeOf } from '../fitting/ranges.ts';
import { degrees, inDegrees, type Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import { stepFigures, type OnCorner } from '../walk/figures.ts';
import type { WalkOn } from '../walk/frame.ts';
import { TIP_STEEPEST } from './rolling.ts';
import { deg, lower, mm, rounded } from './say.ts';
import { over } from './seen.ts';
import { caseOf } from './thickness.ts';

/** Something on the sheet that lets the sole carry more of stance: `count` steps of it, and what each is called. */
interface Lever { readonly path: string; readonly count: number; readonly put: (given: RockerCase, step: number) => RockerCase; readonly words: (given: RockerCase) => string }

/**
 * What makes a sole carry enough of a step that was seen: the least change of one thing, or of one at each end, each put in and
 * walked on. Where nothing does, that.
 * @param enough share of stance the sole itself is to carry, %
 */
export function carriesMore(shoe: RockerShoe, on: WalkOn, corners: readonly OnCorner[], enough: number): string {
  const given = caseOf(shoe), share = (changed: RockerCase): number => shareOn(changed, on);
  const rolledOver = (end: OnCorner['corner']): boolean => corners.some(({ corner }) => corner === end);
  const rear = rolledOver('rear corner') ? rearLevers(given) : [], front = rolledOver('front corner') ? frontLevers(given, shoe.rocker.toeArc.radius) : [], all = [...rear, ...front];
  const found = all.flatMap((lever) => {
    const changed = leastChange(given, lever, share, enough);
    return changed ? [`${lever.words(changed)} carries ${percent(share(changed))}`] : [];
  });
  if (found.length > 0) return found.slice(0, 2).map((one, i) => (i === 0 ? one : lower(one))).join('; ');
  return bothEnds(given, rear, front, share, enough) ?? `Nothing that was tried at one end or at both carries ${percent(enough)} (${all.map(({ path }) => path).join(', ')})`;
}

/** A share of stance that a rocker carries, %. */
type Share = (given: RockerCase) => number;

/** The least that one thing must be changed for enough; none where all of it does not do. */
function leastChange(given: RockerCase, lever: Lever, share: Share, enough: number): RockerCase | undefined {
  const step = leastStep(lever, (one) => share(lever.put(given, one)), enough);
  return step === undefined ? undefined : lever.put(given, step);
}

/** The sole itself carries this much of stance, %; nothing where there is no shape, or one too steep to walk on. The leg stands in it as before. */
function shareOn(given: RockerCase, on: WalkOn): number {
  const sole = orInfeasible(() => soleFrom(given));
  return sole instanceof Infeasible || over(inDegrees(sole.rocker.tipAngle), TIP_STEEPEST) ? -Infinity : 100 * stepFigures({ ...on, body: rollBodyOf(sole) }).carried;
}

/** As much as one end gives, then the least of the other that is enough. */
function bothEnds(given: RockerCase, rear: readonly Lever[], front: readonly Lever[], share: Share, enough: number): string | undefined {
  for (const back of rear) for (const fore of front) {
    const most = bestStep(back, (one) => share(back.put(given, one)));
    if (most === undefined) continue;
    const changed = leastChange(back.put(given, most), fore, share, enough);
    if (changed) return `${back.words(changed)} with ${lower(fore.words(changed))} carries ${percent(share(changed))}`;
  }
  return undefined;
}

const percent = (value: number): string => `${rounded(value, 0)} %`;

/** The fewest steps that are enough: in leaps twice as long each time, then between the last two. */
function leastStep({ count }: Lever, share: (step: number) => number, enough: number): number | undefined {
  let bad = 0, good = 0;
  for (let step = 1; good === 0 && bad < count; step = Math.min(count, 2 * step)) {
    const reached = share(step);
    if (reached >= enough) good = step; else bad = step;
    if (reached === -Infinity) break;
  }
  while (good - bad > 1) {
    const middle = (good + bad) >> 1;
    if (share(middle) >= enough) good = middle; else bad = middle;
  }
  return good === 0 ? undefined : good;
}

/** The step, of leaps twice as long each time, at which most is carried; none where no step gives a shape. */
function bestStep({ count }: Lever, share: (step: number) => number): number | undefined {
  let best: number | undefined, most = -Infinity;
  for (let step = 1; step <= count; step *= 2) {
    const reached = share(step);
    if (reached > most) { most = reached; best = step; }
  }
  return best;
}

/** Nearer than this to a whole step a value stands on it. */
const ON_STEP = 1e-9;
/** Whole steps from a value to the end of what the sheet takes. */
const stepsTo = (now: number, end: number, step: number): number => Math.max(0, Math.floor(Math.abs(end - now) / step + ON_STEP));
const floorTo = (value: number): number => Math.floor(value + ON_STEP);
const ceilTo = (value: number, step: number): number => Math.ceil(value / step - ON_STEP) * step;

type Order = RockerCase['order'];
/** Puts something else into the order. */
const withOrder = (given: RockerCase, changed: Partial<Order>): RockerCase => ({ ...given, order: { ...given.order, ...changed } });

function rearLevers({ order: { strike, edgeBeyond } }: RockerCase): Lever[] {
  const now = inDegrees(strike), from = floorTo(now), [, most] = rangeOf('foot.strikeAngle').limits, [, furthest] = rangeOf('order.edgeBeyond.heel').limits;
  return [{
    path: 'foot.strikeAngle', count: stepsTo(from, most, 1), put: (given, step) => withOrder(given, { strike: degrees(from + step) }),
    words: ({ order }) => `${deg(inDegrees(order.strike), 0)} asked for at heel strike (foot.strikeAngle, now ${deg(now)})`,
  }, {
    path: 'order.edgeBeyond.heel', count: stepsTo(edgeBeyond.heel, furthest, 1),
    put: (given, step) => withOrder(given, { edgeBeyond: { ...given.order.edgeBeyond, heel: edgeBeyond.heel + step } }),
    words: ({ order }) => `An edge ${mm(order.edgeBeyond.heel)} beyond the heel (order.edgeBeyond.heel, now ${mm(edgeBeyond.heel)})`,
  }];
}

/** The apex moves in steps of so many % of the last length, the toe radius in steps of so many mm. */
const APEX_STEP = 0.5, RADIUS_STEP: Mm = 5;

/** How the toe arc is ordered decides what of it can be changed; the apex always can. */
function frontLevers({ last: { length }, order: { apexX, toe } }: RockerCase, radius: Mm): Lever[] {
  const share = (100 * apexX) / length, from = ceilTo(share, APEX_STEP), [least] = rangeOf('order.apex').limits;
  return [toeLever(toe, radius), {
    path: 'order.apex', count: stepsTo(from, least, APEX_STEP),
    put: (given, step) => withOrder(given, { apexX: ((from - APEX_STEP * step) / 100) * length, apexByDefault: false }),
    words: ({ order }) => `An apex of ${rounded((100 * order.apexX) / length, 1)} % of the last length, from the heel (order.apex, now ${rounded(share, 1)} %),`,
  }];
}

/** @param radius of the toe arc as it is; one that follows from the ankle pivot is ordered as a radius instead */
function toeLever(toe: Order['toe'], radius: Mm): Lever {
  if (toe.endAngle !== undefined) return upTo('order.toe.endAngle', inDegrees(toe.endAngle), (angle) => ({ endAngle: degrees(angle) }), ({ endAngle }, now) =>
    `A toe arc that ends at ${deg(inDegrees(endAngle!), 0)} (order.toe.endAngle, now ${deg(now)})`);
  if (toe.rule === 'for-toe-off') return upTo('order.toe.toeOffAngle', inDegrees(toe.toeOff!), (angle) => ({ toeOff: degrees(angle) }), ({ toeOff }, now) =>
    `A slope of ${deg(inDegrees(toeOff!), 0)} at the tip (order.toe.toeOffAngle, now ${deg(now)})`);
  if (toe.rule === 'for-toe-spring') return upTo('order.toe.toeSpring', toe.toeSpring!, (toeSpring) => ({ toeSpring }), ({ toeSpring }, now) =>
    `A toe spring of ${mm(toeSpring!)} of the shoe (order.toe.toeSpring, now ${mm(now)})`);
  const from = ceilTo(radius, RADIUS_STEP), path = 'order.toe.radius';
  return {
    path, count: stepsTo(from, rangeOf(path).limits[0], RADIUS_STEP), put: (given, step) => withToe(given, { rule: 'given', radius: from - RADIUS_STEP * step }),
    words: ({ order }) => `A toe arc of ${mm(order.toe.radius!)} (${path}, now ${mm(radius)})`,
  };
}

const withToe = (given: RockerCase, changed: Partial<Order['toe']>): RockerCase => withOrder(given, { toe: { ...given.order.toe, ...changed } });

/** One number of the toe arc, in whole degrees or millimetres up to the most the sheet takes. @param now as it is, in the unit of the sheet */
function upTo(path: 'order.toe.endAngle' | 'order.toe.toeOffAngle' | 'order.toe.toeSpring', now: number, toe: (value: number) => Partial<Order['toe']>, words: (toe: Order['toe'], now: number) => string): Lever {
  const from = floorTo(now);
  return { path, count: stepsTo(from, rangeOf(path).limits[1], 1), put: (given, step) => withToe(given, toe(from + step)), words: ({ order }) => words(order.toe, now) };
}
