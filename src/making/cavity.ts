import type { Mesh } from '../geometry/mesh.ts';
import type { Point, Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { MouldOrder } from '../fitting/fitting.ts';
import { columnsFor, pointsAcross, rowsOf, type Body, type Cut, type Row } from '../solid/body.ts';

/**
 * One wall line of a mould, stretched for shrink: from the ground line of the part up to the parting level, where the
 * cavity opens `open` (the part's own edge, or further out by the draft), and out over the rim to `border`.
 */
export interface Station { readonly bottom: Point3; readonly edge: Point3; readonly open: Point3; readonly border: Point3 }

/** A row of the mould across the part. */
export interface MouldRow {
  readonly inner: Station;
  readonly outer: Station;
  /** Points of the part's upper and lower face between the walls, inner to outer, ends included. */
  readonly upper: readonly Point3[];
  readonly lower: readonly Point3[];
}

/** Facets between two stations stand a little steeper than the wall lines: this much more lean makes up for it. */
const LEAN_SPARE = 1.01;

/** How much the walls of a cavity lean out on their way up, mm a mm, so that every facet has the draft. */
function leanFor(draft: number, steepest: number): number {
  const run = Math.tan(draft) * LEAN_SPARE;
  return run / Math.sqrt(1 - Math.min(0.5, (run * steepest) ** 2));
}

/** The part's rows as rows of a mould round it. */
export function mouldRows(body: Body, chordGap: Mm, order: MouldOrder): MouldRow[] {
  const rows = rowsOf(body, chordGap), columns = columnsFor(body, rows, chordGap), [fx, fy, fz] = order.shrink;
  const grown = ([x, y, z]: Point3): Point3 => [x * fx, y * fy, z * fz];
  const run = order.split ? undefined : leanFor(order.draft, steepestRise(rows));
  const station = (cut: Cut): Station => stationAt(grown(cut.bottom), grown(cut.top), cut.outward, run, order.rim);
  return rows.map((row) => {
    const { upper, lower } = pointsAcross(body, row, columns);
    return { inner: station(row.inner), outer: station(row.outer), upper: upper.map(grown), lower: lower.map(grown) };
  });
}

/**
 * The cavity keeps the part's ground line and leans out above it at least by the run; the part's own taper may be more.
 * A split cavity takes the walls as they are.
 */
function stationAt(bottom: Point3, edge: Point3, outward: Point, run: number | undefined, rim: Mm): Station {
  const height = edge[2] - bottom[2], own = (edge[0] - bottom[0]) * outward[0] + (edge[1] - bottom[1]) * outward[1];
  const out = run === undefined ? 0 : Math.max(0, run * height - own), flare = Math.max(0, -own);
  const setOut = (by: Mm): Point3 => [edge[0] + by * outward[0], edge[1] + by * outward[1], edge[2]];
  return { bottom, edge, open: setOut(out), border: setOut(out + flare + rim) };
}

/** Steepest climb of the ground line along the walls, mm a mm: it decides how much lean a draft takes. */
function steepestRise(rows: readonly Row[]): number {
  const rise = (a: Point3, b: Point3): number => { const run = Math.hypot(b[0] - a[0], b[1] - a[1]); return run > 0 ? Math.abs(b[2] - a[2]) / run : 0; };
  return Math.max(...rows.slice(1).flatMap((row, i) => [rise(rows[i]!.inner.bottom, row.inner.bottom), rise(rows[i]!.outer.bottom, row.outer.bottom)]));
}

/** Gathers vertices by place, so that neighbours share them, and triangles with their outside out. */
export interface Shell { readonly vertex: (point: Point3) => number; readonly quad: (a: number, b: number, c: number, d: number) => void; readonly mesh: () => Mesh }

export function shell(): Shell {
  const positions: number[] = [], triangles: number[] = [], known = new Map<string, number>();
  const triangle = (a: number, b: number, c: number): void => { if (a !== b && b !== c && c !== a) triangles.push(a, b, c); };
  return {
    vertex: (point) => {
      const key = point.map((value) => value.toFixed(7)).join(' '), found = known.get(key);
      if (found !== undefined) return found;
      const index = positions.push(...point) / 3 - 1;
      known.set(key, index);
      return index;
    },
    quad: (a, b, c, d) => { triangle(a, b, c); triangle(a, c, d); },
    mesh: () => ({ positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }),
  };
}

/** A strip between two rows of points of one length, heel to toe and inner to outer, seen from above. */
export function stripOver({ vertex, quad }: Shell, from: readonly Point3[], to: readonly Point3[]): void {
  for (let j = 0; j + 1 < from.length; j++) quad(vertex(from[j]!), vertex(to[j]!), vertex(to[j + 1]!), vertex(from[j + 1]!));
}

/** The same strip seen from below, cut along the same diagonals, so that two faces that lie on each other fit. */
export function stripUnder({ vertex, quad }: Shell, from: readonly Point3[], to: readonly Point3[]): void {
  for (let j = 0; j + 1 < from.length; j++) quad(vertex(from[j]!), vertex(from[j + 1]!), vertex(to[j + 1]!), vertex(to[j]!));
}
