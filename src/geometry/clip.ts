import { lengthOf, pointOn, type Path, type PathArc, type PathPiece } from './path.ts';
import type { Point } from './point.ts';
import { acos, asin } from './trig.ts';
import type { Mm, Rad } from './units.ts';

/** An upright rectangle by its least and its greatest corner, borders included, mm. */
export interface Window { readonly least: Point; readonly most: Point }

/** Shorter than this a piece is only where a path touches the border. */
const NO_LENGTH: Mm = 1e-9;

/** What of a path lies inside a window, exact: arcs stay arcs. Pieces that meet inside still meet. */
export function clipped(path: Path, window: Window): Path {
  return path.flatMap((piece) => {
    const cuts = [0, ...bordersOn(piece, window).sort((a, b) => a - b), 1];
    return cuts.slice(1).flatMap((to, i): PathPiece[] => {
      const from = cuts[i]!, kept = part(piece, from, to);
      return lengthOf(kept) > NO_LENGTH && within(window, pointOn(piece, (from + to) / 2)) ? [kept] : [];
    });
  });
}

/** The part of a piece between two shares of it. */
export const part = (piece: PathPiece, from: number, to: number): PathPiece => piece.kind === 'line'
  ? { kind: 'line', from: pointOn(piece, from), to: pointOn(piece, to) }
  : { ...piece, start: piece.start + piece.sweep * from, sweep: piece.sweep * (to - from) };

const within = ({ least, most }: Window, [x, y]: Point): boolean => x >= least[0] && x <= most[0] && y >= least[1] && y <= most[1];

/** Shares of a piece at which it meets the four lines the borders lie on. */
function bordersOn(piece: PathPiece, { least, most }: Window): number[] {
  return ([0, 1] as const).flatMap((axis) => [least[axis], most[axis]].flatMap((at) => meets(piece, axis, at))).filter((t) => t > 0 && t < 1);
}

/** Shares of a piece at which one of its coordinates has a value. */
function meets(piece: PathPiece, axis: 0 | 1, at: Mm): number[] {
  if (piece.kind === 'line') {
    const run = piece.to[axis] - piece.from[axis];
    return run === 0 ? [] : [(at - piece.from[axis]) / run];
  }
  const share = (at - piece.centre[axis]) / piece.radius;
  if (Math.abs(share) > 1) return [];
  const angle = axis === 0 ? acos(share) : asin(share);
  return [angle, axis === 0 ? -angle : Math.PI - angle].flatMap((one) => passes(piece, one));
}

/** Shares of an arc at which it passes a direction from its centre. */
export function passes({ start, sweep }: PathArc, angle: Rad): number[] {
  if (sweep === 0) return [];
  const turn = Math.sign(sweep), full = 2 * Math.PI, first = ((((angle - start) * turn) % full) + full) % full, size = Math.abs(sweep);
  return Array.from({ length: Math.floor((size - first) / full) + 1 }, (_, i) => (first + i * full) / size);
}

/** The least window round paths, exact. @throws RangeError when there is nothing to go round */
export function windowRound(paths: readonly Path[]): Window {
  const points = paths.flat().flatMap(extremes);
  if (points.length === 0) throw new RangeError('a window must go round at least one piece of a path, got 0');
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { least: [Math.min(...xs), Math.min(...ys)], most: [Math.max(...xs), Math.max(...ys)] };
}

/** Ends of a piece, and where an arc turns back along an axis. */
const extremes = (piece: PathPiece): Point[] =>
  [0, 1, ...(piece.kind === 'arc' ? QUARTERS.flatMap((angle) => passes(piece, angle)) : [])].map((t) => pointOn(piece, t));
const QUARTERS: readonly Rad[] = [0, 1, 2, 3].map((i) => (i * Math.PI) / 2);

/** The places of a closed path, whole part the piece, at which it runs furthest against or along the first axis. */
export function endsOf(path: Path): { readonly rear: number; readonly fore: number } {
  // A turn a last digit before the end of its piece is the beginning of the next one, which is looked at itself.
  const turns = path.flatMap((piece, i) => piece.kind === 'line' ? [] : [0, Math.PI].flatMap((angle) => passes(piece, angle)).map((t) => i + t).filter((w) => w > i && w < i + 1));
  const places = [...path.keys(), ...turns], xs = places.map((w) => pointOn(path[Math.floor(w)]!, w - Math.floor(w))[0]);
  return { rear: places[xs.indexOf(Math.min(...xs))]!, fore: places[xs.indexOf(Math.max(...xs))]! };
}
