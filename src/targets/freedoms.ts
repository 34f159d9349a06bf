import { inTableUnit } from '../fitting/convert.ts';
import type { Fitting, OpenSpan } from '../fitting/fitting.ts';
import { rangeOf, type RangeName } from '../fitting/ranges.ts';
import { SPAN_OF } from '../fitting/targetRules.ts';
import { FREEDOMS, type Freedom } from '../fitting/words.ts';
import { degrees, MM_PER_INCH } from '../geometry/units.ts';
import { apexBehindJoint } from '../prescription/order.ts';
import type { RockerFitting } from '../profile/fromFitting.ts';
import type { Rocker, RockerCase } from '../profile/rocker.ts';

/**
 * A measure that may be changed. Its values are counted as they are typed into the sheet, in its unit and in whole steps,
 * so that what is found is what will be read.
 */
export interface Free {
  readonly name: Freedom;
  /** Where it stands on the sheet, without the side. */
  readonly path: string;
  readonly unit: 'mm' | 'in' | '°' | '%';
  readonly step: number;
  readonly digits: number;
  /** As typed: what it is now, and what it may become. */
  readonly ordered: number;
  readonly least: number;
  readonly most: number;
  /** Puts a typed value in. */
  readonly put: (given: RockerCase, typed: number) => RockerCase;
}

/** What a freedom is of: where it stands, what it is now, how far it usually may go; inside units (mm, radians, shares of one). */
interface Kind {
  readonly path: string;
  readonly range: RangeName;
  readonly ordered: (given: RockerCase, solved: Rocker | undefined) => number;
  readonly usual: (given: RockerCase, shoe: RockerFitting) => readonly [least: number, most: number];
  readonly put: (given: RockerCase, value: number) => RockerCase;
}

/** Common practice: where apexes are set; the shortest strike angle anyone walks with; last springs that still look like a shoe. */
const APEX = [0.52, 0.78] as const, LEAST_STRIKE = degrees(10), MOST_SPRING = 20;
/** A last is altered by this much without another being made; a prosthetic foot is thrown off its alignment by more. Common practice. */
const PITCH_BY = 3;

const inOrder = (given: RockerCase, changes: Partial<RockerCase['order']>): RockerCase => ({ ...given, order: { ...given.order, ...changes } });
const inLast = (given: RockerCase, changes: Partial<RockerCase['last']>): RockerCase => ({ ...given, last: { ...given.last, ...changes } });

const KINDS: Readonly<Record<Freedom, Kind>> = {
  apex: {
    path: 'order.apex', range: 'order.apex', ordered: ({ order, last }) => order.apexX / last.length,
    usual: ({ last, order }, { foot }) => [APEX[0], foot.joint === 'toe joint' ? Math.min(APEX[1], Math.max(order.apexX, apexBehindJoint(last, order.crestAngle)) / last.length) : APEX[1]],
    put: (given, share) => inOrder(given, { apexX: share * given.last.length, apexByDefault: false }),
  },
  'toe radius': {
    path: 'order.toe.radius', range: 'order.toe.radius', ordered: (given, solved) => solved?.toeArc.radius ?? given.order.toe.radius ?? toToe(given),
    usual: (given) => [given.foot.pivotHeight + given.last.insole, 2 * toToe(given)],
    put: (given, radius) => inOrder(given, { toe: { rule: 'given', radius, ...(given.order.toe.endAngle === undefined ? {} : { endAngle: given.order.toe.endAngle }) } }),
  },
  'standing flat': {
    path: 'order.standingFlat', range: 'order.standingFlat', ordered: ({ order }) => order.standingFlat,
    usual: ({ order }) => [0, order.standingFlat], put: (given, standingFlat) => inOrder(given, { standingFlat }),
  },
  'strike angle': {
    path: 'foot.strikeAngle', range: 'foot.strikeAngle', ordered: ({ order }) => order.strike,
    usual: ({ order }) => [Math.min(LEAST_STRIKE, order.strike), order.strike], put: (given, strike) => inOrder(given, { strike }),
  },
  pitch: {
    path: 'last.pitch', range: 'last.pitch', ordered: ({ last }) => last.pitch,
    usual: ({ last: { pitch } }) => [Math.max(0, pitch - PITCH_BY), pitch + PITCH_BY], put: (given, pitch) => inLast(given, { pitch }),
  },
  'last spring': {
    path: 'last.toeSpring', range: 'last.toeSpring', ordered: ({ last }) => last.toeSpring,
    usual: ({ last: { toeSpring } }) => [toeSpring, Math.max(MOST_SPRING, toeSpring)], put: (given, toeSpring) => inLast(given, { toeSpring }),
  },
};

/** About as far as the ankle pivot is from the toe, before the sole is under it. */
const toToe = ({ foot, last }: RockerCase): number => Math.hypot(last.length - foot.pivotForward, foot.pivotHeight + last.insole);

/** Steps in which a sheet is written by hand: a tenth; of an inch five thousandths. */
const TENTH = { step: 0.1, digits: 1 }, INCH = { step: 0.005, digits: 3 };

/** What a shoe's targets leave free, in the order of the list of words. @param solved the shoe as it is ordered, where it has a shape */
export function freedomsOf(shoe: RockerFitting, given: RockerCase, solved: Rocker | undefined, units: Fitting['units']): Free[] {
  const { free = [], spans = {} } = shoe.order.targets ?? {};
  return FREEDOMS.filter((name) => free.includes(name))
    .map((name) => freeOf(name, { shoe, given, solved, units, span: spans[SPAN_OF[name]] ?? {} }));
}

interface Setting { readonly shoe: RockerFitting; readonly given: RockerCase; readonly solved: Rocker | undefined; readonly units: Fitting['units']; readonly span: OpenSpan }

function freeOf(name: Freedom, { shoe, given, solved, units, span }: Setting): Free {
  const { path, range, ordered, usual, put } = KINDS[name], { unit, limits } = rangeOf(range), inches = unit === 'mm' && units === 'in';
  const typed = (value: number): number => (inches ? value / MM_PER_INCH : inTableUnit(value, unit));
  const inside = (value: number): number => (inches ? value * MM_PER_INCH : unit === 'deg' ? degrees(value) : unit === '%' ? value / 100 : value);
  const [least, most] = usual(given, shoe), [lowest, highest] = limits, inSheet = (limit: number): number => (inches ? limit / MM_PER_INCH : limit);
  return {
    name, path, ...(inches ? INCH : TENTH), unit: inches ? 'in' : unit === 'deg' ? '°' : unit === '%' ? '%' : 'mm', ordered: typed(ordered(given, solved)),
    least: Math.max(inSheet(lowest), typed(span.least ?? Math.min(least, span.most ?? least))), most: Math.min(inSheet(highest), typed(span.most ?? Math.max(most, span.least ?? most))),
    put: (one, value) => put(one, inside(value)),
  };
}
