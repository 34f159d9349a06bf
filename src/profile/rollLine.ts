import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { cos, sin } from '../geometry/trig.ts';

/**
 * The walking line in plan: the profile is laid out along it and swept square to it. It turns about the vertical
 * through the apex on the long axis. LEFT shoe: a crest further forward on the inner side (-y) turns it positive.
 */
export interface RollLine { readonly apexX: Mm; readonly turn: Rad }

export const rollLine = (apexX: Mm, crestAngle: Rad): RollLine => ({ apexX, turn: crestAngle - Math.PI / 2 });

/** Place along the walking line under a point in plan, in the profile's own x. */
export const rollX = ({ apexX, turn }: RollLine, [x, y]: Point): Mm => apexX + (x - apexX) * cos(turn) + y * sin(turn);

/** The place on the long axis over a place along the walking line. */
export const axisX = ({ apexX, turn }: RollLine, along: Mm): Mm => apexX + (along - apexX) / cos(turn);

/** Place across the walking line (along the crest), positive to the outer side of a left shoe. */
export const rollY = ({ apexX, turn }: RollLine, [x, y]: Point): Mm => y * cos(turn) - (x - apexX) * sin(turn);

/** Back from along and across the walking line to the plan. */
export const planPoint = ({ apexX, turn }: RollLine, along: Mm, across: Mm): Point => [
  apexX + (along - apexX) * cos(turn) - across * sin(turn),
  (along - apexX) * sin(turn) + across * cos(turn),
];
