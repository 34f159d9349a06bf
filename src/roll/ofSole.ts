import { pointOn, type PathPiece } from '../geometry/path.ts';
import { atan2 } from '../geometry/trig.ts';
import type { Mm } from '../geometry/units.ts';
import type { SoleParts } from '../pair/shoe.ts';
import { facePath } from '../profile/facePath.ts';
import type { GroundFace } from '../profile/groundFace.ts';
import { beginsAt, endsAt, UPRIGHT, type RollBody, type RollPiece } from './rollBody.ts';

/** A sole as it rolls: its ground face as far as its ground line reaches, with a corner at the back and one at the tip. Exact. */
export const rollBodyOf = ({ shape: { face }, bodies: { whole: { rim } } }: Pick<SoleParts, 'shape' | 'bodies'>): RollBody => bodyBetween(face, rim.start, rim.end);

/** The same of any ground face between two places along the walking line. */
export function bodyBetween(face: GroundFace, back: Mm, front: Mm): RollBody {
  const path = facePath(face, back, front), pieces = path.map(rolling), first = path[0]!, last = path[path.length - 1]!;
  return { pieces: [
    { kind: 'corner', at: pointOn(first, 0), from: -UPRIGHT, to: beginsAt(pieces[0]!) }, ...pieces,
    { kind: 'corner', at: pointOn(last, 1), from: endsAt(pieces[pieces.length - 1]!), to: UPRIGHT },
  ] };
}

/** Angles of a path are counted from the first axis, those of a roll from straight down. */
function rolling(piece: PathPiece): RollPiece {
  if (piece.kind === 'line') return { ...piece, kind: 'edge', angle: atan2(piece.to[1] - piece.from[1], piece.to[0] - piece.from[0]) };
  const from = piece.start + Math.PI / 2;
  return { kind: 'arc', centre: piece.centre, radius: piece.radius, from, to: from + piece.sweep };
}
