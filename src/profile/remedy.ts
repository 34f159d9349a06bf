import type { Tapers } from '../fitting/fitting.ts';
import { rangeOf, type RangeName } from '../fitting/ranges.ts';
import { degrees, type Rad } from '../geometry/units.ts';
import { Infeasible, orInfeasible, type Change, type Mendable, type Remedy } from './infeasible.ts';
import type { RockerCase } from './rocker.ts';

/** Puts a remedy in. */
export const withRemedy = (given: RockerCase, remedy: Remedy): RockerCase => remedy.reduce(withChange, given);

function withChange(given: RockerCase, { measure, value }: Change): RockerCase {
  const { last, order } = given;
  switch (measure) {
    case 'pitch': return { ...given, last: { ...last, pitch: value } };
    case 'apexX': return { ...given, order: { ...order, apexX: value, apexByDefault: false } };
    case 'standingFlat': return { ...given, order: { ...order, standingFlat: value } };
    case 'strike': return { ...given, order: { ...order, strike: value } };
    case 'toe.radius': return { ...given, order: { ...order, toe: { ...order.toe, radius: value } } };
    case 'toe.toeSpring': return { ...given, order: { ...order, toe: { ...order.toe, toeSpring: value } } };
    case 'toe.toeOff': return { ...given, order: { ...order, toe: { ...order.toe, toeOff: value } } };
    case 'toe.endAngle': return { ...given, order: { ...order, toe: { ...order.toe, endAngle: value } } };
    case 'taper': return { ...given, order: { ...order, taper: notAbove(order.taper, value) } };
  }
}

const notAbove = (taper: Tapers, most: Rad): Tapers => ({
  heelInner: Math.min(taper.heelInner, most), heelOuter: Math.min(taper.heelOuter, most),
  foreInner: Math.min(taper.foreInner, most), foreOuter: Math.min(taper.foreOuter, most),
});

/** What a sheet may hold for a measure: the range tried, and the step it is written in. */
interface Span { readonly now: number; readonly least: number; readonly most: number; readonly step: number }

/** The row of the range table that holds each measure on a sheet. */
export const RANGE_OF = {
  apexX: 'order.apex', standingFlat: 'order.standingFlat', pitch: 'last.pitch', strike: 'foot.strikeAngle', taper: 'order.taper.heelInner',
  'toe.radius': 'order.toe.radius', 'toe.toeSpring': 'order.toe.toeSpring', 'toe.toeOff': 'order.toe.toeOffAngle', 'toe.endAngle': 'order.toe.endAngle',
} as const satisfies Record<Mendable, RangeName>;

/** An end angle is looked for from here where none was asked for. */
const USUAL_END: Rad = degrees(45);

/** Undefined where the order does not use the measure. */
function nowOf({ last, order }: RockerCase, measure: Mendable): number | undefined {
  const { toe } = order;
  switch (measure) {
    case 'pitch': return last.heights ? undefined : last.pitch;
    case 'apexX': return order.apexX;
    case 'standingFlat': return order.standingFlat;
    case 'strike': return order.strike;
    case 'toe.radius': return toe.rule === 'given' ? toe.radius : undefined;
    case 'toe.toeSpring': return toe.rule === 'for-toe-spring' ? toe.toeSpring : undefined;
    case 'toe.toeOff': return toe.rule === 'for-toe-off' ? toe.toeOff : undefined;
    case 'toe.endAngle': return toe.endAngle ?? USUAL_END;
    case 'taper': return Math.max(...Object.values(order.taper));
  }
}

/** Steps of a tenth in the unit of the sheet, within what the sheet takes. */
function spanOf(given: RockerCase, measure: Mendable): Span | undefined {
  const now = nowOf(given, measure), { limits: [least, most], unit } = rangeOf(RANGE_OF[measure]), { last: { length }, order: { toe } } = given;
  if (now === undefined) return undefined;
  const one = measure === 'apexX' ? length / 100 : unit === 'deg' ? degrees(1) : 1, span = { now, least: least * one, most: most * one, step: one / 10 };
  if (measure === 'taper') return { ...span, least: 0, most: now };
  return measure === 'toe.endAngle' && toe.rule === 'for-toe-off' ? { ...span, least: toe.toeOff! } : span;
}

/** Makes what a case is wanted for. @throws Infeasible */
type Maker<T> = (given: RockerCase) => T;

/**
 * The values nearest to what was asked that give a design, one for each measure that can mend it alone, the one to
 * blame first; each was put in and made. Where no single measure mends it, the first pair that does.
 */
export function* remediesFor<T>(given: RockerCase, trouble: Infeasible, make: Maker<T>): Generator<Remedy> {
  let found = false;
  for (const measure of measuresToTry(trouble)) {
    const change = nearestChange(given, measure, (changed) => troubleIn(make, changed) === undefined);
    if (change) { found = true; yield [change]; }
  }
  if (!found) yield* pairFor(given, trouble, make);
}

const measuresToTry = ({ toTry }: Infeasible): readonly Mendable[] => [...new Set<Mendable>([...toTry, 'apexX', 'pitch', 'standingFlat'])];

/** Two things wrong at once: the first is mended until another trouble shows, then that one. */
function* pairFor<T>(given: RockerCase, trouble: Infeasible, make: Maker<T>): Generator<Remedy> {
  for (const measure of trouble.toTry) {
    const first = nearestChange(given, measure, (changed) => troubleIn(make, changed)?.trouble !== trouble.trouble);
    const half = first && withRemedy(given, [first]), next = half && troubleIn(make, half);
    for (const second of next ? measuresToTry(next) : []) {
      const change = nearestChange(half!, second, (changed) => troubleIn(make, changed) === undefined);
      if (change) { yield [first!, change]; return; }
    }
  }
}

function nearestChange(given: RockerCase, measure: Mendable, works: (changed: RockerCase) => boolean): Change | undefined {
  const span = spanOf(given, measure);
  const value = span && nearestThatWorks(span, (tried) => works(withRemedy(given, [{ measure, value: tried }])));
  return value === undefined ? undefined : { measure, value };
}

function troubleIn<T>(make: Maker<T>, given: RockerCase): Infeasible | undefined {
  const made = orInfeasible(() => make(given));
  return made instanceof Infeasible ? made : undefined;
}

/** What a maker made, or what keeps it from being made and how to mend it. */
export type Making<T> = { readonly ok: true; readonly made: T } | { readonly ok: false; readonly trouble: Infeasible; readonly remedies: Generator<Remedy> };

export function tryMaking<T>(given: RockerCase, make: Maker<T>): Making<T> {
  const made = orInfeasible(() => make(given));
  return made instanceof Infeasible ? { ok: false, trouble: made, remedies: remediesFor(given, made, make) } : { ok: true, made };
}

const PROBES = 24;

/** Looks outward on both sides of the value now, then closes in on the edge of what works, in whole steps of the sheet. */
function nearestThatWorks(span: Span, works: (value: number) => boolean): number | undefined {
  // What is not on the sheet, like the end of the toe arc, may do at the value it is looked for from.
  if (works(span.now)) return span.now;
  const upward = edgeTowards(span, span.most, works), downward = edgeTowards(span, span.least, works);
  if (upward === undefined || downward === undefined) return upward ?? downward;
  return Math.abs(upward - span.now) <= Math.abs(downward - span.now) ? upward : downward;
}

function edgeTowards({ now, step }: Span, end: number, works: (value: number) => boolean): number | undefined {
  const sign = Math.sign(end - now), room = Math.floor(Math.abs(end - now) / step);
  if (room < 1) return undefined;
  const base = sign > 0 ? Math.floor(now / step + 1e-9) : Math.ceil(now / step - 1e-9);
  const at = (steps: number): number => (base + sign * steps) * step;
  let bad = 0, good = 0;
  for (let i = 1; i <= PROBES && good === 0; i++) {
    const steps = Math.max(i, Math.round(room * (i / PROBES) ** 2));
    if (steps > room) break;
    if (works(at(steps))) good = steps; else bad = steps;
  }
  if (good === 0) return undefined;
  while (good - bad > 1) {
    const middle = (good + bad) >> 1;
    if (works(at(middle))) good = middle; else bad = middle;
  }
  return at(good);
}
