import { lossAgainst, type Limit, type LimitName, type Loss } from './asked.ts';
import type { Looking } from './descend.ts';
import { bestPoint } from './search.ts';
import { taskOf, type Sought } from './sought.ts';
import { keeps, pastBy, type Point, type Term } from './task.ts';
import { boundOf } from './asked.ts';

/** A limit with the nearest value of it that works, mm or g. */
export interface Loosened { readonly name: LimitName; readonly label: string; readonly unit: 'mm' | 'g'; readonly limit: number; readonly works: number }

/**
 * Why no values keep to all limits: one limit that alone is to blame, or several that are together. What works was put in,
 * and a shoe was found with it, which loses so much.
 */
export interface Blame { readonly limits: readonly Loosened[]; readonly loss: Loss }

/** What a limit is told in: tenths of a millimetre, whole grams. */
const STEP = { mm: 0.1, g: 1 }, DIGITS = { mm: 1, g: 0 };

/** A value on a whole step that a reached one keeps to. */
function roundedTo({ sign, unit }: Limit, reached: number): number {
  const steps = (sign * reached) / STEP[unit];
  return Number((sign * Math.ceil(steps - 1e-7) * STEP[unit]).toFixed(DIGITS[unit]));
}

/**
 * Each limit that could be loosened alone, the one nearest to what was asked first; where none could, those that have to
 * be loosened together. Empty where nothing that may be changed gives a shape at all.
 * @param nearest the point that comes nearest to keeping to all
 */
export function* blamed(sought: Sought, nearest: Point | undefined): Looking<Blame[]> {
  const seen = nearest && sought.look(nearest);
  if (!nearest || !seen) return [];
  const alone: Blame[] = [];
  for (const limit of sought.limits.filter((one) => pastBy(seen, boundOf(one)) > 0 || nextTo(one, seen.figures[one.of]))) {
    const blame = yield* loosenedAlone(sought, limit, nearest);
    if (blame) alone.push(blame);
  }
  const past = ({ limits: [one] }: Blame): number => Math.abs(one!.works - one!.limit) / boundOf({ unit: one!.unit, sign: 1, limit: 0, of: 'seatHeight', name: one!.name, label: '' }).scale;
  if (alone.length) return alone.sort((a, b) => past(a) - past(b));
  return yield* together(sought, nearest);
}

const nextTo = ({ limit, unit }: Limit, reached: number): boolean => Math.abs(reached - limit) < 5 * STEP[unit];

/** The least a figure can come to while all other limits are kept. */
export function* leastOf(sought: Sought, limit: Limit, others: readonly Limit[], from: readonly Point[]): Looking<Point | undefined> {
  const far = limit.sign > 0 ? -FAR : FAR, term: Term = { of: limit.of, sign: limit.sign, past: far, weight: 1 };
  const task = taskOf(sought, others, [term]), point = yield* bestPoint(task, from);
  return point && keeps(sought.look(point)!, task.bounds) ? point : undefined;
}
/** Further than any figure reaches. */
const FAR = 2000;

function* loosenedAlone(sought: Sought, limit: Limit, nearest: Point): Looking<Blame | undefined> {
  const others = sought.limits.filter(({ name }) => name !== limit.name), least = yield* leastOf(sought, limit, others, [nearest]);
  if (!least) return undefined;
  const works = roundedTo(limit, sought.look(least)!.figures[limit.of]), task = taskOf(sought, [...others, { ...limit, limit: works }]);
  const tried = yield* bestPoint(task, [nearest, least]), found = tried && sought.look(tried);
  return found && keeps(found, task.bounds) ? { limits: [loosened(limit, works)], loss: lossAgainst(sought.asked, found.figures) } : undefined;
}

const loosened = ({ name, label, unit, limit }: Limit, works: number): Loosened => ({ name, label, unit, limit, works });

/** The shoe that comes nearest to all keeps to these. */
function* together(sought: Sought, nearest: Point): Looking<Blame[]> {
  const { figures } = sought.look(nearest)!, seen = { figures, piece: '' };
  const limits = sought.limits.map((limit) => (pastBy(seen, boundOf(limit)) > 0 ? { ...limit, limit: roundedTo(limit, figures[limit.of]) } : limit));
  const task = taskOf(sought, limits), tried = yield* bestPoint(task, [nearest]), found = tried && sought.look(tried);
  if (!found || !keeps(found, task.bounds)) return [];
  return [{ limits: limits.flatMap(({ limit: works }, i) => (works === sought.limits[i]!.limit ? [] : [loosened(sought.limits[i]!, works)])), loss: lossAgainst(sought.asked, found.figures) }];
}
