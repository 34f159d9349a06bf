import type { Path, PathPiece } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { asin, tan } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import { angleAt, endOf, heightAt, offsetInward, startOf, type GroundFace, type GroundPiece, type RollStraight } from '../../profile/groundFace.ts';
import type { Span } from './frame.ts';

/** The face under a sole, run on straight from both ends of it as it leaves them, to the ends of the rails. */
export function runOn(face: GroundFace, sole: Span, run: Span): GroundFace {
  const straight = (name: RollStraight['name'], at: Mm, from: Mm, to: Mm): RollStraight => {
    const height = heightAt(face, at), slope = tan(angleAt(face, at)), on = (x: Mm): Point => [x, height + (x - at) * slope];
    return { kind: 'straight', name, from: on(from), to: on(to) };
  };
  return {
    pieces: [
      straight('behind the strike point', sole.from, run.from, sole.from), ...clipped(face, sole),
      straight('beyond the end angle', sole.to, sole.to, run.to),
    ],
  };
}

/** The face set in towards the foot; its straight ends still reach to the ends of the rails. */
export function setIn(face: GroundFace, inside: Mm, run: Span): GroundFace {
  const { pieces } = offsetInward(face, inside);
  const to = (piece: GroundPiece, end: 'from' | 'to', x: Mm): GroundPiece => piece.kind === 'arc' ? piece : { ...piece, [end]: [x, heightAt({ pieces: [piece] }, x)] };
  return { pieces: pieces.map((piece, i) => (i === 0 ? to(piece, 'from', run.from) : i === pieces.length - 1 ? to(piece, 'to', run.to) : piece)) };
}

function clipped(face: GroundFace, { from, to }: Span): GroundPiece[] {
  const last = face.pieces.length - 1;
  return face.pieces.flatMap((piece, i): GroundPiece[] => {
    const a = i === 0 ? from : Math.max(from, startOf(piece)[0]), b = i === last ? to : Math.min(to, endOf(piece)[0]);
    if (!(b - a > SHORTEST)) return [];
    if (piece.kind === 'arc') { const angle = (x: Mm): number => asin((x - piece.centre[0]) / piece.radius); return [{ ...piece, from: angle(a), to: angle(b) }]; }
    return [{ ...piece, from: [a, heightAt(face, a)], to: [b, heightAt(face, b)] }];
  });
}
const SHORTEST: Mm = 1e-6;

/** The face as a line over the bench, toe to heel: the shoe lies with its ground face up, so its hollow side is down. */
export const overBench = ({ pieces }: GroundFace, zero: Mm): Path => [...pieces].reverse().map((piece): PathPiece => {
  const up = ([x, z]: Point): Point => [x, zero - z];
  return piece.kind === 'straight' ? { kind: 'line', from: up(piece.to), to: up(piece.from) }
    : { kind: 'arc', centre: up(piece.centre), radius: piece.radius, start: Math.PI / 2 - piece.to, sweep: piece.to - piece.from };
});
