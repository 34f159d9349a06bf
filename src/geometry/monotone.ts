import { clamp } from './solve.ts';
import type { Point } from './point.ts';

/**
 * A smooth curve through points from left to right that nowhere overshoots them: it rises only where they rise and falls
 * only where they fall. Level beyond its ends.
 * @param points two or more, first coordinates rising
 * @throws RangeError for fewer, or out of order
 * Source: F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation (1980), slopes by Fritsch and Butland 1984 (from memory).
 */
export function monotoneThrough(points: readonly Point[]): (x: number) => number {
  if (points.length < 2 || points.some(([x], i) => i > 0 && !(x > points[i - 1]![0]))) throw new RangeError(`a curve needs two points or more from left to right, got ${points.length}`);
  const slopes = slopesAt(points), last = points.length - 2;
  return (x) => {
    const next = points.findIndex(([end]) => end >= x), i = clamp(next < 0 ? last : next - 1, 0, last);
    const [x0, y0] = points[i]!, [x1, y1] = points[i + 1]!, wide = x1 - x0, t = clamp((x - x0) / wide, 0, 1), u = 1 - t;
    return y0 * (1 + 2 * t) * u * u + y1 * (3 - 2 * t) * t * t + wide * t * u * (slopes[i]! * u - slopes[i + 1]! * t);
  };
}

/** Inside, the weighted harmonic mean of the slopes to both sides, level at a peak; at an end as steep as its neighbour lets it be. */
function slopesAt(points: readonly Point[]): number[] {
  const wide = points.slice(1).map(([x], i) => x - points[i]![0]), steep = points.slice(1).map(([, y], i) => (y - points[i]![1]) / wide[i]!);
  const end = (at: number, inner: number): number => {
    if (steep[inner] === undefined) return steep[at]!;
    const slope = ((2 * wide[at]! + wide[inner]!) * steep[at]! - wide[at]! * steep[inner]) / (wide[at]! + wide[inner]!);
    if (slope * steep[at]! <= 0) return 0;
    return Math.abs(slope) > 3 * Math.abs(steep[at]!) ? 3 * steep[at]! : slope;
  };
  return points.map((_, i) => {
    if (i === 0) return end(0, 1);
    if (i === points.length - 1) return end(i - 1, i - 2);
    const before = steep[i - 1]!, after = steep[i]!, a = 2 * wide[i]! + wide[i - 1]!, b = wide[i]! + 2 * wide[i - 1]!;
    return before * after <= 0 ? 0 : (a + b) / (a / before + b / after);
  });
}
