import type { Path } from '../../geometry/path.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';

/** A closed path of straight pieces through corners; a corner that is the one before it counts once. */
export function polygon(corners: readonly Point[]): Path {
  const own = corners.filter((corner, i) => distance(corner, corners.at(i - 1)!) >= SAME_POINT);
  return own.map((from, i) => ({ kind: 'line', from, to: own[(i + 1) % own.length]! }));
}
