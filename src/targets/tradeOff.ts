import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { LIMITS, type Limit, type LimitName } from './asked.ts';
import { leastOf } from './blame.ts';
import type { Looking } from './descend.ts';
import { keptTo, weighed, type Weighed } from './kept.ts';
import type { Outcome } from './outcome.ts';
import { counted, solutionAt, type Progress, type Seeking, type Solution } from './seek.ts';
import { taskOf, type Sought } from './sought.ts';
import { meritOf, type Point } from './task.ts';

/** The limits a curve can be drawn over, the one to choose first. */
const OVER = ['seatHeightAtMost', 'ballHeightAtMost', 'ballThicknessAtMost'] as const satisfies readonly LimitName[];

/** One height allowed, mm, with the whole answer to it. */
export interface CurvePoint { readonly limit: number; readonly best: Solution }

/** The best shoe at each height allowed: what a millimetre buys in toe-off. All other limits hold at every point. */
export interface TradeOff {
  readonly side: Side;
  readonly over: (typeof OVER)[number];
  readonly label: string;
  /** Rising. */
  readonly points: readonly CurvePoint[];
  /** The shoe as it is ordered, without limits. */
  readonly ordered: Outcome['figures'] | undefined;
}

/** Points of a curve. */
const POINTS = 12;

/**
 * The answers to one limit after the other, from the least height at which there is a shoe to the one at which nothing more
 * is won, over the seat height, or the ball's where only that is limited.
 * There are none where no shoe keeps to the other limits.
 * @returns undefined where the side has no targets
 */
export function* tradeOff(fitting: Fitting, side: Side): Seeking<TradeOff & Progress | undefined> {
  const ready = weighed(fitting, side);
  return ready && (yield* counted(curveOf(fitting, ready)));
}

function* curveOf(fitting: Fitting, ready: Weighed): Looking<TradeOff> {
  const { sought } = ready, over = OVER.find((name) => sought.targets[name] !== undefined) ?? OVER[0], limit: Limit = { name: over, limit: 0, ...LIMITS[over] };
  const others = sought.limits.filter(({ name }) => name !== over), common = { side: sought.side, over, label: LIMITS[over].label, ordered: sought.ordered?.figures };
  const free = yield* keptTo(ready, others), least = free.kept && free.point ? yield* leastOf(free.sought, limit, others, [free.point]) : undefined;
  if (!free.point || !least) return { ...common, points: [] };
  const at = (point: Point): number => free.sought.look(point)!.figures[limit.of], found: Found[] = [];
  for (const height of heightsBetween(at(least), at(free.point))) {
    const own = { ...limit, limit: height }, { kept, ...best } = yield* keptTo({ ...ready, sought: free.sought }, [...others, own], [found.at(-1)?.point ?? free.point, least]);
    if (kept && best.point) found.push({ limit: own, point: best.point, sought: best.sought });
  }
  return { ...common, points: bestOfLower(others, found.reverse()).map((one) => ({ limit: one.limit.limit, best: solutionAt(fitting, one.sought, one.point, [...others, one.limit]) })) };
}

interface Found { readonly limit: Limit; readonly point: Point; readonly sought: Sought }

/** Falling, in tenths of a millimetre. */
function heightsBetween(least: number, most: number): number[] {
  const from = Math.ceil(least * 10 - 1e-7), to = Math.max(from, Math.ceil(most * 10 - 1e-7)), count = Math.min(POINTS, to - from + 1);
  return Array.from({ length: count }, (_, i) => Math.round(to - (count === 1 ? 0 : (i * (to - from)) / (count - 1))) / 10);
}

/** What keeps to a lower height keeps to a higher one too: a point that was found there and is better goes up. */
function bestOfLower(others: readonly Limit[], rising: readonly Found[]): Found[] {
  let lower: Point | undefined;
  return rising.map((one) => {
    const task = taskOf(one.sought, [...others, one.limit]), point = lower && meritOf(task, lower) < meritOf(task, one.point) ? lower : one.point;
    lower = point;
    return { ...one, point };
  });
}
