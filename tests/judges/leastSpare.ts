import { pointAlong } from '../../src/geometry/path.ts';
import type { Point } from '../../src/geometry/point.ts';
import { heightAt, offsetInward } from '../../src/profile/groundFace.ts';
import { planPoint, rollX, rollY } from '../../src/profile/rollLine.ts';
import type { Rocker, RockerCase } from '../../src/profile/rocker.ts';

/**
 * Slow judge: thickness less the asked minimum, looked at all round the edge, on columns across the plan, and along both
 * sides of the line where the heel arc ends.
 */
export function leastSpare(given: RockerCase, rocker: Rocker): number {
  const { minima, stiffener, outsole } = given.order, { last } = given, { edge, line, face } = rocker, inner = offsetInward(face, outsole.thickness);
  const round = Array.from({ length: 1440 }, (_, i) => pointAlong(edge, (i * edge.length) / 1440)), strike = rocker.strikePoint[0];
  const spareAt = ([x, y]: Point): number => {
    const s = rollX(line, [x, y]), thickness = rocker.upper(x, y) + rocker.build - heightAt(face, s);
    const t = Math.min(1, Math.max(0, (x - last.tread) / (last.length - last.tread)));
    const zone = x < last.seatLength ? minima.seat : x < last.tread ? minima.waist : minima.tread + (minima.tip - minima.tread) * t;
    const asked = s < strike ? minima.edge : zone;
    return Math.min(thickness - asked, thickness - stiffener - (heightAt(inner, s) - heightAt(face, s)) - 0.5);
  };
  const turned = round.map((at): Point => [rollX(line, at), rollY(line, at)]);
  const strikeLines = [strike - 1e-7, strike + 1e-7].flatMap((s) => column(turned, s, 60)).map(([s, across]) => planPoint(line, s, across));
  return Math.min(...[...round, ...columnsInside(round), ...strikeLines].map(spareAt));
}

/** Places inside a closed polygon, on lines across it 1.1 mm apart. */
function columnsInside(polygon: readonly Point[]): Point[] {
  const xs = polygon.map(([x]) => x), places: Point[] = [];
  for (let x = Math.min(...xs) + 0.1; x < Math.max(...xs); x += 1.1) places.push(...column(polygon, x, 12));
  return places;
}

/** Places on one line across a closed polygon, from side to side; none where it misses. */
function column(polygon: readonly Point[], x: number, pieces: number): Point[] {
  const cuts = polygon.flatMap(([x0, y0], i) => {
    const [x1, y1] = polygon[(i + 1) % polygon.length]!;
    return x0 < x !== x1 < x ? [y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)] : [];
  });
  if (cuts.length === 0) return [];
  const from = Math.min(...cuts), to = Math.max(...cuts);
  return Array.from({ length: pieces + 1 }, (_, k): Point => [x, from + ((to - from) * k) / pieces]);
}
