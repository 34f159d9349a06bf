import { clipped, windowRound } from '../../geometry/clip.ts';
import { crossings } from '../../geometry/crossings.ts';
import { pointOn, type Path, type PathPiece } from '../../geometry/path.ts';
import { distance } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';
import type { Mm } from '../../geometry/units.ts';

/** What of a closed line lies between two places along the shoe, closed by straight cuts across; the line itself where it lies between them whole. */
export function stripOf(path: Path, from: Mm, to: Mm): Path {
  const { least, most } = windowRound([path]);
  if (from <= least[0] && to >= most[0]) return path;
  const kept = clipped(path, { least: [from, least[1] - 1], most: [to, most[1] + 1] });
  return kept.flatMap((piece, i): PathPiece[] => {
    const end = pointOn(piece, 1), next = pointOn(kept[(i + 1) % kept.length]!, 0);
    return distance(end, next) < SAME_POINT ? [piece] : [piece, { kind: 'line', from: end, to: next }];
  });
}

/** Half way across a closed line at a place along the shoe. */
export function middleAcross(path: Path, x: Mm): Mm {
  const ys = crossings(path, ([px]) => px - x).map(([, y]) => y);
  return ys.length === 0 ? 0 : (Math.min(...ys) + Math.max(...ys)) / 2;
}
