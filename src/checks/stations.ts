import { zeroNear } from '../geometry/solve.ts';
import type { Mm } from '../geometry/units.ts';
import type { Point } from '../geometry/point.ts';
import { cos, sin } from '../geometry/trig.ts';
import { tipOf } from '../last/outline.ts';
import { angleAt, heightAt } from '../profile/groundFace.ts';
import { rollX } from '../profile/rollLine.ts';
import { partsOf, type Shoe } from '../pair/shoe.ts';
import { foamFace, type SoleShape } from '../solid/soleShape.ts';

/** The sole at one place on the long axis, or from the tip on beside it, where the tip is; mm. */
export interface Station {
  readonly x: Mm;
  /** Height of the ground face above the ground. */
  readonly ground: Mm;
  /** Thickness of the whole stack, vertical, and square to the ground face. */
  readonly thickness: Mm;
  readonly square: Mm;
  /** Height of the face the sole is glued to above the ground. */
  readonly upper: Mm;
  /** Foam between stiffener and outsole, vertical. */
  readonly foam: Mm;
}

export function stationAt(shape: SoleShape, x: Mm, foam = foamFace(shape)): Station {
  const at = placeAt(shape, x), along = rollX(shape.line, at), ground = heightAt(shape.face, along), upper = shape.upper(...at) + shape.build;
  return {
    x, ground, upper, thickness: upper - ground, square: squareThickness(shape, at),
    foam: upper - shape.stiffener - heightAt(foam, along),
  };
}

const placeAt = ({ last }: SoleShape, x: Mm): Point => (x < last.length ? [x, 0] : [x, tipOf(last)[1]]);

/** From the ground face under a place in plan, square to it, up to the upper face. */
function squareThickness({ face, line, upper, build }: SoleShape, [x, y]: Point): Mm {
  const along = rollX(line, [x, y]), angle = angleAt(face, along), ground = heightAt(face, along);
  const back = sin(angle) * cos(line.turn), aside = sin(angle) * sin(line.turn), up = cos(angle);
  const missed = (d: Mm): Mm => ground + d * up - upper(x - d * back, y - d * aside) - build;
  return zeroNear(missed, -missed(0) * up);
}

const STEP: Mm = 10;

/**
 * The sole every 10 mm from the heel along the long axis, at the tip of the last, and at the ends of the edge where it
 * stands out beyond the last. None where there is no sole to make.
 */
export function stationsOf(shoe: Shoe): Station[] {
  const parts = partsOf(shoe);
  if (!parts) return [];
  const { last: { length }, order: { edgeBeyond } } = shoe, foam = foamFace(parts.shape);
  const tens = Array.from({ length: Math.ceil(length / STEP) }, (_, i) => i * STEP);
  const places = [-edgeBeyond.heel, ...tens, length, length + edgeBeyond.toe];
  return [...new Set(places)].map((x) => stationAt(parts.shape, x, foam));
}
