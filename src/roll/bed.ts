import { between, type Point } from '../geometry/point.ts';
import { clamp } from '../geometry/solve.ts';
import { acos, cos, sin } from '../geometry/trig.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { pointAt } from '../profile/groundFace.ts';
import type { Layer } from './layer.ts';
import { placing, type RollBody, type RollPiece } from './rollBody.ts';

/** A place of the sole in the contact: along the walking line at rest, and forward on the floor. */
interface Place { readonly along: Mm; readonly forward: Mm }
/** A spring of the bed: N/mm, and how high the sole stands above the floor there before anything gives. */
interface Spring extends Place { readonly height: Mm; readonly stiffness: number }
/** All springs under a sole that has sunk in, with the ends of what touches. */
export interface Bed { readonly rear: Place; readonly front: Place; readonly springs: readonly Spring[] }

/** Part of a piece that has sunk in: where a place of it lies, `t` from 0 at its rear to 1 at its front, and how much floor a little of t covers. */
interface Sunk { readonly at: (t: number) => Place & { readonly height: Mm; readonly covers: Mm } }

/** Gauss's five places and weights on a stretch from 0 to 1, which integrate up to the ninth power exactly. */
const GAUSS = [[0.04691007703066802, 0.11846344252809454], [0.23076534494715845, 0.23931433524968324], [0.5, 0.28444444444444444], [0.7692346550528415, 0.23931433524968324], [0.953089922969332, 0.11846344252809454]] as const;
/** Widths and thicknesses bend along the sole, so each piece is taken in parts. */
const PARTS = 2;

/** @param depth how far the body has sunk, mm, greater than 0 */
export function bedUnder(body: RollBody, { width, give }: Layer, depth: Mm, roll: Rad): Bed {
  const place = placing(body, roll), sunk = body.pieces.flatMap((piece) => sunkOf(piece, place, depth, roll));
  const springs = sunk.flatMap(({ at }) => Array.from({ length: PARTS }, (_, part) => GAUSS.map(([share, weight]): Spring => {
    const { along, forward, height, covers } = at((part + share) / PARTS);
    return { along, forward, height, stiffness: (width(along) / give(along)) * covers * (weight / PARTS) };
  })).flat());
  return { rear: sunk[0]!.at(0), front: sunk[sunk.length - 1]!.at(1), springs };
}

function sunkOf(piece: RollPiece, place: (point: Point) => Point, depth: Mm, roll: Rad): Sunk[] {
  if (piece.kind === 'corner') return [];
  if (piece.kind === 'edge') {
    const [, rear] = place(piece.from), [, front] = place(piece.to), meets = clamp((depth - rear) / (front - rear), 0, 1);
    const [from, to] = rear === front ? [0, rear < depth ? 1 : 0] : rear < front ? [0, meets] : [meets, 1];
    return to > from ? [sunkEdge(between(piece.from, piece.to, from), between(piece.from, piece.to, to), place)] : [];
  }
  const { centre, radius } = piece, [middle, up] = place(centre), most = acos(clamp((up - depth) / radius, -1, 1));
  const from = Math.max(piece.from - roll, -most), turn = Math.min(piece.to - roll, most) - from;
  return turn > 0 ? [{ at: (t) => {
    const angle = from + turn * t;
    return { along: pointAt(piece, angle + roll)[0], forward: middle + radius * sin(angle), height: up - radius * cos(angle), covers: radius * cos(angle) * turn };
  } }] : [];
}

function sunkEdge(rear: Point, front: Point, place: (point: Point) => Point): Sunk {
  const covers = place(front)[0] - place(rear)[0];
  return { at: (t) => {
    const on = between(rear, front, t), [forward, height] = place(on);
    return { along: on[0], forward, height, covers };
  } };
}
