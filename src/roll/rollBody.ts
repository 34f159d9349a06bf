import { between, cross, distance, dot, subtract, type Point } from '../geometry/point.ts';
import { cos, sin } from '../geometry/trig.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { pointAt } from '../profile/groundFace.ts';

/**
 * What of a stiff shoe touches a level floor, one after the other, while it rolls. Points lie in the upright plane of the
 * walking line: [along it, forward from the heel; height above the floor at rest], mm. Roll angles are positive toe down, and
 * 0 is the shoe at rest. Pieces go from heel to toe; each begins at the roll angle at which the one before it ends.
 */
export interface RollBody { readonly pieces: readonly RollPiece[] }
export type RollPiece = RollingArc | RollingEdge | RollingCorner;

/** Rolled over point by point. Angles at the centre from straight down: each is also the roll angle at which its point touches. */
export interface RollingArc { readonly kind: 'arc'; readonly centre: Point; readonly radius: Mm; readonly from: Rad; readonly to: Rad }
/** A straight stretch: at one roll angle all of it touches, and the contact goes from its rear to its front end at once. */
export interface RollingEdge { readonly kind: 'edge'; readonly from: Point; readonly to: Point; readonly angle: Rad }
/** Turned over on the spot. */
export interface RollingCorner { readonly kind: 'corner'; readonly at: Point; readonly from: Rad; readonly to: Rad }

/** Furthest that a shoe is turned over its end corners, back or tip: by then it stands on its end. Walls are not looked at. */
export const UPRIGHT: Rad = Math.PI / 2;

/** Roll angles nearer than this are one. */
const SAME_ROLL: Rad = 1e-12;

export const beginsAt = (piece: RollPiece): Rad => (piece.kind === 'edge' ? piece.angle : piece.from);
export const endsAt = (piece: RollPiece): Rad => (piece.kind === 'edge' ? piece.angle : piece.to);

/** How much floor a piece covers when all of it is rolled over. */
export function lengthOn(piece: RollPiece): Mm {
  switch (piece.kind) {
    case 'arc': return piece.radius * (piece.to - piece.from);
    case 'edge': return distance(piece.from, piece.to);
    case 'corner': return 0;
  }
}

/** The roll angles at which the shoe can be: standing on its back edge to standing on its tip. */
export const turnsBetween = ({ pieces }: RollBody): { readonly from: Rad; readonly to: Rad } =>
  ({ from: beginsAt(pieces[0]!), to: endsAt(pieces[pieces.length - 1]!) });

/** The roll angles that its own underside covers, from strike to toe-off: beyond them it turns over the back edge or the tip. */
export function anglesCovered({ pieces }: RollBody): { readonly from: Rad; readonly to: Rad } {
  const first = pieces[0]!, last = pieces[pieces.length - 1]!;
  return { from: first.kind === 'corner' ? first.to : beginsAt(first), to: last.kind === 'corner' ? last.from : endsAt(last) };
}

export const cornersOf = ({ pieces }: RollBody): readonly RollingCorner[] => pieces.filter((piece) => piece.kind === 'corner');
export const edgesOf = ({ pieces }: RollBody): readonly RollingEdge[] => pieces.filter((piece) => piece.kind === 'edge');

/** Number of the piece that touches at a roll angle; a straight stretch goes before its neighbours.
 *  @throws RangeError beyond the angles the shoe can be at */
function touchingAt(body: RollBody, roll: Rad): number {
  const { pieces } = body, index = pieces.findIndex((piece) => endsAt(piece) >= roll - SAME_ROLL), { from, to } = turnsBetween(body);
  if (index < 0 || !(roll >= from - SAME_ROLL)) throw new RangeError(`a roll of ${roll} rad is beyond what this body turns, ${from} to ${to} rad`);
  for (let i = index; i < pieces.length && beginsAt(pieces[i]!) <= roll + SAME_ROLL; i++) if (pieces[i]!.kind === 'edge') return i;
  return index;
}

/** Both ends of what touches the floor at a roll angle, rear one first; one point twice where only a point touches. @throws RangeError */
export function stretchAt(body: RollBody, roll: Rad): readonly [Point, Point] {
  const piece = body.pieces[touchingAt(body, roll)]!;
  if (piece.kind === 'edge') return [piece.from, piece.to];
  const at = piece.kind === 'corner' ? piece.at : pointAt(piece, roll);
  return [at, at];
}

/** The point of the shoe that touches the floor at a roll angle, where it lies at rest; of a straight stretch its middle. @throws RangeError */
export function contactAt(body: RollBody, roll: Rad): Point {
  const [rear, front] = stretchAt(body, roll);
  return rear === front ? rear : between(rear, front, 0.5);
}

/** Way along the outline from its very beginning to what touches at a roll angle. */
function wayTo(body: RollBody, roll: Rad): Mm {
  const index = touchingAt(body, roll), piece = body.pieces[index]!;
  const before = body.pieces.slice(0, index).reduce((sum, one) => sum + lengthOn(one), 0);
  switch (piece.kind) {
    case 'arc': return before + piece.radius * (roll - piece.from);
    case 'edge': return before + lengthOn(piece) / 2;
    case 'corner': return before;
  }
}

/** How far forward on the floor the contact has come since the shoe was at rest, without sliding; back is negative, mm. @throws RangeError */
export const travelled = (body: RollBody, roll: Rad): Mm => wayTo(body, roll) - wayTo(body, 0);

/** Where on the floor the contact lies, forward of the same zero as `placedAt`; the middle of a straight stretch. @throws RangeError */
export const floorAt = (body: RollBody, roll: Rad): Mm => contactAt(body, 0)[0] + travelled(body, roll);

/** Where points that are fixed to the shoe come to be at one roll angle; see `placedAt`. @throws RangeError */
export function placing(body: RollBody, roll: Rad): (point: Point) => Point {
  const contact = contactAt(body, roll), forward = floorAt(body, roll), floor: Point = [cos(roll), sin(roll)];
  return (point) => { const from = subtract(point, contact); return [forward + dot(floor, from), cross(floor, from)]; };
}

/**
 * Where a point that is fixed to the shoe comes to be when the shoe has rolled there: [forward on the floor, height above it].
 * At rest that is the place it was given by.
 * @param point at rest, [along the walking line, height]
 * @throws RangeError beyond the angles the shoe can be at
 */
export const placedAt = (body: RollBody, point: Point, roll: Rad): Point => placing(body, roll)(point);
