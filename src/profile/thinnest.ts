import { clamp, lowestBetween } from '../geometry/solve.ts';
import { pointAlong, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Minima } from '../fitting/fitting.ts';
import type { Last } from '../last/last.ts';
import { middleY } from '../last/outline.ts';
import type { UpperFace } from '../last/upperFace.ts';
import { heightsOf, type GroundFace } from './groundFace.ts';
import { planPoint, rollX, rollY, type RollLine } from './rollLine.ts';

/** The zones a maker speaks of when a sole is thin. */
export type Zone = 'edge behind the strike point' | 'seat' | 'waist' | 'tread' | 'tip';

/** Where the sole is nearest to its minimum. */
export interface Thinnest {
  readonly at: Point;
  readonly zone: Zone;
  readonly thickness: Mm;
  /** The least thickness here: what the zone asks, or more where stiffener and outsole would leave too little foam. */
  readonly minimum: Mm;
  readonly by: 'thickness asked' | 'foam that must stay';
  /** Thickness less the minimum; negative where the sole is too thin. */
  readonly spare: Mm;
}

/** What is asked of the thickness: least ones by zone, and room for what is no foam, the stiffener and the outsole under `inner`. */
export interface Asked { readonly minima: Minima; readonly stiffener: Mm; readonly inner: GroundFace }

/** Less foam than this between stiffener and outsole can be neither cut nor glued. Common practice of the trade. */
export const LEAST_FOAM: Mm = 0.5;
/** Foam thinner than this tears off between stiffener and outsole. Common practice of the trade. */
export const FOAM_WANTED: Mm = 2;
/** Foam wanted under the ball, which bears most. Common practice of the trade. */
export const FOAM_AT_BALL: Mm = 6;

/** How closely a sole is looked over: to the last digit, or quickly, by whoever only looks for where to look. */
export type Closeness = 'exact' | 'glance';

/** Where in the plan thickness is judged. */
interface Spot {
  readonly at: Point;
  /** Along the walking line. */
  readonly along: Mm;
  readonly upper: Mm;
}

/** A spot by the outline: how far round the edge line and how far out to it from the middle. */
export interface Place extends Spot { readonly w: number; readonly ring: number }

/** The plan over which thickness counts, sampled once: it does not change with the build. */
export interface Plan {
  readonly last: Last;
  readonly upper: UpperFace;
  readonly edge: Path;
  readonly line: RollLine;
  /** Evenly round each ring, ring by ring. */
  readonly places: readonly Place[];
  /** Where the seat's minimum gives way to the waist's, the waist's to the tread's, and the upper face may turn from one reading to the next. */
  readonly borders: readonly Place[];
}

/** Samples round the edge line, about 5 mm apart on a common sole, and with the two poles. */
const EVENLY = 144, ROUND = EVENLY + 2;
/**
 * With a plain upper face the thickness at any x is least on the edge, because the ground face is hollow side up:
 * only a dished one can be thinnest inside.
 */
const RINGS_PLAIN = [1], RINGS_DISHED = [0, 0.5, 1];

export function planOf(last: Last, upper: UpperFace, edge: Path, line: RollLine): Plan {
  const known = plans.get(edge);
  if (known?.last === last && known.upper === upper && known.line === line) return known;
  const plan = samplePlan(last, upper, edge, line);
  plans.set(edge, plan);
  return plan;
}

/** The last plan sampled within each edge: the foam is judged over the same places as the sole. */
const plans = new WeakMap<Path, Plan>();

function samplePlan(last: Last, upper: UpperFace, edge: Path, line: RollLine): Plan {
  const rings = last.camber === 0 ? RINGS_PLAIN : RINGS_DISHED;
  const bare = { last, upper, edge, line };
  const round = rimOf(edge, line), places = rings.flatMap((ring) => round.map((rim) => withUpper(bare, ring === 1 ? rim : withinRim(bare, rim.w, rim.at, ring))));
  return { ...bare, places, borders: bordersOver(bare, places) };
}

/** Where zones meet, and where a measured underside turns up sharply. */
export const bordersOver = (plan: BarePlan, places: readonly Lying[]): Place[] =>
  [plan.last.seatLength, plan.last.tread, ...hollowsOf(plan.last)].flatMap((border) => crossings(plan, places, ([x]) => x - border));

/** Readings at which a measured underside turns up sharply: its lowest places may be narrow there. */
function hollowsOf({ heights = [] }: Last): Mm[] {
  const slope = (i: number): number => (heights[i + 1]![1] - heights[i]![1]) / (heights[i + 1]![0] - heights[i]![0]);
  return heights.slice(1, -1).flatMap(([x], i) => (slope(i + 1) - slope(i) > SHARP ? [x] : []));
}
/** Change of slope at a reading that places some 5 mm apart would not show. */
const SHARP = 0.2;

/** Evenly round the edge, and the rearmost and foremost place themselves: a zone may end between one of them and its neighbours. */
export function rimOf(edge: Path, line: RollLine): readonly Lying[] {
  const known = rims.get(edge);
  if (known?.line.apexX === line.apexX && known.line.turn === line.turn) return known.rim;
  const rim = lookRound(edge, line);
  rims.set(edge, { line, rim });
  return rim;
}

/** The last look round each edge: over one outline many a last is tried that differs only in its heights. */
const rims = new WeakMap<Path, { readonly line: RollLine; readonly rim: readonly Lying[] }>();

function lookRound(edge: Path, line: RollLine): readonly Lying[] {
  const step = edge.length / EVENLY, along = (w: number): Mm => rollX(line, pointAlong(edge, w));
  const rimAt = (w: number): Lying => { const at = pointAlong(edge, w); return { w, ring: 1, at, along: rollX(line, at) }; };
  const even = Array.from({ length: EVENLY }, (_, i) => rimAt(i * step));
  const pole = (sign: 1 | -1): number => {
    const near = even.reduce((best, rim) => (sign * rim.along < sign * best.along ? rim : best)).w;
    const w = lowestBetween((v) => sign * along(v), near - step, near + step, 1e-9);
    return ((w % edge.length) + edge.length) % edge.length;
  };
  return [...even, rimAt(pole(1)), rimAt(pole(-1))].sort((a, b) => a.w - b.w);
}

export type BarePlan = Omit<Plan, 'places' | 'borders'>;
/** A place before it is asked how high the upper face is there. */
export type Lying = Omit<Place, 'upper'>;

const placeAt = (plan: BarePlan, w: number, ring: number): Place => withUpper(plan, lyingAt(plan, w, ring));
const withUpper = ({ upper }: BarePlan, { w, ring, at, along }: Lying): Place => ({ w, ring, at, along, upper: upper(at[0], at[1]) });
const lyingAt = (plan: BarePlan, w: number, ring: number): Lying => withinRim(plan, w, pointAlong(plan.edge, w), ring);

function withinRim({ last, line }: BarePlan, w: number, [x, edgeY]: Point, ring: number): Lying {
  const middle = ring === 1 ? 0 : middleY(last, x), at: Point = [x, middle + (edgeY - middle) * ring];
  return { w, ring, at, along: rollX(line, at) };
}

/** Where the value changes sign between two samples: the nearest places on both sides, for the greater minimum of two zones holds up to its very end. */
function crossings(plan: BarePlan, places: readonly Lying[], value: (at: Point, along: Mm) => number): Place[] {
  const { edge, line } = plan, below = places.map(({ at, along }) => value(at, along) < 0), found: Place[] = [];
  const valueAt = (w: number, ring: number): number => {
    if (ring !== 1) { const { at, along } = lyingAt(plan, w, ring); return value(at, along); }
    const at = pointAlong(edge, w);
    return value(at, rollX(line, at));
  };
  for (let i = 0; i < places.length; i++) {
    const first = i - (i % ROUND), after = first + ((i + 1) % ROUND);
    if (below[i] === below[after]) continue;
    const { w, ring } = places[i]!, { w: next } = places[after]!;
    let low = w, high = next > w ? next : next + plan.edge.length;
    for (let k = 0; k < 45; k++) {
      const middle = (low + high) / 2;
      if (valueAt(middle, ring) < 0 === below[i]) low = middle; else high = middle;
    }
    found.push(placeAt(plan, low, ring), placeAt(plan, high, ring));
  }
  return found;
}

/** Least thickness asked at a place. Where two zones meet the greater minimum holds. */
export function leastAt(last: Last, minima: Minima, x: Mm, behindStrike: boolean): Mm {
  if (behindStrike) return minima.edge;
  if (x <= last.seatLength) return minima.seat;
  return x < last.tread ? minima.waist : minima.tread + (minima.tip - minima.tread) * towardsTip(last, x);
}

export function zoneAt(last: Last, x: Mm, behindStrike: boolean): Zone {
  if (behindStrike) return 'edge behind the strike point';
  if (x <= last.seatLength) return 'seat';
  return x < last.tread ? 'waist' : towardsTip(last, x) < 0.5 ? 'tread' : 'tip';
}

const towardsTip = ({ tread, length }: Last, x: Mm): number => clamp((x - tread) / (length - tread), 0, 1);

/**
 * The place where the sole is nearest to its minimum (or furthest below it), over the whole plan.
 * @param build height of the tread plane above the ground, mm
 * @param strikeX where the heel arc ends behind, along the walking line
 * @param closeness at a glance only the places sampled are looked at: a valley between two of them is missed by some hundredths
 */
export function thinnest(plan: Plan, face: GroundFace, { minima, stiffener, inner }: Asked, build: Mm, strikeX: Mm, closeness: Closeness = 'exact'): Thinnest {
  const height = heightsOf(face), innerHeight = heightsOf(inner);
  const askedAt = ({ at, along }: Spot): Mm => leastAt(plan.last, minima, at[0], along < strikeX);
  const stackAt = ({ along }: Spot): Mm => stiffener + innerHeight(along) - height(along) + LEAST_FOAM;
  const spareOf = (spot: Spot): Mm =>
    spot.upper + build - height(spot.along) - Math.max(askedAt(spot), stackAt(spot));
  const ends = crossings(plan, plan.places, (_, along) => along - strikeX);
  const spots = closeness === 'glance' ? [...plan.places, ...plan.borders, ...ends] : closely();
  const near = spots.reduce((a, b) => (spareOf(b) < spareOf(a) ? b : a)), least = spareOf(near);
  const asked = askedAt(near), minimum = Math.max(asked, stackAt(near));
  return { at: near.at, zone: zoneAt(plan.last, near.at[0], near.along < strikeX), thickness: least + minimum, minimum, by: minimum > asked ? 'foam that must stay' : 'thickness asked', spare: least };

  function closely(): readonly Spot[] {
    const lowest = lowestOver(plan, spareOf, ends);
    return [...acrossBetween(plan, ends, spareOf, spareOf(lowest) + DEEPER), lowest];
  }
}

/**
 * The lowest spots on the line where the heel arc ends, just behind it and just ahead: under a turned crest the line slants
 * over the plan, and thickness jumps there anywhere between the edges.
 * @param ends where the line crosses the rings, from `crossings`
 * @param within no valley is followed that begins higher than this
 */
function acrossBetween({ upper, line }: Plan, ends: readonly Place[], spareOf: (spot: Spot) => Mm, within: Mm): Spot[] {
  if (line.turn === 0 || ends.length === 0) return [];
  const across = ends.map(({ at }) => rollY(line, at)), from = Math.min(...across), step = (Math.max(...across) - from) / LOOKS;
  return [...new Set(ends.map(({ along }) => along))].flatMap((along): Spot[] => {
    const spareAt = (y: Mm): Mm => spareOf(spot(y)), spot = (y: Mm): Spot => { const at = planPoint(line, along, y); return { at, along, upper: upper(...at) }; };
    const spares = Array.from({ length: LOOKS + 1 }, (_, i) => spareAt(from + i * step)), least = Math.min(...spares), best = spares.indexOf(least);
    return least > within ? [] : [spot(lowestBetween(spareAt, from + Math.max(0, best - 1) * step, from + Math.min(LOOKS, best + 1) * step, FINE))];
  });
}

/** Places looked at along the line: measured heights may make more than one valley under it. */
const LOOKS = 32;

/**
 * The place of the plan where something is least.
 * @param also places to look at besides, where it jumps; like the borders they are left only inwards and outwards, which keeps their x
 */
export function lowestOver(plan: Plan, of: (place: Place) => Mm, also: readonly Place[] = []): Place {
  const step = plan.edge.length / EVENLY, at = (w: number, ring: number): Mm => of(placeAt(plan, w, ring));
  const round = ({ w, ring }: Place): Place => placeAt(plan, lowestBetween((v) => at(v, ring), w - step, w + step, FINE), ring);
  const inAndOut = ({ w, ring }: Place): Place => placeAt(plan, w, lowestBetween((k) => at(w, k), Math.max(0, ring - 0.5), Math.min(1, ring + 0.5), FINE));
  const better = (a: Place, b: Place): Place => (of(b) < of(a) ? b : a);
  const lower = (place: Place, move: (from: Place) => Place): Place => better(place, move(place));
  const starts = [...dips(plan, of), ...plan.borders, ...also];
  if (plan.last.camber === 0) return searched(starts, of, (place) => lower(place, round));
  const down = (place: Place): Place => better(lower(place, inAndOut), [round, inAndOut, round].reduce(lower, place));
  return settled(searched(starts, of, down), of, (place) => [round, inAndOut].reduce(lower, place));
}

/** Along a slanting valley steps round and across go down in stairs: they are taken until none is worth a nanometre. */
function settled(place: Place, of: (place: Place) => Mm, down: (from: Place) => Place): Place {
  let now = place;
  for (let i = 0; i < MOST_STAIRS; i++) {
    const next = down(now);
    if (of(now) - of(next) < 1e-7) return next;
    now = next;
  }
  return now;
}
const MOST_STAIRS = 60;

/** How near a valley's floor is closed in on, as a share of a piece of the edge: heights there differ by less than a nanometre. */
const FINE = 1e-5;

/**
 * A valley's floor lies less than this below the lowest place looked at in it: places are near each other, all arcs wide,
 * and a reading where a measured upper face turns sharply is looked at itself.
 */
const DEEPER: Mm = 1.5;

/** The lowest place down from the starts, followed from the lowest of them on, as long as one may yet reach lower. */
function searched(starts: readonly Place[], of: (place: Place) => Mm, down: (from: Place) => Place): Place {
  const [first, ...others] = starts.map((place) => ({ place, height: of(place) })).sort((a, b) => a.height - b.height);
  let lowest = down(first!.place), least = of(lowest);
  for (const { place, height } of others) {
    if (height > least + DEEPER) break;
    const floor = down(place);
    if (of(floor) < least) { lowest = floor; least = of(floor); }
  }
  return lowest;
}

/**
 * Places no higher than the two beside them on their ring: one at least in every valley wider than the places stand apart.
 * Of a stretch that is level only its ends count, and of a ring level all round one place.
 */
function dips({ places }: Plan, of: (place: Place) => Mm): Place[] {
  const heights = places.map(of), found: Place[] = [];
  for (let first = 0; first < places.length; first += ROUND) {
    let lowest = first;
    for (let k = 0; k < ROUND; k++) {
      const i = first + k, height = heights[i]!, before = heights[first + ((k + ROUND - 1) % ROUND)]! - height, after = heights[first + ((k + 1) % ROUND)]! - height;
      if (height < heights[lowest]!) lowest = i;
      if (before > -LEVEL && after > -LEVEL && Math.max(before, after) > LEVEL) found.push(places[i]!);
    }
    if (!found.includes(places[lowest]!)) found.push(places[lowest]!);
  }
  return found;
}

/** Heights nearer than this are level: no sum is surer. */
const LEVEL: Mm = 1e-9;
