import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { cos, sin } from '../geometry/trig.ts';

/**
 * The walking line in plan: the profile is laid out along it and swept square to it. It turns about the vertical
 * through the apex on the long axis. LEFT shoe: a crest further forward on the inner side (-y) turns it positive.
 */
export interface RollLine { readonly apexX: Mm; readonly turn: Rad; readonly cosine: number; readonly sine: number }

export function rollLine(apexX: Mm, crestAngle: Rad): RollLine {
  const turn = crestAngle - Math.PI / 2;
  return { apexX, turn, cosine: cos(turn), sine: sin(turn) };
}

/** Place along the walking line under a point in plan, in the profile's own x. */
export const rollX = ({ apexX, cosine, sine }: RollLine, [x, y]: Point): Mm => apexX + (x - apexX) * cosine + y * sine;

/** The place on the long axis over a place along the walking line. */
export const axisX = ({ apexX, cosine }: RollLine, along: Mm): Mm => apexX + (along - apexX) / cosine;

/** Place across the walking line (along the crest), positive to the outer side of a left shoe. */
export const rollY = ({ apexX, cosine, sine }: RollLine, [x, y]: Point): Mm => y * cosine - (x - apexX) * sine;

/** Place along the walking line of a distance from the heel told along the shoe, in an upright plane so far across the line. */
export const alongAt = ({ apexX, cosine, sine }: RollLine, x: Mm, across: Mm): Mm => apexX + (x - apexX + across * sine) / cosine;

/** Back from along and across the walking line to the plan. */
export const planPoint = ({ apexX, cosine, sine }: RollLine, along: Mm, across: Mm): Point => [
  apexX + (along - apexX) * cosine - across * sine,
  (along - apexX) * sine + across * cosine,
];
