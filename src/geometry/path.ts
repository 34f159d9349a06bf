import { add, between, cross, distance, dot, scale, subtract, turnLeft, unit, type Point } from './point.ts';
import type { Mm, Rad } from './units.ts';
import { atan2, cos, sin } from './trig.ts';

/** Part of a circle in a plane. Angles from the first axis; a positive sweep turns left. */
export interface PathArc { readonly kind: 'arc'; readonly centre: Point; readonly radius: Mm; readonly start: Rad; readonly sweep: Rad }
export interface PathLine { readonly kind: 'line'; readonly from: Point; readonly to: Point }
export type PathPiece = PathArc | PathLine;

/**
 * A plane curve of arcs and straight pieces laid end to end, each tangent to the next unless said otherwise.
 * A closed path that encloses an area runs counter-clockwise, so its outside is on the right hand.
 */
export type Path = readonly PathPiece[];

/** Straighter than this radius (1 km) an arc is drawn as a straight piece: over 300 mm it bulges 0.01 µm. */
const STRAIGHT_RADIUS: Mm = 1e6;

/** The point a fraction t (0 to 1) along a piece. */
export function pointOn(piece: PathPiece, t: number): Point {
  if (piece.kind === 'line') return between(piece.from, piece.to, t);
  const angle = piece.start + piece.sweep * t;
  return [piece.centre[0] + piece.radius * cos(angle), piece.centre[1] + piece.radius * sin(angle)];
}

/** The unit direction of travel a fraction t along a piece. */
export function directionOn(piece: PathPiece, t: number): Point {
  if (piece.kind === 'line') return unit(subtract(piece.to, piece.from));
  const angle = piece.start + piece.sweep * t, turn = Math.sign(piece.sweep);
  return [-sin(angle) * turn, cos(angle) * turn];
}

export const lengthOf = (piece: PathPiece): Mm =>
  piece.kind === 'line' ? distance(piece.from, piece.to) : piece.radius * Math.abs(piece.sweep);

export const pathLength = (path: Path): Mm => path.reduce((sum, piece) => sum + lengthOf(piece), 0);

/** Place on a path: the whole part says which piece, the rest how far along it. Closed paths wrap round. */
function locate(path: Path, w: number): [piece: PathPiece, t: number] {
  const wrapped = ((w % path.length) + path.length) % path.length;
  const index = Math.min(Math.floor(wrapped), path.length - 1);
  return [path[index]!, wrapped - index];
}
export function pointAlong(path: Path, w: number): Point { const [piece, t] = locate(path, w); return pointOn(piece, t); }
export function directionAlong(path: Path, w: number): Point { const [piece, t] = locate(path, w); return directionOn(piece, t); }

/** A place on a path with the unit direction of travel there, both from one sine and cosine: walls ask for thousands. */
export function frameAlong(path: Path, w: number): { readonly at: Point; readonly direction: Point } {
  const [piece, t] = locate(path, w);
  if (piece.kind === 'line') return { at: pointOn(piece, t), direction: directionOn(piece, t) };
  const { centre, radius, start, sweep } = piece, angle = start + sweep * t, cosine = cos(angle), sine = sin(angle), turn = Math.sign(sweep);
  return { at: [centre[0] + radius * cosine, centre[1] + radius * sine], direction: [-sine * turn, cosine * turn] };
}

/** Area inside a closed path, mm², exact. Positive when it runs counter-clockwise. */
export function enclosedArea(path: Path): number {
  return path.reduce((sum, piece) => {
    const a = pointOn(piece, 0), b = pointOn(piece, 1);
    const cap = piece.kind === 'arc' ? (piece.radius ** 2 / 2) * (piece.sweep - sin(piece.sweep)) : 0;
    return sum + cross(a, b) / 2 + cap;
  }, 0);
}

/**
 * A piece set out to the right of its travel, exact. A hollow arc tighter than the distance comes out turned inside out:
 * the parallel curve runs backwards there.
 */
export function parallelPiece(piece: PathPiece, distanceRight: Mm): PathPiece {
  if (piece.kind === 'line') {
    const shift = scale(turnLeft(unit(subtract(piece.to, piece.from))), -distanceRight);
    return { kind: 'line', from: add(piece.from, shift), to: add(piece.to, shift) };
  }
  const radius = piece.radius + Math.sign(piece.sweep) * distanceRight;
  return radius < 0 ? { ...piece, radius: -radius, start: piece.start + Math.PI } : { ...piece, radius };
}

/** A hollow arc that leaves nothing, or turns inside out, when it is set out. */
export const isTooTight = (piece: PathPiece, distanceRight: Mm): boolean =>
  piece.kind === 'arc' && !(piece.radius + Math.sign(piece.sweep) * distanceRight > 0);

/** The parallel path a distance to the right of the direction of travel (outwards, on a closed path). Exact.
 *  @throws RangeError where a hollow arc is tighter than the distance */
export function offsetRight(path: Path, distanceRight: Mm): Path {
  return path.map((piece): PathPiece => {
    if (piece.kind === 'arc' && isTooTight(piece, distanceRight)) throw new RangeError(`a hollow of radius ${piece.radius} mm cannot be set out by ${distanceRight} mm`);
    return parallelPiece(piece, distanceRight);
  });
}

/** The same path set aside. */
export const moved = (path: Path, by: Point): Path => path.map((piece) => piece.kind === 'line'
  ? { ...piece, from: add(piece.from, by), to: add(piece.to, by) }
  : { ...piece, centre: add(piece.centre, by) });

/** The path as seen in a mirror on the first axis, run backwards so that a closed path stays counter-clockwise. */
export function mirroredPath(path: Path): Path {
  const flip = ([x, y]: Point): Point => [x, -y];
  return path.map((piece): PathPiece => piece.kind === 'line'
    ? { kind: 'line', from: flip(piece.to), to: flip(piece.from) }
    : { kind: 'arc', centre: flip(piece.centre), radius: piece.radius, start: -(piece.start + piece.sweep), sweep: piece.sweep })
    .reverse();
}

/** The same path travelled the other way. */
export const reversed = (path: Path): Path => path.map((piece): PathPiece => piece.kind === 'line'
  ? { kind: 'line', from: piece.to, to: piece.from }
  : { ...piece, start: piece.start + piece.sweep, sweep: -piece.sweep }).reverse();

/** The path as seen in a mirror on the second axis, run backwards so that a closed path stays counter-clockwise. */
export function mirroredLengthwise(path: Path): Path {
  const flip = ([x, y]: Point): Point => [-x, y];
  return path.map((piece): PathPiece => piece.kind === 'line'
    ? { kind: 'line', from: flip(piece.to), to: flip(piece.from) }
    : { kind: 'arc', centre: flip(piece.centre), radius: piece.radius, start: Math.PI - (piece.start + piece.sweep), sweep: piece.sweep })
    .reverse();
}

/** The arc that leaves `from` in a direction and arrives at `to`; a straight piece where it would hardly bend. */
export function arcThrough(from: Point, direction: Point, to: Point): PathPiece {
  const chord = subtract(to, from), left = turnLeft(direction);
  const aside = dot(chord, left), curvature = (2 * aside) / dot(chord, chord);
  if (Math.abs(curvature) < 1 / STRAIGHT_RADIUS) return { kind: 'line', from, to };
  const centre = add(from, scale(left, 1 / curvature));
  return {
    kind: 'arc', centre, radius: 1 / Math.abs(curvature),
    start: atan2(from[1] - centre[1], from[0] - centre[0]), sweep: 2 * atan2(aside, dot(chord, direction)),
  };
}

/**
 * Two tangent arcs that leave `from` in one direction and arrive at `to` in another (a biarc with equal tangent lengths).
 * Source: K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975) 89-92 (from memory).
 */
export function biarc(from: Point, leaving: Point, to: Point, arriving: Point): Path {
  const chord = subtract(to, from), both = add(leaving, arriving);
  const along = dot(chord, both), turn = 2 * (1 - dot(leaving, arriving)), square = dot(chord, chord);
  const tangent = turn > 1e-12
    ? (-along + Math.sqrt(along * along + turn * square)) / turn
    : square / (4 * dot(chord, arriving));
  const joint = scale(add(add(from, to), scale(subtract(leaving, arriving), tangent)), 0.5);
  const first = arcThrough(from, leaving, joint);
  return [first, arcThrough(joint, directionOn(first, 1), to)];
}

/** Distance from a point to the circle or line a piece lies on. */
function strayFrom(piece: PathPiece, point: Point): Mm {
  return piece.kind === 'arc'
    ? Math.abs(distance(point, piece.centre) - piece.radius)
    : Math.abs(cross(unit(subtract(piece.to, piece.from)), subtract(point, piece.from)));
}

/** The piece of a biarc that lies beside a point: the first up to the joint, the second behind it. */
function besideIn(pair: Path, point: Point): PathPiece {
  const joint = pointOn(pair[0]!, 1), onward = directionOn(pair[0]!, 1);
  return dot(subtract(point, joint), onward) < 0 ? pair[0]! : pair[1]!;
}

const JUDGED_AT = [0.12, 0.25, 0.38, 0.5, 0.62, 0.75, 0.88];

/**
 * Tangent arcs that follow a smooth curve within a gap. The nodes lie on the curve and share its direction there,
 * so neighbours meet without a step or a kink.
 * @param curve point at a place t; must be smooth between the breaks given
 * @param breaks places in rising order, first and last the ends; arcs always end at them
 * @throws Error when the curve is not smooth between its breaks, which is a fault of the program
 */
export function fitArcs(curve: (t: number) => Point, breaks: readonly number[], gap: Mm): Path {
  const first = breaks[0]!, last = breaks[breaks.length - 1]!, nudge = (last - first) * 1e-6;
  const heading = (t: number): Point => unit(subtract(curve(t + nudge), curve(t - nudge)));
  const follow = (a: number, b: number, depth: number): Path => {
    const pair = biarc(curve(a), heading(a), curve(b), heading(b));
    const worst = Math.max(...JUDGED_AT.map((k) => {
      const point = curve(a + (b - a) * k);
      return strayFrom(besideIn(pair, point), point);
    }));
    if (worst <= gap) return pair;
    if (depth === 0) throw new Error(`arcs from place ${a} to ${b} stray ${worst} mm from their curve, more than the ${gap} mm allowed: it is not smooth there`);
    const middle = (a + b) / 2;
    return [...follow(a, middle, depth - 1), ...follow(middle, b, depth - 1)];
  };
  return breaks.slice(1).flatMap((end, i) => follow(breaks[i]!, end, 12));
}
