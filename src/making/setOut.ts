import { part } from '../geometry/clip.ts';
import { isTooTight, lengthOf, parallelPiece, pointOn, type Path, type PathArc, type PathPiece } from '../geometry/path.ts';
import { add, cross, distance, dot, scale, subtract, turnLeft, unit, type Point } from '../geometry/point.ts';
import { SAME_POINT } from '../geometry/tolerances.ts';
import type { Mm } from '../geometry/units.ts';
import { atan2 } from '../geometry/trig.ts';

/**
 * The line round a closed path that keeps a distance from it, in exact arcs; inside it where the distance is negative. In a
 * hollow tighter than the distance (inside: at a point) the parallel runs back through itself; what lies nearer than the
 * distance is cut off there, and a corner is left.
 */
export function setOut(path: Path, by: Mm): Path {
  const raw = path.map((piece) => parallelPiece(piece, by));
  return path.some((piece) => isTooTight(piece, by)) ? withoutLoops(raw, path, by) : raw;
}

/** A closed line round a path, without the loops that lie nearer to the path than the distance. */
export function withoutLoops(raw: Path, path: Path, by: Mm): Path {
  const cuts = loopsOf(raw, (at) => fromPath(path, at) >= Math.abs(by) - SAME_POINT);
  return cuts.length === 0 ? raw : cuts.flatMap(({ to }, i) => {
    const next = cuts[i + 1]?.from ?? cuts[0]!.from + raw.length;
    return stretch(raw, to, next);
  });
}

/** A loop to be cut off, between two places of the closed path that are one point: the whole part says which piece, the rest how far along it. */
interface Loop { readonly from: number; readonly to: number }

/** The loops between crossings that are wanted, in order, each outermost one once. */
function loopsOf(path: Path, wanted: (at: Point) => boolean): Loop[] {
  const boxes = path.map(boxRound);
  const found = path.flatMap((a, i) => path.slice(i + 1).flatMap((b, k): Loop[] => !overlap(boxes[i]!, boxes[i + 1 + k]!) ? [] : meetings(a, b).flatMap((at) => {
    const from = i + shareOf(a, at), to = i + 1 + k + shareOf(b, at), inside = onPiece(from - i) && onPiece(to - i - 1 - k);
    return inside && !isJoint(path, from, to) && wanted(at) ? [shorter(path.length, from, to)] : [];
  })));
  const inOrder = found.sort((a, b) => a.from - b.from || b.to - a.to);
  return inOrder.filter(({ to }, i) => inOrder.slice(0, i).every((earlier) => to > earlier.to + SAME_PLACE));
}

/** A box that a piece lies in, though not the smallest: most pieces of a long path are nowhere near each other. */
function boxRound(piece: PathPiece): readonly [left: Mm, right: Mm, low: Mm, high: Mm] {
  const [ax, ay] = pointOn(piece, 0), [bx, by] = pointOn(piece, 1), belly = piece.kind === 'arc' ? Math.min(2 * piece.radius, lengthOf(piece)) : SAME_POINT;
  return [Math.min(ax, bx) - belly, Math.max(ax, bx) + belly, Math.min(ay, by) - belly, Math.max(ay, by) + belly];
}
const overlap = (a: ReturnType<typeof boxRound>, b: ReturnType<typeof boxRound>): boolean => a[0] <= b[1] && b[0] <= a[1] && a[2] <= b[3] && b[2] <= a[3];

/** Two places on the path nearer than this are one. */
const SAME_PLACE = 1e-9;
const onPiece = (share: number): boolean => share >= -SAME_PLACE && share <= 1 + SAME_PLACE;
/** Pieces that touch where they join seem to cross there once more, a last digit away. */
const isJoint = (path: Path, from: number, to: number): boolean => isNear(path, from, to) || isNear(path, to, from + path.length);
function isNear(path: Path, from: number, to: number): boolean {
  const first = Math.floor(from), last = Math.floor(to), piece = (i: number): PathPiece => path[i % path.length]!;
  if (last - first > 1) return false;
  return (first === last ? (to - from) * lengthOf(piece(first)) : (last - from) * lengthOf(piece(first)) + (to - last) * lengthOf(piece(last))) < SAME_POINT;
}
/** A loop is the shorter way between its ends; it may run over the start of the path. */
const shorter = (turns: number, from: number, to: number): Loop => to - from <= turns / 2 ? { from, to } : { from: to - turns, to: from };

/** The pieces of a closed path between two places, the first and the last cut short. */
function stretch(path: Path, from: number, to: number): PathPiece[] {
  const cut: PathPiece[] = [], turns = path.length;
  for (let i = Math.floor(from); i < to; i++) {
    const piece = part(path[((i % turns) + turns) % turns]!, Math.max(0, from - i), Math.min(1, to - i));
    if (lengthOf(piece) > SAME_PLACE) cut.push(piece);
  }
  return cut;
}

/** How far along a piece a point of its line or circle lies, as a share of it: less than 0 behind it, more than 1 ahead. */
function shareOf(piece: PathPiece, at: Point): number {
  if (piece.kind === 'line') return dot(subtract(at, piece.from), unit(subtract(piece.to, piece.from))) / lengthOf(piece);
  const turn = Math.sign(piece.sweep), whole = 2 * Math.PI, half = Math.abs(piece.sweep) / 2;
  const past = (atan2(at[1] - piece.centre[1], at[0] - piece.centre[0]) - piece.start) * turn - half;
  return (past - whole * Math.round(past / whole) + half) / (2 * half);
}

/** Distance from a point to the nearest place of a path. */
export const fromPath = (path: Path, at: Point): Mm => Math.min(...path.map((piece) => {
  const share = shareOf(piece, at);
  if (share < 0 || share > 1) return Math.min(distance(at, pointOn(piece, 0)), distance(at, pointOn(piece, 1)));
  return piece.kind === 'arc' ? Math.abs(distance(at, piece.centre) - piece.radius) : distance(at, pointOn(piece, share));
}));

/** Where the lines and circles that two pieces lie on meet: two points, or none. */
function meetings(a: PathPiece, b: PathPiece): Point[] {
  if (a.kind === 'arc') return b.kind === 'arc' ? circlesMeet(a, b) : lineMeets(b.from, b.to, a);
  if (b.kind === 'arc') return lineMeets(a.from, a.to, b);
  const run = subtract(a.to, a.from), other = subtract(b.to, b.from), turn = cross(run, other);
  return turn === 0 ? [] : [add(a.from, scale(run, cross(subtract(b.from, a.from), other) / turn))];
}

function lineMeets(from: Point, to: Point, { centre, radius }: PathArc): Point[] {
  const along = unit(subtract(to, from)), foot = add(from, scale(along, dot(subtract(centre, from), along)));
  return bothSides(foot, along, radius ** 2 - distance(foot, centre) ** 2);
}

function circlesMeet(a: PathArc, b: PathArc): Point[] {
  const apart = distance(a.centre, b.centre);
  if (apart === 0) return [];
  const along = unit(subtract(b.centre, a.centre)), foot = (apart ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * apart);
  return bothSides(add(a.centre, scale(along, foot)), turnLeft(along), a.radius ** 2 - foot ** 2);
}

const bothSides = (middle: Point, along: Point, square: number): Point[] =>
  square < 0 ? [] : [1, -1].map((side) => add(middle, scale(along, side * Math.sqrt(square))));
