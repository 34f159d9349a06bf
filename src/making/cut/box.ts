import { pointOn, type Path, type PathPiece } from '../../geometry/path.ts';
import { add, along, scale, type Point } from '../../geometry/point.ts';

/** The box round a path, with the bellies of its arcs. */
export function boxOfPath(path: Path): { readonly least: Point; readonly most: Point } {
  const points = path.flatMap(reachOf), [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { least: [Math.min(...xs), Math.min(...ys)], most: [Math.max(...xs), Math.max(...ys)] };
}

/** The ends of a piece, and where an arc turns back in x or y. */
function reachOf(piece: PathPiece): Point[] {
  const ends = [pointOn(piece, 0), pointOn(piece, 1)];
  if (piece.kind === 'line') return ends;
  const quarter = Math.PI / 2, [from, to] = piece.sweep > 0 ? [piece.start, piece.start + piece.sweep] : [piece.start + piece.sweep, piece.start], first = Math.ceil(from / quarter);
  const turns = Array.from({ length: Math.max(0, Math.floor(to / quarter) - first + 1) }, (_, i) => add(piece.centre, scale(along((first + i) * quarter), piece.radius)));
  return [...ends, ...turns];
}
