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
import { deg, mm, rounded } from './say.ts';
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
  const given = caseOf(shoe), share = (changed: RockerCase): number => shareOn(changed, on), has = (end: OnCorner['corner']): boolean => corners.some(({ corner }) => corner === end);
  const rear = has('rear corner') ? rearLevers(given) : [], front = has('front corner') ? frontLevers(given, shoe.rocker.toeArc.radius) : [];
  const found = [...rear, ...front].flatMap((lever) => { const step = leastStep(lever, (one) => share(lever.put(given, one)), enough); return step === undefined ? [] : [lever.put(given, step)].map((changed) => `${lever.words(changed)} carries ${percent(share(changed))}`); });
  if (found.length > 0) return found.slice(0, 2).map((one, i) => (i === 0 ? one : lower(one))).join('; ');
  return bothEnds(given, rear, front, share, enough) ?? `Nothing that was tried at one end or at both carries ${percent(enough)} (${[...rear, ...front].map(({ path }) => path).join(', ')})`;
}

/** The sole itself carries this much of stance, %; nothing where there is no shape, or one too steep to walk on. The leg stands in it as before. */
function shareOn(given: RockerCase, on: WalkOn): number {
  const sole = orInfeasible(() => soleFrom(given));
  return sole instanceof Infeasible || over(inDegrees(sole.rocker.tipAngle), TIP_STEEPEST) ? -Infinity : 100 * stepFigures({ ...on, body: rollBodyOf(sole) }).carried;
}

/** As much as one end gives, then the least of the other that is enough. */
function bothEnds(given: RockerCase, rear: readonly Lever[], front: readonly Lever[], share: (given: RockerCase) => number, enough: number): string | undefined {
  for (const back of rear) for (const fore of front) {
    const most = bestStep(back, (one) => share(back.put(given, one)));
    if (most === undefined) continue;
    const half = back.put(given, most), step = leastStep(fore, (one) => share(fore.put(half, one)), enough);
    if (step !== undefined) { const changed = fore.put(half, step); return `${back.words(changed)} with ${lower(fore.words(changed))} carries ${percent(share(changed))}`; }
  }
  return undefined;
}

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
const percent = (value: number): string => `${rounded(value, 0)} %`;

/** The fewest steps that are enough: in leaps twice as long each time, then between the last two. */
function leastStep({ count }: Lever, share: (step: number) => number, enough: number): number | undefined {
  let bad = 0, good = 0;
  for (let step = 1; good === 0 && bad < count; step = Math.min(count, 2 * step)) {
    const reached = share(step);
    if (reached >= enough) good = step; else bad = step;
    if (reached === -Infinity) break;
  }
  while (good - bad > 1) { const middle = (good + bad) >> 1; if (share(middle) >= enough) good = middle; else bad = middle; }
  return good === 0 ? undefined : good;
}

/** The step, of leaps twice as long each time, at which most is carried; none where no step gives a shape. */
function bestStep({ count }: Lever, share: (step: number) => number): number | undefined {
  let best: number | undefined, most = -Infinity;
  for (let step = 1; step <= count; step *= 2) { const reached = share(step); if (reached > most) { most = reached; best = step; } }
  return best;
}

/** Whole steps from a value to the end of what the sheet takes. */
const stepsTo = (now: number, end: number, step: number): number => Math.max(0, Math.floor(Math.abs(end - now) / step + 1e-9));

function rearLevers({ order: { strike, edgeBeyond } }: RockerCase): Lever[] {
  const now = inDegrees(strike), from = Math.floor(now + 1e-9), [, most] = rangeOf('foot.strikeAngle').limits, [, furthest] = rangeOf('order.edgeBeyond.heel').limits;
  return [
    { path: 'foot.strikeAngle', count: stepsTo(from, most, 1), put: (given, step) => ({ ...given, order: { ...given.order, strike: degrees(from + step) } }), words: ({ order }) => `${deg(inDegrees(order.strike), 0)} asked for at heel strike (foot.strikeAngle, now ${deg(now)})` },
    { path: 'order.edgeBeyond.heel', count: stepsTo(edgeBeyond.heel, furthest, 1), put: (given, step) => ({ ...given, order: { ...given.order, edgeBeyond: { ...given.order.edgeBeyond, heel: edgeBeyond.heel + step } } }), words: ({ order }) => `An edge ${mm(order.edgeBeyond.heel)} beyond the heel (order.edgeBeyond.heel, now ${mm(edgeBeyond.heel)})` },
  ];
}

/** How the toe arc is ordered decides what of it can be changed; the apex always can. */
function frontLevers({ last: { length }, order: { apexX, toe } }: RockerCase, radius: Mm): Lever[] {
  const share = (100 * apexX) / length, from = Math.ceil(2 * share - 1e-9) / 2, [least] = rangeOf('order.apex').limits;
  const apex: Lever = { path: 'order.apex', count: stepsTo(from, least, 0.5), put: (given, step) => ({ ...given, order: { ...given.order, apexX: ((from - 0.5 * step) / 100) * length, apexByDefault: false } }), words: ({ order }) => `An apex of ${rounded((100 * order.apexX) / length, 1)} % of the last length, from the heel (order.apex, now ${rounded(share, 1)} %),` };
  return [...toeLevers(toe, radius), apex];
}

/** @param radius of the toe arc as it is; one that follows from the ankle pivot is ordered as a radius instead */
function toeLevers(toe: RockerCase['order']['toe'], radius: Mm): Lever[] {
  const put = (changed: Partial<RockerCase['order']['toe']>) => (given: RockerCase): RockerCase => ({ ...given, order: { ...given.order, toe: { ...given.order.toe, ...changed } } });
  if (toe.endAngle !== undefined) {
    const now = inDegrees(toe.endAngle), from = Math.floor(now + 1e-9);
    return [{ path: 'order.toe.endAngle', count: stepsTo(from, rangeOf('order.toe.endAngle').limits[1], 1), put: (given, step) => put({ endAngle: degrees(from + step) })(given), words: ({ order }) => `A toe arc that ends at ${deg(inDegrees(order.toe.endAngle!), 0)} (order.toe.endAngle, now ${deg(now)})` }];
  }
  if (toe.rule === 'for-toe-off') {
    const now = inDegrees(toe.toeOff!), from = Math.floor(now + 1e-9);
    return [{ path: 'order.toe.toeOffAngle', count: stepsTo(from, rangeOf('order.toe.toeOffAngle').limits[1], 1), put: (given, step) => put({ toeOff: degrees(from + step) })(given), words: ({ order }) => `A slope of ${deg(inDegrees(order.toe.toeOff!), 0)} at the tip (order.toe.toeOffAngle, now ${deg(now)})` }];
  }
  if (toe.rule === 'for-toe-spring') {
    const now = toe.toeSpring!, from = Math.floor(now + 1e-9);
    return [{ path: 'order.toe.toeSpring', count: stepsTo(from, rangeOf('order.toe.toeSpring').limits[1], 1), put: (given, step) => put({ toeSpring: from + step })(given), words: ({ order }) => `A toe spring of ${mm(order.toe.toeSpring!)} of the shoe (order.toe.toeSpring, now ${mm(now)})` }];
  }
  const from = Math.ceil(radius / 5 - 1e-9) * 5;
  return [{ path: 'order.toe.radius', count: stepsTo(from, rangeOf('order.toe.radius').limits[0], 5), put: (given, step) => put({ rule: 'given', radius: from - 5 * step })(given), words: ({ order }) => `A toe arc of ${mm(order.toe.radius!)} (order.toe.radius, now ${mm(radius)})` }];
}
