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
    const { by, radius, misses } = step(centre, mean);
    if (Math.hypot(...by) < SETTLED) return { centre, radius, misses };
    centre = [centre[0] + by[0], centre[1] + by[1]];
  }
  const { radius, misses } = step(centre, mean);
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

/** What a centre is to be moved by, with the radius that goes best with it: the mean distance. */
function step(centre: Point, mean: Mean): { readonly by: Point; readonly radius: Mm; readonly misses: Mm } {
  const far = (at: Point): Mm => distance(at, centre), ux = (at: Point): number => (at[0] - centre[0]) / far(at), uz = (at: Point): number => (at[1] - centre[1]) / far(at);
  const radius = mean(far), mx = mean(ux), mz = mean(uz), off = (at: Point): Mm => far(at) - radius;
  const by = solved(mean((at) => (ux(at) - mx) ** 2), mean((at) => (ux(at) - mx) * (uz(at) - mz)), mean((at) => (uz(at) - mz) ** 2),
    [mean((at) => (ux(at) - mx) * off(at)), mean((at) => (uz(at) - mz) * off(at))]);
  return { by, radius, misses: Math.sqrt(mean((at) => off(at) ** 2)) };
}
