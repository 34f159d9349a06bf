import type { Minima } from '../fitting/fitting.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { planOf, thinnest } from '../profile/thinnest.ts';
import { foamFace, type SoleShape } from './soleShape.ts';

const NOTHING_ASKED: Minima = { edge: 0, seat: 0, waist: 0, tread: 0, tip: 0 };

/** Where the foam between stiffener and outsole is thinnest, measured vertically over the whole plan. */
export function foamLeft(shape: SoleShape): { readonly at: Point; readonly thickness: Mm } {
  const { last, upper, edge, line, build, stiffener } = shape, inner = foamFace(shape);
  return thinnest(planOf(last, upper, edge, line, NOTHING_ASKED), inner, { stiffener: -Infinity, inner }, build - stiffener, -Infinity);
}
