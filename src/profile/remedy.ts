import type { Tapers } from '../fitting/fitting.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import { Infeasible, type Change, type Mendable, type Remedy } from './infeasible.ts';
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

const TENTH: Mm = 0.1;

/** Undefined where the order does not use the measure. */
function spanOf({ last, order }: RockerCase, measure: Mendable): Span | undefined {
  const { toe } = order, tenth = degrees(0.1);
  switch (measure) {
    case 'pitch': return last.heights ? undefined : { now: last.pitch, least: 0, most: 52, step: TENTH };
    case 'apexX': return { now: order.apexX, least: 0.4 * last.length, most: 0.9 * last.length, step: last.length / 1000 };
    case 'standingFlat': return { now: order.standingFlat, least: 0, most: 60, step: TENTH };
    case 'strike': return { now: order.strike, least: degrees(5), most: degrees(40), step: tenth };
    case 'toe.radius': return toe.rule === 'given' ? { now: toe.radius!, least: 10, most: 5000, step: TENTH } : undefined;
    case 'toe.toeSpring': return toe.rule === 'for-toe-spring' ? { now: toe.toeSpring!, least: 0, most: 120, step: TENTH } : undefined;
    case 'toe.toeOff': return toe.rule === 'for-toe-off' ? { now: toe.toeOff!, least: degrees(5), most: degrees(80), step: tenth } : undefined;
    case 'toe.endAngle': return { now: toe.endAngle ?? degrees(45), least: toe.rule === 'for-toe-off' ? toe.toeOff! : degrees(1), most: degrees(60), step: tenth };
    case 'taper': return { now: Math.max(...Object.values(order.taper)), least: 0, most: Math.max(...Object.values(order.taper)), step: tenth };
  }
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
  try { make(given); return undefined; }
  catch (error) {
    if (error instanceof Infeasible) return error;
    throw error;
  }
}

/** What a maker made, or what keeps it from being made and how to mend it. */
export type Making<T> = { readonly ok: true; readonly made: T } | { readonly ok: false; readonly trouble: Infeasible; readonly remedies: Generator<Remedy> };

export function tryMaking<T>(given: RockerCase, make: Maker<T>): Making<T> {
  try { return { ok: true, made: make(given) }; }
  catch (error) {
    if (!(error instanceof Infeasible)) throw error;
    return { ok: false, trouble: error, remedies: remediesFor(given, error, make) };
  }
}

const PROBES = 24;

/** Looks outward on both sides of the value now, then closes in on the edge of what works, in whole steps of the sheet. */
function nearestThatWorks(span: Span, works: (value: number) => boolean): number | undefined {
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
