import { boundOf, FELT_AS_ONE, lossAgainst, type Limit, type LimitName, type Loss } from './asked.ts';
import type { Looking } from './descend.ts';
import { keptTo, type Weighed } from './kept.ts';
import { bestPoint } from './search.ts';
import { taskOf, type Sought } from './sought.ts';
import { keeps, pastBy, type SearchPoint, type Term } from './task.ts';

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
export function* blamed(ready: Weighed, nearest: SearchPoint | undefined): Looking<Blame[]> {
  const { sought } = ready, seen = nearest && sought.look(nearest);
  if (!nearest || !seen) return [];
  const alone: Blame[] = [];
  for (const limit of sought.limits.filter((one) => pastBy(seen, boundOf(one)) > 0 || nextTo(one, seen.figures[one.of]))) {
    const blame = yield* loosenedAlone(ready, limit, nearest);
    if (blame) alone.push(blame);
  }
  const past = ({ limits }: Blame): number => limits.reduce((sum, { works, limit, unit }) => sum + Math.abs(works - limit) / FELT_AS_ONE[unit], 0);
  if (alone.length) return alone.sort((a, b) => past(a) - past(b));
  return yield* together(ready, nearest);
}

const nextTo = ({ limit, unit }: Limit, reached: number): boolean => Math.abs(reached - limit) < 5 * STEP[unit];

/** The least a figure can come to while all other limits are kept. */
export function* leastOf(sought: Sought, limit: Limit, others: readonly Limit[], from: readonly SearchPoint[]): Looking<SearchPoint | undefined> {
  const far = limit.sign > 0 ? -FAR : FAR, term: Term = { of: limit.of, sign: limit.sign, past: far, weight: 1 };
  const task = taskOf(sought, others, [term]), point = yield* bestPoint(task, from);
  return point && keeps(sought.look(point)!, task.bounds) ? point : undefined;
}
/** Further than any figure reaches. */
const FAR = 2000;

/** A weight is found on a quick scale: on the true one it may take a gram or two more. */
const MOST_TRIALS = 5;

function* loosenedAlone(ready: Weighed, limit: Limit, nearest: SearchPoint): Looking<Blame | undefined> {
  const { sought } = ready, others = sought.limits.filter(({ name }) => name !== limit.name), least = yield* leastOf(sought, limit, others, [nearest]);
  if (!least) return undefined;
  const first = roundedTo(limit, sought.look(least)!.figures[limit.of]);
  for (let i = 0; i < MOST_TRIALS; i++) {
    const works = roundedTo(limit, first + limit.sign * i * STEP[limit.unit]), loss = yield* triedWith(ready, [...others, { ...limit, limit: works }], [nearest, least]);
    if (loss) return { limits: [loosened(limit, works)], loss };
  }
  return undefined;
}

/** What the best shoe loses within other limits, put in and weighed truly; undefined where there is none. */
function* triedWith(ready: Weighed, limits: readonly Limit[], near: readonly SearchPoint[]): Looking<Loss | undefined> {
  const { sought, point, kept } = yield* keptTo(ready, limits, near);
  return kept && point ? lossAgainst(sought.asked, sought.look(point)!.figures) : undefined;
}

const loosened = ({ name, label, unit, limit }: Limit, works: number): Loosened => ({ name, label, unit, limit, works });

/** The shoe that comes nearest to all keeps to these. */
function* together(ready: Weighed, nearest: SearchPoint): Looking<Blame[]> {
  const { limits, look } = ready.sought, seen = look(nearest)!;
  for (let i = 0; i < MOST_TRIALS; i++) {
    const wider = limits.map((limit) => (pastBy(seen, boundOf(limit)) > 0 ? { ...limit, limit: roundedTo(limit, seen.figures[limit.of] + limit.sign * i * STEP[limit.unit]) } : limit));
    const loss = yield* triedWith(ready, wider, [nearest]);
    if (loss) return [{ limits: wider.flatMap(({ limit: works }, k) => (works === limits[k]!.limit ? [] : [loosened(limits[k]!, works)])), loss }];
  }
  return [];
}
