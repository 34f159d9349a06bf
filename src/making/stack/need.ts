import { area, FillRule, union, type Path64, type Paths64, type Point64 } from 'clipper2-ts';
import type { Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { columnsFor, pointsAcross, rowsOf, type Body } from '../../solid/body.ts';
import { PER_MM } from '../nest/outline.ts';
import type { BentFace, BentPlace } from './bentFace.ts';

/** What foam a body needs below its upper face, judged square to that face, for layers lie bent along it. */
export interface Need {
  /** No foam is needed deeper than this. */
  readonly most: Mm;
  /**
   * Where foam is needed deeper than a depth: outlines laid flat, [along, y] in whole thousandths, counter-clockwise; no
   * holes, for nobody cuts one to save foam.
   */
  readonly deeperThan: (depth: Mm) => Paths64;
  /** The section of the body there, as its facets show it. */
  readonly sectionAt: (depth: Mm) => Paths64;
}

/** Fineness of the facets that are judged, and how much more is counted as needed than they show. */
const FACET: Mm = 0.05, COUNTED: Mm = 0.15;
/** The walls begin at the face, give or take what a facet strays; a section is looked for a little below. */
const SHALLOWEST: Mm = 2 * FACET;

export function needOf(body: Body, face: BentFace): Need {
  const rows = skinOf(body, face), facets = facetsOf(rows), places = rows.flat(), depths = Float64Array.from(places, ({ depth }) => depth);
  const near = facetsByDepth(facets, depths), at = (depth: Mm): Paths64 => cutAt(near(Math.max(SHALLOWEST, depth)), places, depths, Math.max(SHALLOWEST, depth));
  return { most: Math.max(...depths) + COUNTED, deeperThan: (depth) => at(depth - COUNTED), sectionAt: at };
}

/** Places down a wall, from its top to its foot: along a slanting wall the depth does not grow quite evenly. */
const DOWN_WALL = 5;

/** Walls and lower face in rows across the body, from the top of the inner wall to that of the outer. */
function skinOf(body: Body, face: BentFace): BentPlace[][] {
  const rows = rowsOf(body, FACET), columns = columnsFor(body, rows, FACET);
  return rows.map((row) => {
    const { lower } = pointsAcross(body, row, columns), [inner, outer] = [row.inner, row.outer].map(({ top, bottom }) => downFrom(top, bottom));
    return [...inner!, ...lower, ...outer!.toReversed()].map(face.placeOf);
  });
}

const downFrom = ([ax, ay, az]: Point3, [bx, by, bz]: Point3): Point3[] => Array.from({ length: DOWN_WALL }, (_, i): Point3 => {
  const t = i / DOWN_WALL;
  return [ax + (bx - ax) * t, ay + (by - ay) * t, az + (bz - az) * t];
});

/**
 * Facets between the rows, three corners each by their numbers, row by row, the outside out. At both ends of the sole a
 * row is one line down the wall, met from the inner and from the outer side.
 */
function facetsOf(rows: readonly (readonly BentPlace[])[]): Uint32Array {
  const across = rows[0]!.length, last = rows.length - 1;
  const corner = (i: number, j: number): number => i * across + (i === 0 || i === last ? Math.min(j, across - 1 - j) : j);
  return Uint32Array.from(rows.slice(1).flatMap((_, i) => Array.from({ length: across - 1 }, (_, j) => {
    const [a, b, c, d] = [corner(i, j), corner(i, j + 1), corner(i + 1, j + 1), corner(i + 1, j)];
    return [a, b, c, a, c, d];
  })).flat());
}

/** The facets that reach through each whole mm of depth, in their order: most of a skin is nowhere near a cut. */
function facetsByDepth(facets: Uint32Array, depths: Float64Array): (depth: Mm) => readonly number[] {
  const near: number[][] = [];
  for (let f = 0; f < facets.length; f += 3) {
    const [a, b, c] = [facets[f]!, facets[f + 1]!, facets[f + 2]!], [from, to] = [Math.min(depths[a]!, depths[b]!, depths[c]!), Math.max(depths[a]!, depths[b]!, depths[c]!)];
    for (let slice = Math.max(0, Math.floor(from)); slice <= to; slice++) (near[slice] ??= []).push(a, b, c);
  }
  return (depth) => near[Math.floor(depth)] ?? [];
}

interface Step { readonly to: number; readonly at: Point64 }

/** The lines in which a depth cuts the skin, as outlines. */
function cutAt(facets: readonly number[], places: readonly BentPlace[], depths: Float64Array, depth: Mm): Paths64 {
  const steps = new Map<number, Step>(), count = places.length;
  for (let f = 0; f < facets.length; f += 3) for (let k = 0; k < 3; k++) {
    const [a, b, c] = [facets[f + k]!, facets[f + ((k + 1) % 3)]!, facets[f + ((k + 2) % 3)]!];
    if (depths[a]! > depth || !(depths[b]! > depth)) continue;
    const out = depths[c]! > depth ? keyOf(c, a, count) : keyOf(b, c, count);
    steps.set(keyOf(a, b, count), { to: out, at: crossing(places[a]!, places[b]!, depth) });
  }
  return union(loopsOf(steps), FillRule.NonZero).filter((loop) => area(loop) > 0);
}

const keyOf = (a: number, b: number, count: number): number => Math.min(a, b) * count + Math.max(a, b);

function loopsOf(steps: Map<number, Step>): Path64[] {
  const loops: Path64[] = [];
  for (const first of [...steps.keys()]) {
    const loop: Path64 = [];
    for (let key = first, step = steps.get(key); step; key = step.to, step = steps.get(key)) { loop.push(step.at); steps.delete(key); }
    if (loop.length > 2) loops.push(loop.reverse());
  }
  return loops;
}

function crossing(a: BentPlace, b: BentPlace, depth: Mm): Point64 {
  const t = (depth - a.depth) / (b.depth - a.depth);
  return { x: Math.round((a.along + (b.along - a.along) * t) * PER_MM), y: Math.round((a.y + (b.y - a.y) * t) * PER_MM) };
}
