import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { LIMITS, type Limit, type LimitName } from './asked.ts';
import { leastOf } from './blame.ts';
import type { Looking } from './descend.ts';
import type { Outcome } from './outcome.ts';
import { bestPoint } from './search.ts';
import { counted, solutionAt, weighed, type Progress, type Seeking, type Solution } from './seek.ts';
import { taskOf, type Sought } from './sought.ts';
import { keeps, meritOf, type Point } from './task.ts';

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
  return ready && (yield* counted(curveOf(fitting, ready.sought)));
}

function* curveOf(fitting: Fitting, sought: Sought): Looking<TradeOff> {
  const over = OVER.find((name) => sought.targets[name] !== undefined) ?? OVER[0], limit: Limit = { name: over, limit: 0, ...LIMITS[over] };
  const others = sought.limits.filter(({ name }) => name !== over), common = { side: sought.side, over, label: LIMITS[over].label, ordered: sought.ordered?.figures };
  const free = yield* bestPoint(taskOf(sought, others)), least = free && (yield* leastOf(sought, limit, others, [free]));
  if (!free || !least || !keeps(sought.look(free)!, taskOf(sought, others).bounds)) return { ...common, points: [] };
  const at = (point: Point): number => sought.look(point)!.figures[limit.of], heights = heightsBetween(at(least), at(free));
  const found: { readonly limit: Limit; readonly point: Point }[] = [];
  for (const height of heights) {
    const own = { ...limit, limit: height }, point = yield* bestPoint(taskOf(sought, [...others, own]), [found.at(-1)?.point ?? free, least]);
    if (point && keeps(sought.look(point)!, taskOf(sought, [...others, own]).bounds)) found.push({ limit: own, point });
  }
  const points = bestOfLower(sought, others, found.reverse()).map(({ limit: own, point }) => ({ limit: own.limit, best: solutionAt(fitting, sought, point, [...others, own]) }));
  return { ...common, points };
}

/** Falling, in tenths of a millimetre. */
function heightsBetween(least: number, most: number): number[] {
  const from = Math.ceil(least * 10 - 1e-7), to = Math.max(from, Math.ceil(most * 10 - 1e-7)), count = Math.min(POINTS, to - from + 1);
  return Array.from({ length: count }, (_, i) => Math.round(to - (count === 1 ? 0 : (i * (to - from)) / (count - 1))) / 10);
}

/** What keeps to a lower height keeps to a higher one too: a point that was found there and is better goes up. */
function bestOfLower<One extends { readonly limit: Limit; readonly point: Point }>(sought: Sought, others: readonly Limit[], rising: readonly One[]): One[] {
  let lower: Point | undefined;
  return rising.map((one) => {
    const task = taskOf(sought, [...others, one.limit]), point = lower && meritOf(task, lower) < meritOf(task, one.point) ? lower : one.point;
    lower = point;
    return { ...one, point };
  });
}
