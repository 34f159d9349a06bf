import { circleFitting, type CircleFit, type Weighted } from '../geometry/circleFit.ts';
import { between, distance } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { pointAt } from '../profile/groundFace.ts';
import { ROLL_OTHER_LANDS } from './gait.ts';
import { anglesCovered, edgesOf, type RollBody } from './rollBody.ts';

/** Way along the sole that one point of the fit stands for, at most. */
const APART: Mm = 1;

/** The path of the contact on the sole between two roll angles, in points that stand for equal ways. Seen from a leg that is held to the shoe it is the roll-over shape. */
export function contactPath(body: RollBody, from: Rad, to: Rad): Weighted[] {
  const arcs = body.pieces.flatMap((piece): Weighted[] => {
    if (piece.kind !== 'arc' || piece.to <= from || piece.from >= to) return [];
    const begin = Math.max(piece.from, from), turn = Math.min(piece.to, to) - begin;
    return spread(piece.radius * turn, (share) => pointAt(piece, begin + turn * share));
  });
  const edges = edgesOf(body).filter(({ angle }) => angle > from && angle < to);
  return [...arcs, ...edges.flatMap(({ from: rear, to: front }) => spread(distance(rear, front), (share) => between(rear, front, share)))];
}

function spread(length: Mm, at: (share: number) => Weighted['at']): Weighted[] {
  const count = Math.ceil(length / APART);
  return Array.from({ length: count }, (_, i) => ({ at: at((i + 0.5) / count), weight: length / count }));
}

/**
 * The wheel that a shoe amounts to: the circle that fits the contact path best, in the frame of the leg (which is held to the
 * shoe), from heel strike until the other foot lands. The roll-over shape of published gait work is fitted so (Hansen and others).
 */
export function rollOverCircle(body: RollBody): CircleFit {
  const { from, to } = anglesCovered(body);
  return circleFitting(contactPath(body, from, Math.min(to, ROLL_OTHER_LANDS)));
}
