import type { Point } from './point.ts';

/**
 * A curve through measured heights that never swings past them: cubic pieces, smooth in slope, level where the readings turn.
 * Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304 (from memory).
 * Beyond the ends it runs on straight.
 * @param readings points [x, height] with rising x, at least two
 */
export function steadyCurve(readings: readonly Point[]): (x: number) => number {
  const n = readings.length;
  if (n < 2) throw new RangeError(`a curve needs at least two readings, got ${n}`);
  const secants = readings.slice(1).map(([x, z], i) => (z - readings[i]![1]) / (x - readings[i]![0]));
  const slopes = readings.map((_, i) => {
    const before = secants[i - 1], after = secants[i];
    if (before === undefined) return after!;
    if (after === undefined) return before;
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
  return (x) => {
    const after = readings.findIndex(([at]) => at > x);
    if (after === 0) return readings[0]![1] + slopes[0]! * (x - readings[0]![0]);
    if (after < 0) return readings[n - 1]![1] + slopes[n - 1]! * (x - readings[n - 1]![0]);
    const [x0, z0] = readings[after - 1]!, [x1, z1] = readings[after]!, width = x1 - x0, t = (x - x0) / width;
    const m0 = slopes[after - 1]! * width, m1 = slopes[after]! * width;
    return z0 + t * (m0 + t * (3 * (z1 - z0) - 2 * m0 - m1 + t * (m0 + m1 - 2 * (z1 - z0))));
  };
}
