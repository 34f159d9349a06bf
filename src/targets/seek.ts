import type { Fitting } from '../fitting/fitting.ts';
import type { Freedom, Side } from '../fitting/words.ts';
import { lossAgainst, type Limit, type LimitName, type Loss } from './asked.ts';
import { blamed, type Blame } from './blame.ts';
import type { Looking } from './descend.ts';
import { keptTo, weighed, type Weighed } from './kept.ts';
import type { LookedAt, RockerOutcome } from './outcome.ts';
import { estimatedOf } from './restsOnEstimates.ts';
import { typedAt, type Sought } from './sought.ts';
import type { SearchPoint } from './task.ts';
import { trueWeight } from './weigh.ts';

/** A measure that was free: what it is and what it becomes, in the unit of the sheet, where it stands there. */
export interface ValueToTake { readonly name: Freedom; readonly path: string; readonly unit: string; readonly digits: number; readonly ordered: number; readonly value: number; readonly changed: boolean }

/** A limit with what the shoe comes to. It bites where next to nothing is to spare. */
export interface LimitKept { readonly name: LimitName; readonly of: LookedAt; readonly label: string; readonly unit: 'mm' | 'g'; readonly limit: number; readonly reached: number; readonly bites: boolean }

/** A shoe within its limits: what to change, what comes of it, and what it loses. */
export interface Solution {
  readonly values: readonly ValueToTake[];
  readonly figures: RockerOutcome['figures'];
  readonly limits: readonly LimitKept[];
  readonly loss: Loss;
}

/** What targets come to: the best shoe within the limits, or which limit is to blame that there is none. `ordered` is the shoe without limits. */
export type Answer = Found & Progress;
/** `estimated`: what rests on measures that were not taken; `heldUp`: the other shoe, as it is ordered, keeps this one from standing lower. */
type Found = { readonly side: Side; readonly ordered: RockerOutcome['figures'] | undefined; readonly estimated: readonly LookedAt[]; readonly heldUp: boolean }
  & ({ readonly ok: true; readonly best: Solution } | { readonly ok: false; readonly blame: readonly Blame[] });

/** How many shoes have been looked at so far, and what share of the way that is, where it is known. */
export interface Progress { readonly looked: number; readonly share?: number }
export type Seeking<Result> = Generator<Progress, Result>;

/**
 * The rocker of the least loss that keeps to the targets of a side, each figure solved and not guessed. Tells of every shoe
 * it looks at, so that whoever runs it can show how it goes, and stop. Same fitting, same answer.
 * @returns undefined where the side has no rocker with targets
 */
export function* seek(fitting: Fitting, side: Side): Seeking<Answer | undefined> {
  const ready = weighed(fitting, side);
  if (!ready) return undefined;
  return yield* tellingHowMany(answerOf(fitting, ready));
}

/** Passes a search on, telling at each shoe how many have been looked at. @param share how far it has come by now */
export function* tellingHowMany<Result extends object>(looking: Looking<Result>, share?: () => number): Seeking<Result & Progress> {
  for (let looked = 0; ; looked++) {
    const { done, value } = looking.next();
    if (done) return { ...value, looked };
    yield share ? { looked, share: share() } : { looked };
  }
}

function* answerOf(fitting: Fitting, ready: Weighed): Looking<Found> {
  const { sought } = ready;
  const weight = sought.ordered && sought.targets.weightAtMost !== undefined ? { weight: trueWeight(sought.given, fitting.making.chordGap) } : {};
  const common = {
    side: sought.side, ordered: sought.ordered && { ...sought.ordered.figures, ...weight },
    estimated: estimatedOf(fitting, sought.shoe, sought.given), heldUp: sought.given.order.seatAtLeast?.by === 'other shoe',
  };
  const found = yield* keptTo(ready, sought.limits);
  return found.kept && found.point ? { ...common, ok: true, best: solutionAt(fitting, found.sought, found.point) } : { ...common, ok: false, blame: yield* blamed({ ...ready, sought: found.sought }, found.point) };
}

/** Nearer to a limit than this, in its own unit, and it bites: a step of the sheet moves a height by less. */
const BITES = { mm: 0.15, g: 1.5 };

export function solutionAt(fitting: Fitting, sought: Sought, point: SearchPoint, limits: readonly Limit[] = sought.limits): Solution {
  const { free, axes, asked, targets } = sought, given = sought.caseAt(point), seen = sought.look(point)!.figures;
  const figures = targets.weightAtMost === undefined ? seen : { ...seen, weight: trueWeight(given, fitting.making.chordGap) };
  const values = free.map((one, i): ValueToTake => {
    const { name, path, unit, digits, ordered } = one, changed = point[i] !== axes[i]!.ordered;
    return { name, path, unit, digits, ordered, value: changed ? typedAt(one, point[i]!) : ordered, changed };
  });
  return { values, figures, loss: lossAgainst(asked, figures), limits: limits.map((limit) => keptBy(limit, figures)) };
}

function keptBy({ name, label, unit, limit, of, sign }: Limit, figures: RockerOutcome['figures']): LimitKept {
  const reached = figures[of];
  return { name, of, label, unit, limit, reached, bites: sign * (limit - reached) < BITES[unit] };
}
