import { distance, type Point } from './point.ts';
import type { Mm } from './units.ts';

/** A circle that fits points best, and the root of the mean square by which they miss it, mm. */
export interface CircleFit { readonly centre: Point; readonly radius: Mm; readonly misses: Mm }

/** A point that counts for as much as a weight. */
export interface Weighted { readonly at: Point; readonly weight: number }

const ROUNDS = 60, SETTLED: Mm = 1e-9;

/**
 * The circle with the least sum of squared distances from points, by Gauss and Newton's way from the algebraic fit (I. Kåsa,
 * IEEE Trans. Instrum. Meas. 25 (1976) 8-14, from memory).
 * @throws RangeError when the points lie on one straight line
 */
export function circleFitting(points: readonly Weighted[]): CircleFit {
  const all = points.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (value: (at: Point) => number): number => points.reduce((sum, { at, weight }) => sum + weight * value(at), 0) / all;
  let centre = algebraic(mean);
  for (let i = 0; i < ROUNDS; i++) {
    const { by, radius, misses } = step(centre, points, all);
    if (Math.hypot(...by) < SETTLED) return { centre, radius, misses };
    centre = [centre[0] + by[0], centre[1] + by[1]];
  }
  const { radius, misses } = step(centre, points, all);
  return { centre, radius, misses };
}

type Mean = (value: (at: Point) => number) => number;

/** Solves [[a, b], [b, c]] (x, y) = (p, q). @throws RangeError where the points do not turn */
function solved(a: number, b: number, c: number, [p, q]: Point): Point {
  const determinant = a * c - b * b;
  if (!(determinant > 1e-12 * a * c)) throw new RangeError('no circle goes along points on one straight line');
  return [(c * p - b * q) / determinant, (a * q - b * p) / determinant];
}

function algebraic(mean: Mean): Point {
  const mx = mean(([x]) => x), mz = mean(([, z]) => z), x = ([at]: Point): number => at - mx, z = ([, at]: Point): number => at - mz;
  const square = (at: Point): number => x(at) ** 2 + z(at) ** 2;
  const [cx, cz] = solved(mean((at) => x(at) ** 2), mean((at) => x(at) * z(at)), mean((at) => z(at) ** 2), [mean((at) => x(at) * square(at)) / 2, mean((at) => z(at) * square(at)) / 2]);
  return [cx + mx, cz + mz];
}

/** What a centre is to be moved by, with the radius that goes best with it: the mean distance. One round through the points for means, one for how they scatter. */
function step(centre: Point, points: readonly Weighted[], all: number): { readonly by: Point; readonly radius: Mm; readonly misses: Mm } {
  const seen = points.map(({ at, weight }) => {
    const far = distance(at, centre);
    return { weight, far, x: (at[0] - centre[0]) / far, z: (at[1] - centre[1]) / far };
  });
  let radius = 0, mx = 0, mz = 0;
  for (const { weight, far, x, z } of seen) { radius += (weight * far) / all; mx += (weight * x) / all; mz += (weight * z) / all; }
  let xx = 0, xz = 0, zz = 0, xOff = 0, zOff = 0, square = 0;
  for (const { weight, far, x, z } of seen) {
    const dx = x - mx, dz = z - mz, off = far - radius;
    xx += weight * dx * dx; xz += weight * dx * dz; zz += weight * dz * dz; xOff += weight * dx * off; zOff += weight * dz * off; square += weight * off * off;
  }
  return { by: solved(xx, xz, zz, [xOff, zOff]), radius, misses: Math.sqrt(square / all) };
}
