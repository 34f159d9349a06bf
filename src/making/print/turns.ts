import { boundsOf, vertexAt, type Mesh } from '../../geometry/mesh.ts';
import type { Point3 } from '../../geometry/point.ts';
import { cos, sin } from '../../geometry/trig.ts';
import type { Rad } from '../../geometry/units.ts';

/** A turn in space: three rows of three, v' = turn v. */
export type Turn = readonly [Point3, Point3, Point3];

export const dot3 = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross3 = (a: Point3, b: Point3): Point3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

export const applied = (turn: Turn, point: Point3): Point3 => [dot3(turn[0], point), dot3(turn[1], point), dot3(turn[2], point)];

/** First `second`, then `first`. */
export function after(first: Turn, second: Turn): Turn {
  const column = (k: 0 | 1 | 2): Point3 => applied(first, [second[0][k], second[1][k], second[2][k]]), [a, b, c] = [column(0), column(1), column(2)];
  return [[a[0], b[0], c[0]], [a[1], b[1], c[1]], [a[2], b[2], c[2]]];
}

/** About the upright, to the left. */
export const heading = (angle: Rad): Turn => [[cos(angle), -sin(angle), 0], [sin(angle), cos(angle), 0], [0, 0, 1]];

/** The same turn seen in the mirror that makes a right shoe of a left one. */
export const mirroredTurn = ([[a, b, c], [d, e, f], [g, h, i]]: Turn): Turn => [[a, -b, c], [-d, e, -f], [g, -h, i]];

/** The shortest turn that brings a direction to straight down. Source: the formula of Rodrigues. */
export function toDown([x, y, z]: Point3): Turn {
  // Straight up has no shortest way: it is turned about the long axis.
  if (z > 1 - 1e-12) return [[1, 0, 0], [0, -1, 0], [0, 0, -1]];
  const k = 1 / (1 - z);
  return [[1 - k * x * x, -k * x * y, x], [-k * x * y, 1 - k * y * y, y], [-x, -y, -z]];
}

export function turned({ positions, triangles }: Mesh, turn: Turn): Mesh {
  const moved = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) moved.set(applied(turn, [positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  return { positions: moved, triangles };
}

/** Moved so that it stands on the bed. */
export function onBed(mesh: Mesh): Mesh {
  const low = boundsOf(mesh).least[2];
  return { positions: mesh.positions.map((value, i) => (i % 3 === 2 ? value - low : value)), triangles: mesh.triangles };
}

/** Centre of mass of a closed mesh, by tetrahedra from the origin. */
export function centreOf(mesh: Mesh): Point3 {
  let sum: Point3 = [0, 0, 0], six = 0;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = corners(mesh, i), part = dot3(a, cross3(b, c));
    six += part;
    sum = [sum[0] + (a[0] + b[0] + c[0]) * part, sum[1] + (a[1] + b[1] + c[1]) * part, sum[2] + (a[2] + b[2] + c[2]) * part];
  }
  return [sum[0] / (4 * six), sum[1] / (4 * six), sum[2] / (4 * six)];
}

export const corners = (mesh: Mesh, i: number): readonly [Point3, Point3, Point3] =>
  [vertexAt(mesh, mesh.triangles[i]!), vertexAt(mesh, mesh.triangles[i + 1]!), vertexAt(mesh, mesh.triangles[i + 2]!)];

/** Outward direction of a facet and its area; none where it has no area. */
export function facing([a, b, c]: readonly [Point3, Point3, Point3]): { readonly normal: Point3; readonly area: number } | undefined {
  const n = cross3(minus(b, a), minus(c, a)), size = Math.hypot(...n);
  return size > 1e-9 ? { normal: [n[0] / size, n[1] / size, n[2] / size], area: size / 2 } : undefined;
}

/** Whether a point lies over a facet, seen along its normal. */
export const isOver = ([a, b, c]: readonly [Point3, Point3, Point3], normal: Point3, point: Point3): boolean =>
  [[a, b], [b, c], [c, a]].every(([from, to]) => dot3(cross3(minus(to!, from!), minus(point, from!)), normal) >= -1e-6);
