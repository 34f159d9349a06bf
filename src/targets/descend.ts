import { linearBest, type Slopes, type Window } from './linear.ts';
import { meritOf, ON_THE_WAY, pastBy, type Axis, type SearchPoint, type Seen, type Task } from './task.ts';

/** A search tells of each point before it is looked at, so that whoever runs it may show how it goes, or stop. */
export type Looking<Found> = Generator<SearchPoint, Found>;

/** How much of each axis is looked over at first, and how the window grows and shrinks with how true its slopes were. */
const FIRST = 0.5, WIDER = 2, NARROWER = 0.4, TRUE = 0.6, UNTRUE = 0.25;
/** Far more than any search has needed. */
const MOST_STEPS = 40;
/** A window of a step or two, or slopes seen close by that promise no more than this, and it is found. */
const NARROWEST = 0.5, LEAST_WON = 1e-3, FINE = 0.1;
/** Pieces that are remembered. */
const PIECES = 4;

/**
 * Downhill from a point by linear programmes, one after the other, each within a window that is trusted as far as its
 * slopes prove true (successive linear programming: Griffith and Stewart 1961; Zhang, Kim and Lasdon 1985). Where the point a
 * programme leads to is governed by another piece, that piece's slopes are kept too, so the next one sees the bend; where it
 * leads past a limit that bends, it is led back by the same slopes.
 * @param first how much of each axis is looked over at first
 * @returns a point between the steps, and the slopes about it
 */
export function* descend(task: Task, from: SearchPoint, first = FIRST): Looking<{ readonly point: SearchPoint; readonly slopes: readonly Slopes[] }> {
  let here = from, share = first, pieces: Known[] = [];
  for (let i = 0; i < MOST_STEPS; i++) {
    const window = windowAbout(task.axes, here, share), slopes = yield* slopesAt(task, here, window);
    if (!slopes) break;
    pieces = withPiece(pieces, slopes);
    const trial = yield* ledBack(task, pieces, linearBest(task, pieces, window, ON_THE_WAY), window);
    const now = meritOf(task, here, ON_THE_WAY), won = now - meritOf(task, trial, ON_THE_WAY), promised = now - guessed(task, pieces, trial);
    const other = task.look(trial)?.piece;
    if (!(won > 0) && other !== undefined && other !== slopes.piece) {
      const met = yield* slopesAt(task, trial, windowAbout(task.axes, trial, share)), isNew = !pieces.some(({ piece }) => piece === other);
      if (met) { pieces = [slopes, ...withPiece(pieces.slice(1), met)]; share *= isNew ? TURNED : NARROWER; continue; }
    }
    if (won > 0) here = trial;
    if (promised < LEAST_WON && share < FINE || window.every(({ from: a, to: b }) => b - a <= 4 * NARROWEST)) break;
    share *= promised < LEAST_WON ? FINE : won > TRUE * promised ? WIDER : won < UNTRUE * promised ? NARROWER : 1;
  }
  return { point: here, slopes: pieces };
}
/** A bend that was met shows best from a little nearer. */
const TURNED = 0.8;

type Known = Slopes & { readonly piece: string };
/** The newest first. */
const withPiece = (pieces: readonly Known[], met: Known): Known[] => [met, ...pieces.filter(({ piece }) => piece !== met.piece)].slice(0, PIECES);

function windowAbout(axes: readonly Axis[], here: SearchPoint, share: number): Window {
  return axes.map(({ low, high }, i) => {
    const reach = Math.max(NARROWEST, share * (high - low)), at = here[i]!;
    return { from: Math.min(at, Math.max(low, at - reach)), to: Math.max(at, Math.min(high, at + reach)) };
  });
}

/** A point past a limit, led back by the slopes it was found with. */
function* ledBack(task: Task, pieces: readonly Known[], trial: SearchPoint, window: Window): Looking<SearchPoint> {
  yield trial;
  const seen = task.look(trial);
  if (!seen || task.bounds.every((bound) => pastBy(seen, bound) === 0)) return trial;
  const again = movedTo(pieces, trial, seen), back = linearBest(task, again, window, ON_THE_WAY);
  yield back;
  return meritOf(task, back, ON_THE_WAY) < meritOf(task, trial, ON_THE_WAY) ? back : trial;
}

/** The same slopes through what was seen at another point. */
export function movedTo(slopes: readonly Slopes[], at: SearchPoint, seen: Seen): Slopes[] {
  const [own, ...others] = slopes;
  return [{ at, figures: Object.fromEntries(Object.entries(own!.figures).map(([of, figure]) => [of, { ...figure, value: seen.figures[of]! }])) }, ...others];
}

/** How much of a window is stepped aside to see a slope. */
const ASIDE = 0.1;

/** Slopes about a point by steps aside, on a side that the same piece governs where there is one. */
function* slopesAt(task: Task, at: SearchPoint, window: Window): Looking<Known | undefined> {
  const seen = task.look(at);
  if (!seen) return undefined;
  const asides: { readonly by: number; readonly seen: Seen }[] = [];
  for (const [i, { low, high }] of task.axes.entries()) {
    const step = Math.max(NARROWEST, ASIDE * (window[i]!.to - window[i]!.from));
    const found: { readonly by: number; readonly seen: Seen }[] = [];
    for (const wanted of [step, -step]) {
      const to = Math.min(high, Math.max(low, at[i]! + wanted)), by = to - at[i]!, point = at.map((one, k) => (k === i ? to : one));
      if (Math.abs(by) < step / 2 || found.some(({ seen: { piece } }) => piece === seen.piece)) continue;
      yield point;
      const aside = task.look(point);
      if (aside) found.push({ by, seen: aside });
    }
    asides.push(found.find((one) => one.seen.piece === seen.piece) ?? found[0] ?? { by: 1, seen });
  }
  const figures = Object.fromEntries(Object.entries(seen.figures).map(([of, value]) =>
    [of, { value, slopes: asides.map(({ by, seen: aside }) => (aside.figures[of]! - value) / by) }]));
  return { at, figures, piece: seen.piece };
}

/** What a point would come to if the slopes were true. */
function guessed(task: Task, slopes: readonly Slopes[], point: SearchPoint): number {
  const valueOf = (of: string, { at, figures }: Slopes): number => figures[of]!.slopes.reduce((sum, slope, i) => sum + slope * (point[i]! - at[i]!), figures[of]!.value);
  const figures = Object.fromEntries(Object.keys(slopes[0]!.figures).map((of) =>
    [of, task.greatestOf.has(of) ? Math.max(...slopes.map((one) => valueOf(of, one))) : valueOf(of, slopes[0]!)]));
  return meritOf({ ...task, look: () => ({ figures, piece: '' }) }, point, ON_THE_WAY);
}
