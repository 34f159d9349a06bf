import { cornerAt, type Body, type Point3 } from './body.ts';

/** A facet belongs to the upper face or the underside where it leans less than half way to upright; the rest is wall. Cosine. */
const STEEP = Math.SQRT1_2;
/** Side of a square of the plan in which facets are looked up, mm. */
const CELL = 8;

/** True for the facets of the upper face. */
export const isUpper = (normals: Float32Array, facet: number): boolean => normals[3 * facet + 2]! > STEEP;

/**
 * Thickness under any place of the upper face: straight down to the underside. Where a wall draws in beneath the rim there
 * is no underside straight below, and the nearest place of it counts: the sole there is as thick as at its edge.
 */
export function thicknessUnder(body: Body, normals: Float32Array): (place: Point3) => number {
  const cells = new Map<string, Point3[][]>();
  const { triangles } = body, name = (i: number, j: number): string => `${i} ${j}`, cell = (value: number): number => Math.floor(value / CELL);
  let furthest = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    if (!(normals[i + 2]! < -STEEP)) continue;
    const facet = [cornerAt(body, triangles[i]!), cornerAt(body, triangles[i + 1]!), cornerAt(body, triangles[i + 2]!)];
    const [x0, x1, y0, y1] = [Math.min, Math.max, Math.min, Math.max].map((most, k) => cell(most(...facet.map((corner) => corner[k < 2 ? 0 : 1])))) as [number, number, number, number];
    furthest = Math.max(furthest, Math.abs(x0), Math.abs(x1), Math.abs(y0), Math.abs(y1));
    for (let x = x0; x <= x1; x++) for (let y = y0; y <= y1; y++) { const on = cells.get(name(x, y)); if (on) on.push(facet); else cells.set(name(x, y), [facet]); }
  }
  return ([x, y, z]) => {
    const i = cell(x), j = cell(y), most = 2 * furthest + Math.abs(i) + Math.abs(j);
    let nearest = Infinity, height = z;
    for (let ring = 0; ring <= most && nearest > (ring - 1) * CELL; ring++) {
      for (const [a, b] of ringOf(ring)) {
        for (const facet of cells.get(name(i + a, j + b)) ?? []) {
          const found = nearestOn(facet, x, y);
          if (found.away < nearest) { nearest = found.away; height = found.z; }
        }
      }
    }
    return Math.max(0, z - height);
  };
}

/** The squares that stand this many steps from the middle one. */
function ringOf(ring: number): (readonly [number, number])[] {
  if (ring === 0) return [[0, 0]];
  const side = Array.from({ length: 2 * ring }, (_, k) => k - ring);
  return side.flatMap((k) => [[k, -ring], [ring, k], [-k, ring], [-ring, -k]] as const);
}

/** The place of a facet nearest in plan: how far away it is and its height. */
function nearestOn(facet: readonly Point3[], x: number, y: number): { readonly away: number; readonly z: number } {
  const [a, b, c] = facet as [Point3, Point3, Point3], area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  const u = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / area, v = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / area;
  if (u >= 0 && v >= 0 && u + v <= 1) return { away: 0, z: a[2] + u * (b[2] - a[2]) + v * (c[2] - a[2]) };
  return [nearestOnEdge(a, b, x, y), nearestOnEdge(b, c, x, y), nearestOnEdge(c, a, x, y)].reduce((best, one) => (one.away < best.away ? one : best));
}

function nearestOnEdge(a: Point3, b: Point3, x: number, y: number): { readonly away: number; readonly z: number } {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]], t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
  return { away: Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y), z: a[2] + t * (b[2] - a[2]) };
}
