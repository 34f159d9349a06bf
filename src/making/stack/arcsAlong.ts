import { pointOn, type Path, type PathPiece } from '../../geometry/path.ts';
import { between, cross, distance, dot, subtract, unit, type Point } from '../../geometry/point.ts';
import { atan2 } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';

/**
 * A line through many points as few arcs and straight pieces that pass no point by more than a gap. Pieces begin and end
 * on points of the line; corners stay corners.
 */
export function arcsThrough(points: readonly Point[], gap: Mm): Path {
  const path: PathPiece[] = [];
  for (let i = 0; i + 1 < points.length;) {
    let end = i + 1, piece = straight(points[i]!, points[end]!);
    for (let k = i + 2; k < points.length; k++) {
      const longer = through(points.slice(i, k + 1), gap);
      if (!longer) break;
      [end, piece] = [k, longer];
    }
    path.push(piece);
    i = end;
  }
  return path;
}

/** The same for a closed line; its last point is not its first one said again. */
export const arcsRoundRing = (ring: readonly Point[], gap: Mm): Path => arcsThrough(fromCorner(ring), gap);

/** Begun where the line turns most, so that no piece is cut short in the middle of a smooth run; the first point comes again at the end. */
function fromCorner(ring: readonly Point[]): Point[] {
  const bends = ring.map((at, i) => dot(unit(subtract(at, ring.at(i - 1)!)), unit(subtract(ring[(i + 1) % ring.length]!, at)))), start = bends.indexOf(Math.min(...bends));
  return [...ring.slice(start), ...ring.slice(0, start + 1)];
}

const straight = (from: Point, to: Point): PathPiece => ({ kind: 'line', from, to });

/** One piece from the first point to the last that passes near all between, in their order; undefined where there is none. */
function through(points: readonly Point[], gap: Mm): PathPiece | undefined {
  const first = points[0]!, last = points[points.length - 1]!, middle = points[points.length >> 1]!;
  return [straight(first, last), arcOver(first, middle, last)].find((piece) => piece && passes(piece, points, gap));
}

/** Flatter arcs are straight within any gap; a piece turns less than half round. */
function arcOver(a: Point, b: Point, c: Point): PathPiece | undefined {
  const [bx, by] = subtract(b, a), [cx, cy] = subtract(c, a), turn = 2 * (bx * cy - by * cx), bb = bx * bx + by * by, cc = cx * cx + cy * cy;
  const centre: Point = [a[0] + (cy * bb - by * cc) / turn, a[1] + (bx * cc - cx * bb) / turn], radius = distance(centre, a);
  if (!(radius < FLAT)) return undefined;
  const from = subtract(a, centre), to = subtract(c, centre), sweep = atan2(cross(from, to), dot(from, to));
  return Math.sign(sweep) === Math.sign(turn) ? { kind: 'arc', centre, radius, start: atan2(from[1], from[0]), sweep } : undefined;
}
const FLAT: Mm = 1e5;

/** Whether each point lies near the piece, and each stretch between two points runs near it too, and the way it does: a small round and a long straight stretch share no arc, though one goes through all their points. */
function passes(piece: PathPiece, points: readonly Point[], gap: Mm): boolean {
  const way = unit(subtract(pointOn(piece, 1), pointOn(piece, 0)));
  return points.every((at, i) => {
    const before = points[Math.max(0, i - 1)]!;
    return off(piece, at) <= gap && off(piece, between(before, at, 0.5)) <= gap && (i === 0 || dot(subtract(at, before), piece.kind === 'line' ? way : tangentAt(piece, at)) > 0);
  });
}

const off = (piece: PathPiece, at: Point): Mm => piece.kind === 'arc' ? Math.abs(distance(at, piece.centre) - piece.radius)
  : Math.abs(cross(unit(subtract(piece.to, piece.from)), subtract(at, piece.from)));
const tangentAt = ({ centre, sweep }: Extract<PathPiece, { kind: 'arc' }>, [x, y]: Point): Point => [-(y - centre[1]) * Math.sign(sweep), (x - centre[0]) * Math.sign(sweep)];
