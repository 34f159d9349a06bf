import { vertexAt, type Mesh } from '../../geometry/mesh.ts';
import type { Point3 } from '../../geometry/point.ts';
import { asin } from '../../geometry/trig.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { outlineOf, type MouldLayout } from './layout.ts';
import { fromSegment } from './outline.ts';

/** The steepest facet of the walls of a finished cavity: how far it leans open, and where its middle is. */
export interface DraftFound { readonly least: Rad; readonly at: Point3; readonly facets: number }

/** Walls are what is steeper than this; the floor follows the ground face, which is not. */
const WALL_SINE = 0.5;
/** Facets smaller than this, mm², are what cuts leave; rounding alone turns them. */
const TOO_SMALL = 1e-2;
/** A corner nearer to a line of the wall than this stands on it. */
const NEAR: Mm = 0.02;

/**
 * Measures the walls of a cavity facet by facet, on the solid that will be written, against straight up. Where walls flare
 * it is less than nothing; such a cavity comes in halves that part sideways.
 * @param cavity before it is parted or cut across
 */
export function draftFound(cavity: Mesh, layout: MouldLayout): DraftFound {
  const onWall = wallOf(layout);
  let found: DraftFound = { least: Math.PI / 2, at: [0, 0, 0], facets: 0 };
  for (let i = 0; i < cavity.triangles.length; i += 3) {
    const corners = [0, 1, 2].map((k) => vertexAt(cavity, cavity.triangles[i + k]!)) as [Point3, Point3, Point3], up = steepness(corners);
    if (up === undefined || Math.abs(up) > WALL_SINE || !corners.every(onWall)) continue;
    const least = asin(up);
    found = { facets: found.facets + 1, ...(least < found.least ? { least, at: middleOf(corners) } : { least: found.least, at: found.at }) };
  }
  return found;
}

const middleOf = ([a, b, c]: readonly [Point3, Point3, Point3]): Point3 => [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];

/** How far up a facet faces, 0 for an upright one, 1 for a level one; none for one too small to say. */
function steepness([a, b, c]: readonly [Point3, Point3, Point3]): number | undefined {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const up = ux * vy - uy * vx, size = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, up);
  return size / 2 > TOO_SMALL ? up / size : undefined;
}

/** Walls have all their corners on the ground line or on the line where the cavity opens. */
function wallOf(layout: MouldLayout): (corner: Point3) => boolean {
  const pieces = [outlineOf(layout, 'bottom'), outlineOf(layout, 'open')].flatMap((line) => line.map((to, i) => {
    const from = line.at(i - 1)!;
    return { from, to, back: Math.min(from[0], to[0]) - NEAR, ahead: Math.max(from[0], to[0]) + NEAR };
  }));
  return ([x, y]) => pieces.some(({ from, to, back, ahead }) => x > back && x < ahead && fromSegment(from, to, [x, y]) < NEAR);
}
