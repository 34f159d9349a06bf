import { clamp } from '../geometry/solve.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { asin, atan2, cos, sin } from '../geometry/trig.ts';

/** The trade's names for the parts of the ground face, heel to toe. */
type PieceName =
  | 'behind the strike point' | 'heel arc' | 'mid arc, rear' | 'standing flat' | 'mid arc, front' | 'toe arc' | 'beyond the end angle' | 'level tread';

/**
 * One arc of the ground face. Angles are measured at the centre from straight down, positive forward, so an angle on
 * the arc is also the roll angle at which that point is on the ground (positive: toe down).
 */
export interface RollArc { readonly kind: 'arc'; readonly name: PieceName; readonly centre: Point; readonly radius: Mm; readonly from: Rad; readonly to: Rad }
/** A straight piece of the ground face, running forward at one slope. */
export interface RollStraight { readonly kind: 'straight'; readonly name: PieceName; readonly from: Point; readonly to: Point }
export type GroundPiece = RollArc | RollStraight;

/**
 * The face that rolls, in the side view [x, z]: arcs and straight pieces from heel to toe, tangent to each other,
 * each hollow side up, so the slope never falls. The first and last piece run on beyond their ends.
 */
export interface GroundFace { readonly pieces: readonly GroundPiece[] }

/** The point of an arc that touches the ground at a roll angle. */
export const pointAt = ({ centre: [cx, cz], radius }: Pick<RollArc, 'centre' | 'radius'>, angle: Rad): Point =>
  [cx + radius * sin(angle), cz - radius * cos(angle)];

export const startOf = (piece: GroundPiece): Point => piece.kind === 'arc' ? pointAt(piece, piece.from) : piece.from;
export const endOf = (piece: GroundPiece): Point => piece.kind === 'arc' ? pointAt(piece, piece.to) : piece.to;

const slopeAngle = ({ from, to }: RollStraight): Rad => atan2(to[1] - from[1], to[0] - from[0]);
export const startAngle = (piece: GroundPiece): Rad => piece.kind === 'arc' ? piece.from : slopeAngle(piece);
export const endAngle = (piece: GroundPiece): Rad => piece.kind === 'arc' ? piece.to : slopeAngle(piece);

/** Where neighbouring pieces meet, heel to toe. */
export const jointsOf = ({ pieces }: GroundFace): Point[] => pieces.slice(1).map(startOf);

/** The piece above a place x; the end pieces serve all that lies beyond them. */
function pieceAbove({ pieces }: GroundFace, x: Mm): GroundPiece {
  for (let i = 0; i < pieces.length - 1; i++) if (x < endOf(pieces[i]!)[0]) return pieces[i]!;
  return pieces[pieces.length - 1]!;
}

export const pieceNamed = ({ pieces }: GroundFace, name: PieceName): GroundPiece | undefined =>
  pieces.find((piece) => piece.name === name);

/** Roll angle at which the point of the face above x is on the ground. NaN where an end arc no longer reaches. */
export function angleAt(face: GroundFace, x: Mm): Rad {
  const piece = pieceAbove(face, x);
  return piece.kind === 'arc' ? asin((x - piece.centre[0]) / piece.radius) : slopeAngle(piece);
}

/** Height of the ground face above the ground at x, shoe at rest. NaN where an end arc no longer reaches. */
export const heightAt = (face: GroundFace, x: Mm): Mm => heightOf(pieceAbove(face, x), x);

/** The same for many places: where the pieces end is worked out once. */
export function heightsOf({ pieces }: GroundFace): (x: Mm) => Mm {
  const ends = pieces.map((piece) => endOf(piece)[0]), last = pieces.length - 1;
  return (x) => {
    let i = 0;
    while (i < last && x >= ends[i]!) i++;
    return heightOf(pieces[i]!, x);
  };
}

function heightOf(piece: GroundPiece, x: Mm): Mm {
  if (piece.kind === 'straight') {
    const [x0, z0] = piece.from, [x1, z1] = piece.to;
    return z0 + ((x - x0) * (z1 - z0)) / (x1 - x0);
  }
  const aside = x - piece.centre[0];
  return piece.centre[1] - Math.sqrt(piece.radius * piece.radius - aside * aside);
}

/** The parallel face a distance further in (towards the foot). Exact: arcs keep their centres.
 *  @throws RangeError when an arc is tighter than the distance */
export function offsetInward({ pieces }: GroundFace, distance: Mm): GroundFace {
  return {
    pieces: pieces.map((piece): GroundPiece => {
      if (piece.kind === 'arc') {
        if (!(piece.radius > distance)) throw new RangeError(`${piece.name} of radius ${piece.radius} mm cannot be set in by ${distance} mm`);
        return { ...piece, radius: piece.radius - distance };
      }
      const angle = slopeAngle(piece), shift: Point = [-distance * sin(angle), distance * cos(angle)];
      return { ...piece, from: [piece.from[0] + shift[0], piece.from[1] + shift[1]], to: [piece.to[0] + shift[0], piece.to[1] + shift[1]] };
    }),
  };
}

/** The part of each piece that lies between two places, as x-ranges; end pieces run on. */
function* spans(face: GroundFace, from: Mm, to: Mm): Generator<[GroundPiece, Mm, Mm]> {
  const { pieces } = face;
  for (const [i, piece] of pieces.entries()) {
    const begin = i === 0 ? -Infinity : startOf(piece)[0], end = i === pieces.length - 1 ? Infinity : endOf(piece)[0];
    const a = clamp(from, begin, end), b = clamp(to, begin, end);
    if (b > a) yield [piece, a, b];
  }
}

const angleOn = (arc: RollArc, x: Mm): Rad => asin((x - arc.centre[0]) / arc.radius);

/** Length along the face between two places x, mm, exact. */
export function lengthBetween(face: GroundFace, from: Mm, to: Mm): Mm {
  let sum = 0;
  for (const [piece, a, b] of spans(face, from, to)) {
    sum += piece.kind === 'arc' ? piece.radius * (angleOn(piece, b) - angleOn(piece, a)) : (b - a) / cos(slopeAngle(piece));
  }
  return sum;
}

/** Area between the face and the ground from one place to another, mm², exact. */
export function areaBelow(face: GroundFace, from: Mm, to: Mm): number {
  let sum = 0;
  for (const [piece, a, b] of spans(face, from, to)) {
    if (piece.kind === 'straight') { sum += ((heightOf(piece, a) + heightOf(piece, b)) / 2) * (b - a); continue; }
    const { centre: [, cz], radius: r } = piece, t0 = angleOn(piece, a), t1 = angleOn(piece, b);
    const sector = (r * r / 2) * (t1 - t0 + (sin(2 * t1) - sin(2 * t0)) / 2);
    sum += cz * (b - a) - sector;
  }
  return sum;
}
