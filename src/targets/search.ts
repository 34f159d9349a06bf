import { descend, movedTo, type Looking } from './descend.ts';
import { linearBest, type Slopes, type Window } from './linear.ts';
import { HARD, keeps, meritOf, ON_THE_WAY, placed, type Axis, type SearchPoint, type Task } from './task.ts';

/** Starts that are followed down, the best first; of those that are said to be near, so much of each axis is looked over at first. */
const FOLLOWED = 2, CLOSE = 0.12;

/**
 * The best point of a task: a few points all over it, downhill from the best of them, then every step and pair of steps
 * beside what was found, until none is better. No chance in it: the same task, the same point.
 * @param near points to go down from first; where one of them leads to a point that keeps to all limits, that is it
 * @returns undefined where no point that was looked at has a shape
 */
export function* bestPoint(task: Task, near: readonly SearchPoint[] = []): Looking<SearchPoint | undefined> {
  const ordered = task.axes.map((axis) => placed(axis, axis.ordered));
  yield ordered;
  if (meritOf(task, ordered) === 0) return ordered;   // nothing can be less
  let best: SearchPoint | undefined;
  for (const start of near) {
    best = better(task, best, yield* downFrom(task, start, CLOSE));
    if (isKept(task, best)) return best;
  }
  const starts = yield* inOrder(atAGlance(task), [ordered, ...spread(task.axes)]);
  for (const start of starts.slice(0, FOLLOWED)) best = better(task, best, yield* downFrom(task, start));
  return best;
}

const better = (task: Task, a: SearchPoint | undefined, b: SearchPoint): SearchPoint => (a && meritOf(task, a) <= meritOf(task, b) ? a : b);

function isKept({ look, bounds }: Task, point: SearchPoint): boolean {
  const seen = look(point);
  return seen !== undefined && keeps(seen, bounds);
}

const atAGlance = (task: Task): Task => ({ ...task, look: task.glance });

function* downFrom(task: Task, start: SearchPoint, first?: number): Looking<SearchPoint> {
  const { point, slopes } = yield* descend(atAGlance(task), start, first);
  return yield* settled(task, yield* onSteps(task, point, slopes));
}

/** Those with a shape, the best first. */
function* inOrder(task: Task, points: readonly SearchPoint[]): Looking<readonly SearchPoint[]> {
  const seen: { readonly point: SearchPoint; readonly merit: number }[] = [];
  for (const point of points) {
    yield point;
    const merit = meritOf(task, point, ON_THE_WAY);
    if (merit < Infinity && seen.every((one) => !same(one.point, point))) seen.push({ point, merit });
  }
  return seen.sort((a, b) => a.merit - b.merit).map(({ point }) => point);
}

const same = (a: SearchPoint, b: SearchPoint): boolean => a.every((one, i) => one === b[i]);

/** Points all over the task: a grid where there are few axes, else the middle and the way to both ends along each. */
function spread(axes: readonly Axis[]): SearchPoint[] {
  const at = (shares: readonly number[]): SearchPoint => axes.map((axis, i) => placed(axis, axis.low + shares[i]! * (axis.high - axis.low)));
  if (axes.length <= 2) return grid(axes.length, [0.1, 0.5, 0.9]).map(at);
  if (axes.length === 3) return grid(3, [0.2, 0.8]).map(at);
  const middle = axes.map(() => 0.5);
  return [middle, ...axes.flatMap((_, i) => [0.1, 0.9].map((share) => middle.map((one, k) => (k === i ? share : one))))].map(at);
}

const grid = (axes: number, shares: readonly number[]): number[][] =>
  Array.from({ length: axes }).reduce<number[][]>((points) => points.flatMap((point) => shares.map((share) => [...point, share])), [[]]);

/** A found point lies between steps: this many of them to each side are looked over by its slopes, and so often again from what was met. */
const NEAR = 12, TURNS = 4;

/** The best point near one between the steps that lies on them, by a programme in whole numbers. */
function* onSteps(task: Task, point: SearchPoint, slopes: readonly Slopes[]): Looking<SearchPoint> {
  let best = task.axes.map((axis, i) => placed(axis, point[i]!));
  yield best;
  const first = task.look(best);
  if (slopes.length === 0 || !first) return best;
  let through: readonly Slopes[] = movedTo(slopes, best, first);
  const window: Window = task.axes.map(({ low, high }, i) => ({ from: Math.max(low, Math.floor(point[i]!) - NEAR), to: Math.min(high, Math.ceil(point[i]!) + NEAR) }));
  for (let i = 0; i < TURNS; i++) {
    const trial = linearBest(task, through, window, HARD, true).map((at, k) => placed(task.axes[k]!, at));
    yield trial;
    const seen = task.look(trial);
    if (meritOf(task, trial) < meritOf(task, best)) best = trial;
    if (!seen) return best;
    through = movedTo(through, trial, seen);
  }
  return best;
}

/** No search has gone on longer beside what it had found. */
const MOST_ROUNDS = 30;

/** Beside a point: a step either way along each axis, along two at once, and back to where a number stands now. */
function* settled(task: Task, from: SearchPoint): Looking<SearchPoint> {
  let here = from;
  for (let i = 0; i < MOST_ROUNDS; i++) {
    let next = here;
    for (const point of beside(task.axes, here)) {
      yield point;
      if (meritOf(task, point) < meritOf(task, next) - WORTH) { next = point; break; }
    }
    if (next === here) return here;
    here = yield* goneOn(task, here, next);
  }
  return here;
}

/** On from a better point the same way, twice as far each time, while it gets better still: what was found at a glance may lie some steps off. */
function* goneOn(task: Task, from: SearchPoint, better: SearchPoint): Looking<SearchPoint> {
  let here = better, by = better.map((one, i) => one - from[i]!);
  for (;;) {
    by = by.map((one) => 2 * one);
    const trial = task.axes.map((axis, i) => placed(axis, here[i]! + by[i]!));
    yield trial;
    if (!(meritOf(task, trial) < meritOf(task, here) - WORTH)) return here;
    here = trial;
  }
}
/** Less than this is not worth a step. */
const WORTH = 1e-6;

function beside(axes: readonly Axis[], here: SearchPoint): SearchPoint[] {
  const moves = axes.flatMap(({ low, high }, i) => [Math.floor(here[i]! + 1), Math.ceil(here[i]! - 1)].filter((to) => to >= low && to <= high).map((to) => ({ i, to })));
  const back = axes.map((axis, i) => ({ i, to: placed(axis, axis.ordered) })).filter(({ i, to }) => to !== here[i]);
  const moved = (...changes: readonly { readonly i: number; readonly to: number }[]): SearchPoint => here.map((one, k) => changes.find(({ i }) => i === k)?.to ?? one);
  const pairs = moves.flatMap((one, k) => moves.slice(k + 1).filter(({ i }) => i !== one.i).map((other) => moved(one, other)));
  return [...back.map((one) => moved(one)), ...moves.map((one) => moved(one)), ...pairs];
}
