import { offsetRight, type Path } from '../geometry/path.ts';
import type { Mm } from '../geometry/units.ts';
import { lengthBetween } from '../profile/groundFace.ts';
import { rollX, rollY } from '../profile/rollLine.ts';
import { arcsRound, groundPoint } from '../solid/groundLine.ts';
import type { SoleShape } from '../solid/soleShape.ts';

/** How much rubber is left standing all round, to be trimmed when it is on. Common practice of the trade, 2 to 3 mm. */
export const TRIM: Mm = 3;

/**
 * The outsole laid flat, LEFT shoe seen from above: [length along the ground face from the back of the long axis, place
 * across it], mm, with the trim all round. The face bends one way only, so laying it flat stretches nothing.
 */
export function unrolledOutsole(shape: SoleShape): Path {
  const { face, line } = shape, at = groundPoint(shape), zero = rollX(line, [0, 0]);
  const lengthTo = (along: Mm): Mm => along < zero ? -lengthBetween(face, along, zero) : lengthBetween(face, zero, along);
  const flat = arcsRound(shape, (w) => { const [x, y] = at(w); return [lengthTo(rollX(line, [x, y])), rollY(line, [x, y])]; });
  return offsetRight(flat, TRIM);
}
