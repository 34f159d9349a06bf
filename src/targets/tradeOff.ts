import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { lossAgainst, LIMITS, WEIGHTS, type Limit, type LimitName } from './asked.ts';
import { leastOf } from './blame.ts';
import type { Looking } from './descend.ts';
import { keptTo, weighed, type Weighed } from './kept.ts';
import type { RockerOutcome } from './outcome.ts';
import { solutionAt, tellingHowMany, type Progress, type Seeking, type Solution } from './seek.ts';
import { taskOf, type Sought } from './sought.ts';
import { meritOf, type Bound, type SearchPoint, type Task, type Term } from './task.ts';

/** The limits a curve can be drawn over, the one to choose first. */
const OVER = ['seatHeightAtMost', 'ballHeightAtMost', 'ballThicknessAtMost'] as const satisfies readonly LimitName[];

/** One height allowed, mm, with the shoe that turns furthest within it. */
export interface CurvePoint { readonly limit: number; readonly best: Solution }

/** The greatest toe-off angle there is at each height allowed: what a millimetre buys. All other limits hold at every point. */
export interface TradeOff {
  readonly side: Side;
  readonly over: (typeof OVER)[number];
  readonly label: string;
  /** Where the limit of the sheet stands, mm. */
  readonly asked: number | undefined;
  /** Rising. */
  readonly points: readonly CurvePoint[];
  /** The shoe as it is ordered, without limits. */
  readonly ordered: RockerOutcome['figures'] | undefined;
}

/** Points of a curve; to find its two ends takes about as long as two of them. */
const POINTS = 9, ENDS = 2;

/**
 * The greatest toe-off angle at one height after the other, from the least height at which there is a shoe to the one at which nothing more
 * is won, but no higher than the order or its limit stands; over the seat height, or the ball's where only that is limited.
 * There are none where no shoe keeps to the other limits. Tells what share of the way it has gone.
 * @returns undefined where the side has no targets
 */
export function* tradeOff(fitting: Fitting, side: Side): Seeking<TradeOff & Progress | undefined> {
  const ready = weighed(fitting, side);
  let come = 0;
  return ready && (yield* tellingHowMany(tradeOffCurve(fitting, ready, (share) => { come = share; }), () => come));
}

/** So little of what else is lost is weighed that it decides between shoes that turn alike: nobody gives a degree of strike for a hundredth of toe-off. */
const SLIGHT = 0.01;
/** Further than any shoe turns, degrees. */
const FURTHEST = 180;

/** The search for the greatest toe-off angle within limits. */
export function furthest(sought: Sought, limits: readonly Limit[] = sought.limits): Task {
  const task = taskOf(sought, limits), slight = task.terms.map((term): Term => ({ ...term, weight: term.weight * SLIGHT }));
  return { ...task, axes: task.axes.map((axis) => ({ ...axis, dear: axis.dear * SLIGHT })), terms: [{ of: 'toeOff', sign: -1, past: FURTHEST, weight: 1 }, ...slight] };
}

function* tradeOffCurve(fitting: Fitting, ready: Weighed, tell: (share: number) => void): Looking<TradeOff> {
  const { sought } = ready, over = OVER.find((name) => sought.targets[name] !== undefined) ?? OVER[0], limit: Limit = { name: over, limit: 0, ...LIMITS[over] };
  const others = sought.limits.filter(({ name }) => name !== over), common = { side: sought.side, over, label: LIMITS[over].label, asked: sought.targets[over], ordered: sought.ordered?.figures };
  const roof = Math.max(common.ordered?.[limit.of] ?? -Infinity, common.asked ?? -Infinity), below = roof > 0 ? yield* keptTo(ready, [...others, { ...limit, limit: roof }], [], furthest) : undefined;
  const high = below?.kept ? below : yield* keptTo(ready, others), least = high.kept && high.point ? yield* leastOf(high.sought, limit, others, [high.point]) : undefined;
  if (!high.point || !least) return { ...common, points: [] };
  const at = (point: SearchPoint): number => high.sought.look(point)!.figures[limit.of], heights = withAsked(heightsBetween(at(least), at(high.point)), common.asked), found: Found[] = [];
  for (const [i, height] of heights.entries()) {
    tell((i + ENDS) / (heights.length + ENDS));
    const own = { ...limit, limit: height }, { kept, sought: now, point } = yield* keptTo({ ...ready, sought: high.sought }, [...others, own], [...ahead(sought, found, height), found.at(-1)?.point ?? high.point, least], furthest);
    if (kept && point) found.push({ limit: own, ...(yield* losingLess({ ...ready, sought: now }, [...others, own], point)) });
  }
  return { ...common, points: bestOfLower(others, found.reverse()).map((one) => ({ limit: one.limit.limit, best: solutionAt(fitting, one.sought, one.point, [...others, one.limit]) })) };
}

/** Where the last two shoes point to, straight on. */
function ahead({ axes }: Sought, found: readonly Found[], height: number): SearchPoint[] {
  const [before, last] = found.slice(-2);
  if (!before || !last) return [];
  const share = (height - last.limit.limit) / (last.limit.limit - before.limit.limit);
  return [last.point.map((one, i) => Math.min(axes[i]!.high, Math.max(axes[i]!.low, one + share * (one - before.point[i]!))))];
}

/** The shoe that turns as far and gives nothing else away for it: where a strike angle, a flat or a tip was given, it is looked whether all of it was needed. */
function* losingLess(ready: Weighed, limits: readonly Limit[], point: SearchPoint): Looking<Omit<Found, 'limit'>> {
  const { sought } = ready, { figures } = sought.look(point)!, { strike, flat, tip } = lossAgainst(sought.asked, figures);
  if (WEIGHTS.strike * strike + WEIGHTS.flat * flat + WEIGHTS.tip * tip < GIVEN) return { sought, point };
  const asFar: Bound = { of: 'toeOff', sign: -1, limit: figures.toeOff - ALIKE, scale: ALIKE };
  const again = yield* keptTo(ready, limits, [point], (now, own) => { const task = taskOf(now, own); return { ...task, bounds: [...task.bounds, asFar] }; });
  return again.kept && again.point ? { sought: again.sought, point: again.point } : { sought, point };
}
/** Less than this, in degrees, is not worth another look; and shoes that differ by no more than this at toe-off turn alike. */
const GIVEN = 0.1, ALIKE = 0.01;

interface Found { readonly limit: Limit; readonly point: SearchPoint; readonly sought: Sought }

/** Falling, in tenths of a millimetre. */
function heightsBetween(least: number, most: number): number[] {
  const from = Math.ceil(least * 10 - 1e-7), to = Math.max(from, Math.ceil(most * 10 - 1e-7)), count = Math.min(POINTS, to - from + 1);
  return Array.from({ length: count }, (_, i) => Math.round(to - (count === 1 ? 0 : (i * (to - from)) / (count - 1))) / 10);
}

/** The height that is asked for is one of them, in place of the nearest. */
function withAsked(falling: readonly number[], asked: number | undefined): readonly number[] {
  if (asked === undefined || asked > falling[0]! || asked < falling.at(-1)!) return falling;
  const nearest = falling.reduce((near, one) => (Math.abs(one - asked) < Math.abs(near - asked) ? one : near));
  return falling.map((one) => (one === nearest ? asked : one));
}

/** What keeps to a lower height keeps to a higher one too: a point that was found there and is better goes up. */
function bestOfLower(others: readonly Limit[], rising: readonly Found[]): Found[] {
  let lower: SearchPoint | undefined;
  return rising.map((one) => {
    const task = furthest(one.sought, [...others, one.limit]), point = lower && meritOf(task, lower) < meritOf(task, one.point) ? lower : one.point;
    lower = point;
    return { ...one, point };
  });
}
