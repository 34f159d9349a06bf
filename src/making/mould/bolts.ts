import { between, distance, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';

/** Largest way along the rim from one bolt to the next: a lid of board or plastic bows open beyond it. Common practice. */
const APART: Mm = 80;
/** A bolt this near to where one is wanted will do. */
const CLOSE: Mm = 25;
/** Least wall left between two bores. Common practice. */
const WALL: Mm = 3;

/** Bolt holes and the washers that go on them, mm: clearance holes of ISO 273, medium; plain washers of ISO 7089. From memory. */
const WASHERS = [[3.4, 7], [4.5, 9], [5.5, 10], [6.6, 12], [9, 16], [11, 20], [13.5, 24], [17.5, 30], [22, 37]] as const;
export const washerFor = (hole: Mm): Mm => (WASHERS.find(([diameter]) => diameter >= hole - 1e-6) ?? WASHERS[WASHERS.length - 1]!)[1];

/** Width of rim that a bolt wants: a wall on both sides of the hole, and room for the washer. */
export const rimForBolt = (hole: Mm): Mm => Math.max(hole + 2 * WALL, washerFor(hole));

/** The largest bolt hole that such a rim takes; 0 or less where there is none. */
export const largestBolt = (rim: Mm): Mm => Math.min(rim - 2 * WALL, Math.max(0, ...WASHERS.filter(([, washer]) => washer <= rim).map(([hole]) => hole)));

/** What a bolt keeps away from: a bore by its middle, or an upright plane square to an axis. `clear` is from the bolt's middle. */
export interface KeepOut { readonly clear: Mm; readonly bore?: Point; readonly x?: Mm; readonly y?: Mm }

/** Beside another bore a wall must stay, and its edge must stay out from under the washer. */
export const besideBore = (at: Point, bore: Mm, bolt: Mm): KeepOut => ({ bore: at, clear: bore / 2 + Math.max(bolt / 2 + WALL, washerFor(bolt) / 2) });

/** How much wall stays between a bolt and a bar that lies across its way. */
export const besideBar = (bar: Mm, bolt: Mm): Mm => (bar + bolt) / 2 + WALL;

/**
 * Bolts round the rim, heel first, as seen from above: one each side of every joint, then so many that none is further
 * from the next than the rim lets a lid bow.
 * @param line middle of the rim, closed  @param seeds places on it that want a bolt near by
 */
export function boltsRound(line: readonly Point[], seeds: readonly Point[], away: readonly KeepOut[], bolt: Mm): Point[] {
  const ring = ringOf(line), least = washerFor(bolt) + WALL;
  const free = (w: number): boolean => { const at = ring.at(w); return away.every((keep) => farFrom(at, keep)); };
  const placed: number[] = [];
  const place = (wanted: number): void => {
    const found = nearestFree(wanted, (w) => free(w) && placed.every((other) => ring.apart(w, other) >= least));
    if (found !== undefined) placed.push(ring.wrapped(found));
  };
  for (const seed of seeds) if (placed.every((other) => ring.apart(ring.nearest(seed), other) >= CLOSE)) place(ring.nearest(seed));
  for (const [from, gap] of gapsOf(placed, ring.length)) for (let i = 1, n = Math.ceil(gap / APART); i < n; i++) place(from + (gap * i) / n);
  return [...placed].sort((a, b) => a - b).map(ring.at);
}

function farFrom([x, y]: Point, { bore, x: planeX, y: planeY, clear }: KeepOut): boolean {
  if (bore) return distance([x, y], bore) >= clear;
  return (planeX === undefined || Math.abs(x - planeX) >= clear) && (planeY === undefined || Math.abs(y - planeY) >= clear);
}

/** How far a bolt may be moved from where it is wanted, and in what steps. */
const MOVED_MOST: Mm = APART / 2, STEP: Mm = 0.5;

function nearestFree(wanted: number, free: (w: number) => boolean): number | undefined {
  for (let by = 0; by <= MOVED_MOST; by += STEP) for (const w of [wanted + by, wanted - by]) if (free(w)) return w;
  return undefined;
}

/** The ways between neighbours on a ring, each from its first end. */
function gapsOf(placed: readonly number[], length: Mm): [from: number, gap: Mm][] {
  const sorted = [...placed].sort((a, b) => a - b);
  if (sorted.length === 0) return [[0, length]];
  return sorted.map((from, i) => [from, i + 1 < sorted.length ? sorted[i + 1]! - from : sorted[0]! + length - from]);
}

interface Ring { readonly length: Mm; readonly at: (w: number) => Point; readonly wrapped: (w: number) => number; readonly apart: (a: number, b: number) => Mm; readonly nearest: (to: Point) => number }

/** A closed line by the length run along it. */
function ringOf(line: readonly Point[]): Ring {
  const ends = [0];
  line.forEach((from, i) => ends.push(ends[i]! + distance(from, line[(i + 1) % line.length]!)));
  const length = ends[line.length]!, wrapped = (w: number): number => ((w % length) + length) % length;
  const at = (w: number): Point => {
    const along = wrapped(w), i = Math.max(0, ends.findIndex((end) => end > along) - 1), run = ends[i + 1]! - ends[i]!;
    return between(line[i]!, line[(i + 1) % line.length]!, run > 0 ? (along - ends[i]!) / run : 0);
  };
  const apart = (a: number, b: number): Mm => { const way = wrapped(a - b); return Math.min(way, length - way); };
  const nearest = (to: Point): number => line.reduce<{ readonly w: number; readonly away: Mm }>((best, point, i) => {
    const away = distance(point, to);
    return away < best.away ? { w: ends[i]!, away } : best;
  }, { w: 0, away: Infinity }).w;
  return { length, at, wrapped, apart, nearest };
}
