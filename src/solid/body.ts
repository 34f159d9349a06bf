import type { Mesh } from '../geometry/mesh.ts';
import type { Point, Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { jointsOf, type GroundFace } from '../profile/groundFace.ts';
import { clamp } from '../geometry/solve.ts';
import { acos, cos } from '../geometry/trig.ts';
import { rollY } from '../profile/rollLine.ts';
import { placeOn, type GroundRim } from './groundRim.ts';
import { sweptSurface, type SoleShape, type Surface } from './soleShape.ts';
import { meetSurface, wallLine } from './wall.ts';

/** What lies between two faces of a sole, inside its walls. The lower face is always a rolled one. */
export interface Body {
  readonly shape: SoleShape;
  readonly upper: Surface;
  readonly lower: GroundFace;
  readonly rim: GroundRim;
  /** Places along the walking line where the upper face has joints of its own. */
  readonly upperJoints: readonly Mm[];
}

/** A straight row across the body: its two wall lines cut by the upper and the lower face. Inner side first. */
export interface Row { readonly along: Mm; readonly inner: Cut; readonly outer: Cut }
/** A wall line cut by both faces of a body, and which way the wall faces in plan. */
export interface Cut { readonly top: Point3; readonly bottom: Point3; readonly outward: Point }

/** Rows nearer than this to a neighbour are left out: an STL could not tell them apart safely. */
const NEAREST_ROWS: Mm = 0.02;
/** The doubly curved top strays up to 1.8 times the gap judged at the middles (measured), so less is asked there. */
const JUDGED_SHARE = 1 / 1.8;

/** Cuts a body into rows square to the walking line, fine enough that no facet strays further than the gap. */
export function rowsOf(body: Body, chordGap: Mm): Row[] {
  const { shape, rim } = body, lower = sweptSurface(body.lower, shape.line);
  const cutAt = (w: number): Cut => {
    const wall = wallLine(shape, w);
    return { top: meetSurface(wall, body.upper), bottom: meetSurface(wall, lower), outward: wall.outward };
  };
  const rowAt = (along: Mm): Row => ({ along, inner: cutAt(placeOn(rim, 'inner', along)), outer: cutAt(placeOn(rim, 'outer', along)) });
  const poleAt = (w: number, along: Mm): Row => { const cut = cutAt(w); return { along, inner: cut, outer: cut }; };
  const { start, end } = rim;
  const fixed = stationsBetween(start, end, [...jointsOf(body.lower).map(([x]) => x), ...body.upperJoints, ...shape.stations]);
  const rows = [poleAt(rim.heel, start), ...fixed.map(rowAt), poleAt(rim.toe, end)];
  const halfway = (a: Mm, b: Mm): Mm => fromPole(start, end, (toPole(start, end, a) + toPole(start, end, b)) / 2);
  const refine = (a: Row, b: Row, depth: number): Row[] => {
    if (depth === 0 || b.along - a.along < 2 * NEAREST_ROWS) return [b];
    const middle = rowAt(halfway(a.along, b.along));
    if (strays(body, a, middle, b) <= chordGap * JUDGED_SHARE) return [b];
    return [...refine(a, middle, depth - 1), ...refine(middle, b, depth - 1)];
  };
  return [rows[0]!, ...rows.slice(1).flatMap((row, i) => refine(rows[i]!, row, 12))];
}

/** Evenly spaced in this angle, rows crowd towards the round ends as the outline needs. */
const toPole = (start: Mm, end: Mm, along: Mm): number => acos(1 - (2 * (along - start)) / (end - start));
const fromPole = (start: Mm, end: Mm, angle: number): Mm => start + ((end - start) * (1 - cos(angle))) / 2;

/** The stations that must be met, with enough between them to see the shape, none too near another. */
function stationsBetween(start: Mm, end: Mm, wanted: readonly Mm[]): Mm[] {
  const even = Array.from({ length: 11 }, (_, i) => fromPole(start, end, ((i + 1) * Math.PI) / 12));
  const kept: Mm[] = [];
  const fits = (x: Mm): boolean => x > start + NEAREST_ROWS && x < end - NEAREST_ROWS && kept.every((other) => Math.abs(other - x) >= NEAREST_ROWS);
  for (const x of [...wanted, ...even]) if (fits(x)) kept.push(x);
  return kept.sort((a, b) => a - b);
}

/** How far the true row halfway strays from the flat facets between its neighbours. */
function strays(body: Body, a: Row, middle: Row, b: Row): Mm {
  const edges = [['inner', 'top'], ['inner', 'bottom'], ['outer', 'top'], ['outer', 'bottom']] as const;
  const edge = Math.max(...edges.map(([side, level]) => offLine(a[side][level], middle[side][level], b[side][level])));
  const face = Math.max(...[0.25, 0.5, 0.75].map((t) => offLine(onTop(body, a, t), onTop(body, middle, t), onTop(body, b, t))));
  return Math.max(edge, face);
}

/** A point of the upper face a share t of the way along a row, inner to outer. */
function onTop({ upper }: Body, { inner, outer }: Row, t: number): Point3 {
  if (t === 0) return inner.top;
  if (t === 1) return outer.top;
  const x = inner.top[0] + (outer.top[0] - inner.top[0]) * t, y = inner.top[1] + (outer.top[1] - inner.top[1]) * t;
  return [x, y, upper(x, y)];
}

/** Distance from a point to the line through two others. */
function offLine(a: Point3, p: Point3, b: Point3): Mm {
  const ux = b[0] - a[0], uy = b[1] - a[1], uz = b[2] - a[2], vx = p[0] - a[0], vy = p[1] - a[1], vz = p[2] - a[2];
  const t = (ux * vx + uy * vy + uz * vz) / (ux * ux + uy * uy + uz * uz);
  return Math.hypot(vx - t * ux, vy - t * uy, vz - t * uz);
}

/** Where the long axis of the walking line crosses a row: a column of vertices runs there, so a cut along it is exact. */
const LEAST_SHARE = 0.1;
function middleShare({ line }: SoleShape, a: Point3, b: Point3): number {
  const from = rollY(line, [a[0], a[1]]), to = rollY(line, [b[0], b[1]]);
  return from === to ? 0.5 : clamp(from / (from - to), LEAST_SHARE, 1 - LEAST_SHARE);
}

function shares(middle: number, columns: number): number[] {
  const all: number[] = [];
  for (let i = 0; i < columns; i++) all.push((middle * i) / columns);
  for (let i = 0; i <= columns; i++) all.push(middle + ((1 - middle) * i) / columns);
  return all;
}

/** The points of a row on both faces, inner to outer, ends included. @param columns facets on each side of the walking line */
export function pointsAcross(body: Body, row: Row, columns: number): { readonly upper: readonly Point3[]; readonly lower: readonly Point3[] } {
  const { shape } = body, { inner, outer } = row;
  return {
    upper: shares(middleShare(shape, inner.top, outer.top), columns).map((t) => onTop(body, row, t)),
    lower: shares(middleShare(shape, inner.bottom, outer.bottom), columns).map((t) => onBottom(row, t)),
  };
}

/** Neighbouring rows are dished alike, so every third is judged. */
const JUDGED_ROWS = 3;

/** How many facets a row needs on each side of the walking line so that the upper face strays no further than the gap. */
export function columnsFor(body: Body, rows: readonly Row[], chordGap: Mm): number {
  const inside = rows.slice(1, -1).filter((_, i) => i % JUDGED_ROWS === 0), { shape } = body;
  for (let columns = 1; columns < 32; columns *= 2) {
    const worst = Math.max(...inside.map((row) => {
      const at = shares(middleShare(shape, row.inner.top, row.outer.top), columns);
      return Math.max(...at.slice(1).map((to, i) => offLine(onTop(body, row, at[i]!), onTop(body, row, (at[i]! + to) / 2), onTop(body, row, to))));
    }));
    if (worst <= chordGap * JUDGED_SHARE) return columns;
  }
  return 32;
}

/** Closes a body: upper face, lower face and both walls over the same rows. Watertight by construction. */
export function meshOf(body: Body, chordGap: Mm): Mesh {
  const rows = rowsOf(body, chordGap), columns = columnsFor(body, rows, chordGap);
  return closeRows(rows.map((row) => pointsAcross(body, row, columns)));
}

function closeRows(rows: readonly { readonly upper: readonly Point3[]; readonly lower: readonly Point3[] }[]): Mesh {
  const positions: number[] = [], triangles: number[] = [], last = rows.length - 1;
  const vertex = ([x, y, z]: Point3): number => positions.push(x, y, z) / 3 - 1;
  /** At the poles a row is one point above one point. */
  const level = (points: readonly Point3[], i: number): number[] => {
    if (i > 0 && i < last) return points.map(vertex);
    const pole = vertex(points[0]!);
    return points.map(() => pole);
  };
  const tops = rows.map(({ upper }, i) => level(upper, i)), bottoms = rows.map(({ lower }, i) => level(lower, i));
  const quad = (a: number, b: number, c: number, d: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
    if (a !== c && c !== d && d !== a) triangles.push(a, c, d);
  };
  for (let i = 0; i < last; i++) {
    const top = tops[i]!, topNext = tops[i + 1]!, low = bottoms[i]!, lowNext = bottoms[i + 1]!, end = top.length - 1;
    for (let j = 0; j < end; j++) {
      quad(top[j]!, topNext[j]!, topNext[j + 1]!, top[j + 1]!);
      quad(low[j]!, low[j + 1]!, lowNext[j + 1]!, lowNext[j]!);
    }
    quad(low[0]!, lowNext[0]!, topNext[0]!, top[0]!);
    quad(low[end]!, top[end]!, topNext[end]!, lowNext[end]!);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A point of the lower face a share t of the way along a row, inner to outer. */
function onBottom({ inner, outer }: Row, t: number): Point3 {
  const a = inner.bottom, b = outer.bottom;
  if (t === 0) return a;
  if (t === 1) return b;
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}
