import type { Fitting, Targets } from '../fitting/fitting.ts';
import { otherSide, type Side } from '../fitting/words.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import { standsHigherBy } from '../pair/level.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { isRockerFitting, rockerCase, type RockerFitting } from '../profile/fromFitting.ts';
import type { RockerCase } from '../profile/rocker.ts';
import type { Closeness } from '../profile/thinnest.ts';
import { ROLL_TOE_OFF } from '../roll/gait.ts';
import { seatOf, soleFrom } from '../solid/fromRocker.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { boundOf, limitsOf, termsOf, type Limit, type Reference } from './asked.ts';
import { freedomsOf, type Free } from './freedoms.ts';
import { rockerOutcome, type Beside, type RockerOutcome } from './outcome.ts';
import type { Axis, Bound, SearchPoint, Task } from './task.ts';

type Look = (point: SearchPoint) => Pick<RockerOutcome, 'figures' | 'piece'> | undefined;

/** A shoe with targets, made ready to be searched. */
export interface Sought {
  readonly side: Side;
  readonly shoe: RockerFitting;
  readonly targets: Targets;
  readonly limits: readonly Limit[];
  /** The shoe as it is ordered. */
  readonly given: RockerCase;
  readonly ordered: RockerOutcome | undefined;
  readonly asked: Reference;
  readonly free: readonly Free[];
  readonly axes: readonly Axis[];
  readonly look: Look;
  readonly glance: Look;
  readonly shapeAt: (point: SearchPoint) => SoleShape | undefined;
  /** The order with the values of a point put in. */
  readonly caseAt: (point: SearchPoint) => RockerCase;
}

/** The whole way along a span costs as much as two hundredths of a degree: of two shoes alike the one nearer to the order is taken. */
const DEAR = 0.02;

/** @returns undefined where the side has no rocker with targets */
export function soughtOn(fitting: Fitting, side: Side, weigh?: Beside['weigh']): Sought | undefined {
  const shoe = fitting.shoes[side], targets = shoe?.order.kind === 'rocker' ? shoe.order.targets : undefined;
  if (!shoe || !targets || !isRockerFitting(shoe)) return undefined;
  const level = levelSeat(fitting, side), beside: Beside = { ...(weigh ? { weigh } : {}), ...(level === undefined ? {} : { levelSeat: level.seat }) };
  const given = heldUp(rockerCase(shoe), level), ordered = rockerOutcome(given, beside), all = freedomsOf(shoe, given, ordered?.rocker, fitting.units);
  const free = all.filter(({ least, most, step }) => Math.ceil(least / step - SAME) <= Math.floor(most / step + SAME)), axes = free.map(axisOf);
  const caseAt = (point: SearchPoint): RockerCase => free.reduce((made, one, i) => (point[i] === axes[i]!.ordered ? made : one.put(made, typedAt(one, point[i]!))), given);
  const at = (point: SearchPoint, closeness?: Closeness): RockerOutcome | undefined => rockerOutcome(caseAt(point), beside, closeness);
  const look = remembered((point) => at(point)), glance = remembered((point) => at(point, 'glance'));
  return { side, shoe, targets, limits: limitsOf(targets), given, ordered, asked: referenceOf(shoe, given, targets, ordered), free, axes, look, glance, caseAt, shapeAt: (point) => at(point)?.shape };
}

/** Each point is worked out once, and only its figures are kept. */
function remembered(work: (point: SearchPoint) => RockerOutcome | undefined): Look {
  const known = new Map<string, ReturnType<Look>>();
  return (point) => {
    const name = point.join(' ');
    if (!known.has(name)) { const found = work(point); known.set(name, found && { figures: found.figures, piece: found.piece }); }
    return known.get(name);
  };
}

/** Room for the rounding of a change of unit. */
const SAME = 1e-6;

/** What a place on an axis is typed as, in the unit of the sheet: a whole step as it is written there. */
export const typedAt = ({ step, digits }: Free, at: number): number => (Number.isInteger(at) ? Number((at * step).toFixed(digits)) : at * step);

function axisOf({ least, most, step, ordered }: Free): Axis {
  const low = Math.ceil(least / step - SAME), high = Math.floor(most / step + SAME), at = ordered / step, whole = Math.round(at);
  return { low, high, ordered: Math.abs(at - whole) < SAME ? whole : at, dear: DEAR / Math.max(1, high - low) };
}

/** Where the order has no shape of its own to be held against, the toe-off that the client was seen to reach, or that people walking freely reach. */
function referenceOf({ foot }: RockerFitting, { order }: RockerCase, { tipWanted: tip }: Targets, ordered: RockerOutcome | undefined): Reference {
  if (ordered) {
    const { strike, toeOff, dropStrike, dropToeOff } = ordered.figures;
    return { strike, toeOff, dropStrike, dropToeOff, flat: order.standingFlat, tip };
  }
  return { strike: inDegrees(order.strike), toeOff: inDegrees(foot.toeOffAngle?.value ?? ROLL_TOE_OFF), dropStrike: Infinity, dropToeOff: Infinity, flat: order.standingFlat, tip };
}

/** Where the foot would stand level with the other shoe's; `holds` where the other is a rocker too, whose height stays as it is. */
interface Level { readonly seat: Mm; readonly holds: boolean }

function levelSeat({ shoes, wearer: { legDifference } }: Fitting, side: Side): Level | undefined {
  const other = shoes[otherSide(side)], lower = other && standsHigherBy(other.side, legDifference);
  if (!other || lower === undefined) return undefined;
  if (other.order.kind === 'match') return { seat: other.order.seatHeightNow.value - lower, holds: false };
  const sole = isRockerFitting(other) ? orInfeasible(() => soleFrom(rockerCase(other))) : undefined;
  if (!sole || sole instanceof Infeasible) return undefined;
  return { seat: seatOf(sole) + sole.shape.last.insole - lower, holds: other.order.targets === undefined };
}

/** A rocker is built up to the other one where that stands higher, whatever its own order would do with less. One that has targets too may yet come down. */
function heldUp(given: RockerCase, level: Level | undefined): RockerCase {
  const { order, last } = given, height = level?.holds ? level.seat - last.insole : undefined;
  if (height === undefined || !(height > (order.seatAtLeast?.height ?? 0))) return given;
  return { ...given, order: { ...order, seatAtLeast: { height, by: 'other shoe' } } };
}

/** A shoe stays on its feet: a changed pitch leans the leg no further out of what is good than the order does. Degrees, common practice. */
const LEAN = [2, 6] as const;

function leanBounds({ free, ordered }: Sought): Bound[] {
  const lean = ordered?.figures.lean;
  if (lean === undefined || !free.some(({ name }) => name === 'pitch')) return [];
  return [{ of: 'lean', sign: -1, limit: Math.min(LEAN[0], lean), scale: 1 }, { of: 'lean', sign: 1, limit: Math.max(LEAN[1], lean), scale: 1 }];
}

/** Heights that hang on the build, which is the greatest that any zone of the sole asks for. */
const GREATEST: ReadonlySet<string> = new Set(['seatHeight', 'ballHeight', 'ballThickness', 'tip', 'weight']);

/** The search for the least loss within limits; or, where terms are handed in, for the least of those. */
export function taskOf(sought: Sought, limits: readonly Limit[] = sought.limits, terms = termsOf(sought.asked)): Task {
  return { axes: sought.axes, look: sought.look, glance: sought.glance, terms, bounds: [...limits.map(boundOf), ...leanBounds(sought)], greatestOf: GREATEST };
}
