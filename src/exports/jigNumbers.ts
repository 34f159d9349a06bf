import type { BoardOrder, JigOrder } from '../fitting/making.ts';
import type { Side } from '../fitting/words.ts';
import { offsetFor } from '../making/jig/bush.ts';
import { bridgePlaces } from '../making/jig/jig.ts';
import { routerReach } from '../making/jig/routerReach.ts';
import { letterOf } from '../making/jig/letters.ts';
import { railEdge } from '../making/jig/rail.ts';
import type { ShoeJig } from '../making/jig/ordered.ts';
import type { Made } from '../making/made.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { planPoint } from '../profile/rollLine.ts';

export const jigOrderOf = ({ face, ribsApart, room, depth, bush }: JigOrder, { thickness, measured, kerf, clearance }: BoardOrder): object => ({
  face, ribsApartMm: ribsApart, roomMm: room, depthMm: depth, bush: bush && { diameterMm: bush.diameter, cutterMm: bush.cutter },
  board: { thicknessMm: thickness, measured, kerfMm: kerf, clearanceMm: clearance },
});

/** The jig of a shoe in numbers, places along the walking line from the heel, heights over the bench. */
export function jigNumbers({ jigs }: Pick<Made, 'jigs'>, side: Side): { readonly jig?: object } {
  const found = jigs.find((jig) => jig.side === side);
  return found ? { jig: numbersOf(found) } : {};
}

function numbersOf({ jig: { frame, parts, bush }, boards, board, shape }: ShoeJig): object {
  const { zero, slot, inside, rails, ribs, run, railsAt } = frame, edge = railEdge(frame);
  return {
    parts: parts.length, boards: 1 + Math.max(...boards.placed.map(({ sheet }) => sheet)), boardMm: { length: boards.board.length, width: boards.board.width },
    slotMm: slot, heightMm: zero, lengthMm: run.to - run.from, railsApartMm: railsAt[1] - railsAt[0], bushOffsetMm: bush ? offsetFor(bush) : 0, cutterFromBaseMm: bush ? routerReach(frame, board.thickness).fromBase : undefined, edgeInsideGroundFaceMm: inside,
    rail: rails.pieces.flatMap((piece) => (piece.kind === 'arc' ? [{ name: piece.name, radiusMm: piece.radius }] : [])),
    ribs: ribs.map((x, i) => ({ letter: letterOf(i), alongMm: x, railEdgeMm: edge(x) })), leftUnderLast: leftAt(shape, frame),
  };
}

/** What is left under the last once the rails are reached, upright, where the bridges stand: whole stack down to the face that is cut. */
export const leftAt = (shape: ShoeJig['shape'], { wanted }: ShoeJig['jig']['frame']): { readonly name: string; readonly alongMm: number; readonly mm: number }[] =>
  bridgePlaces(shape).map(({ name, x }) => ({ name, alongMm: x, mm: shape.upper(...planPoint(shape.line, x, 0)) + shape.build - heightsOf(wanted)(x) }));
