import { cross, distance, subtract, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';

/** The points of a line that are needed to keep within a gap of all of them (Douglas and Peucker 1973, from memory). */
export function thinned(points: readonly Point[], gap: Mm): Point[] {
  const kept = new Set([0, points.length - 1]), stretches: (readonly [number, number])[] = [[0, points.length - 1]];
  for (let stretch = stretches.pop(); stretch; stretch = stretches.pop()) {
    const [from, to] = stretch;
    let worst = from, most = gap;
    for (let i = from + 1; i < to; i++) {
      const off = offChord(points[from]!, points[to]!, points[i]!);
      if (off > most) { most = off; worst = i; }
    }
    if (worst === from) continue;
    kept.add(worst);
    stretches.push([from, worst], [worst, to]);
  }
  return points.filter((_, i) => kept.has(i));
}

function offChord(a: Point, b: Point, point: Point): Mm {
  const size = distance(a, b);
  return size > 0 ? Math.abs(cross(subtract(b, a), subtract(point, a))) / size : distance(a, point);
}
