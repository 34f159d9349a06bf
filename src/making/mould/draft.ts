import type { MouldOrder } from '../../fitting/making.ts';
import { vertexAt, type Mesh } from '../../geometry/mesh.ts';
import type { Point3 } from '../../geometry/point.ts';
import { asin } from '../../geometry/trig.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { outlineOf, type MouldLayout } from './layout.ts';
import { fromOutline, isInside } from './outline.ts';

/** The steepest facet of the walls of a finished cavity: how far it leans open, and where its middle is. */
export interface DraftFound { readonly least: Rad; readonly at: Point3; readonly facets: number }

/** Walls are what is steeper than this; the floor follows the ground face, which is not. */
const WALL_SINE = 0.5;
/** Facets smaller than this, mm², are what cuts leave; rounding alone turns them. */
const TOO_SMALL = 1e-2;
/** A facet whose middle is nearer to a line of the wall than this lies in it. */
const NEAR: Mm = 0.02;

/**
 * Measures the walls of a cavity facet by facet, on the solid that will be written. One in one piece opens upwards; the
 * halves of a split one part sideways, so there it is the lean away from the joint that counts.
 * @param cavity before it is parted or cut across
 */
export function draftFound(cavity: Mesh, layout: MouldLayout, { split }: MouldOrder): DraftFound {
  const isWall = wallOf(layout);
  let found: DraftFound = { least: Math.PI / 2, at: [0, 0, 0], facets: 0 };
  for (let i = 0; i < cavity.triangles.length; i += 3) {
    const facet = facetOf([0, 1, 2].map((k) => vertexAt(cavity, cavity.triangles[i + k]!)) as [Point3, Point3, Point3]);
    if (!facet || !isWall(facet)) continue;
    const { normal, middle } = facet, least = asin(split ? -Math.sign(middle[1]) * normal[1] : normal[2]);
    found = { facets: found.facets + 1, ...(least < found.least ? { least, at: middle } : { least: found.least, at: found.at }) };
  }
  return found;
}

interface Facet { readonly normal: Point3; readonly middle: Point3 }

function facetOf([a, b, c]: readonly [Point3, Point3, Point3]): Facet | undefined {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const, size = Math.hypot(...n);
  const mean = (k: 0 | 1 | 2): Mm => (a[k] + b[k] + c[k]) / 3;
  return size / 2 > TOO_SMALL ? { normal: [n[0] / size, n[1] / size, n[2] / size], middle: [mean(0), mean(1), mean(2)] } : undefined;
}

/** In plan a wall lies between the ground line and the line it opens to; bores, border and groove stand well away from it. */
function wallOf(layout: MouldLayout): (facet: Facet) => boolean {
  const foot = outlineOf(layout, 'bottom'), open = outlineOf(layout, 'open');
  return ({ normal, middle: [x, y] }) => Math.abs(normal[2]) < WALL_SINE
    && (isInside(foot, [x, y]) !== isInside(open, [x, y]) || Math.min(fromOutline(foot, [x, y]), fromOutline(open, [x, y])) < NEAR);
}
