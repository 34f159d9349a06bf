import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { finished } from '../geometry/finished.ts';
import type { Limit } from './asked.ts';
import type { Looking } from './descend.ts';
import { bestPoint } from './search.ts';
import { soughtOn, taskOf, type Sought } from './sought.ts';
import { keeps, type SearchPoint } from './task.ts';
import { scaleSetBy, trueWeight } from './weigh.ts';

/** A sought shoe, and how to set its quick scale again by the true one: undefined where a point weighs no more than it may, or nothing limits it. */
export interface Weighed { readonly sought: Sought; readonly rescale: (now: Sought, at: SearchPoint, limits: readonly Limit[]) => Sought | undefined }

/** A found shoe that is over by the rounding of the scale is held to a hair less. */
const HAIR = 1.0005;

/**
 * The shoe with targets on a side. Where they limit its weight, the shoe as ordered sets the quick scale, or any where that one has no shape.
 * @returns undefined where the side has no rocker with targets
 */
export function weighed(fitting: Fitting, side: Side): Weighed | undefined {
  const plain = soughtOn(fitting, side), { chordGap } = fitting.making;
  if (plain?.targets.weightAtMost === undefined) return plain && { sought: plain, rescale: () => undefined };
  const scaledAt = (sought: Sought, at: SearchPoint | undefined, by = 1): Sought => {
    const shape = at ? sought.shapeAt(at) : sought.ordered?.shape, given = at ? sought.caseAt(at) : sought.given;
    return shape ? soughtOn(fitting, side, scaleSetBy({ shape, weight: trueWeight(given, chordGap) * by }, given.order))! : sought;
  };
  const rescale: Weighed['rescale'] = (now, at, limits) => {
    const most = limits.find(({ name }) => name === 'weightAtMost')?.limit;
    return most === undefined || trueWeight(now.caseAt(at), chordGap) <= most ? undefined : scaledAt(now, at, HAIR);
  };
  return { sought: scaledAt(plain, plain.ordered ? undefined : finished(bestPoint(taskOf(plain, [])))), rescale };
}

/** What a search within limits came to: the point, and the scale it was last weighed on. */
export interface Kept { readonly sought: Sought; readonly point: SearchPoint | undefined; readonly kept: boolean }

/** The quick scale is set again at each shoe found, until that one keeps to its weight on the true one. */
const MOST_WEIGHINGS = 6;

/**
 * The best shoe within limits, weighed truly; where there is none, the one that comes nearest.
 * @param best what is sought within them: the least loss where nothing else is told
 */
export function* keptTo({ sought, rescale }: Weighed, limits: readonly Limit[], near: readonly SearchPoint[] = [], best: typeof taskOf = taskOf): Looking<Kept> {
  let now = sought, point = yield* bestPoint(best(now, limits), near);
  for (let i = 0; i < MOST_WEIGHINGS && point && keeps(now.look(point)!, best(now, limits).bounds); i++) {
    const scaled = rescale(now, point, limits);
    if (!scaled) return { sought: now, point, kept: true };
    now = scaled;
    point = yield* bestPoint(best(now, limits), [point]);
  }
  return { sought: now, point, kept: false };
}
