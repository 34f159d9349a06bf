import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { lowestOver, planOf, type Place } from '../profile/thinnest.ts';
import { foamFace, type SoleShape } from './soleShape.ts';

/** Where the foam between stiffener and outsole is thinnest, measured vertically over the whole plan. */
export function foamLeft(shape: SoleShape): { readonly at: Point; readonly thickness: Mm } {
  const { last, upper, edge, line, build, stiffener } = shape, inner = heightsOf(foamFace(shape));
  const foamAt = ({ upper: bottom, along }: Place): Mm => bottom + build - stiffener - inner(along);
  const place = lowestOver(planOf(last, upper, edge, line), foamAt);
  return { at: place.at, thickness: foamAt(place) };
}
