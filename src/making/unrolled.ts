import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { lengthBetween } from '../profile/groundFace.ts';
import { rollX, rollY } from '../profile/rollLine.ts';
import { arcsRound, groundPoint } from '../solid/groundLine.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { setOut } from './setOut.ts';

/** How much rubber is left standing all round, to be trimmed when it is on. Common practice of the trade, 2 to 3 mm. */
export const TRIM: Mm = 3;

/**
 * The outsole laid flat, LEFT shoe seen from above: [length along the ground face from the back of the long axis, place
 * across it], mm, without trim. The face bends one way only, so laying it flat stretches nothing.
 */
export function flatOutsole(shape: SoleShape): Path {
  const at = groundPoint(shape), lay = flatPlace(shape);
  return arcsRound(shape, (w) => { const [x, y] = at(w); return lay([x, y]); });
}

/** Where a point of the ground face, told by its place in plan, comes to lie on the flat outsole. */
export function flatPlace({ face, line }: Pick<SoleShape, 'face' | 'line'>): (at: Point) => Point {
  const zero = rollX(line, [0, 0]);
  const lengthTo = (along: Mm): Mm => along < zero ? -lengthBetween(face, along, zero) : lengthBetween(face, zero, along);
  return (at) => [lengthTo(rollX(line, at)), rollY(line, at)];
}

/** The outsole laid flat with the trim all round; a corner is left in a hollow too tight for it. */
export const unrolledOutsole = (shape: SoleShape): Path => setOut(flatOutsole(shape), TRIM);
