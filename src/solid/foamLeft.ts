import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { lowestOver, planOf, type Place, type Plan } from '../profile/thinnest.ts';
import { foamFace, type SoleShape } from './soleShape.ts';

export const planOfShape = ({ last, upper, edge, line }: SoleShape): Plan => planOf(last, upper, edge, line);

/**
 * Where the foam between stiffener and outsole is thinnest, measured vertically over the whole plan.
 * @param plan that of the shape; one plan serves every shape under the same upper face
 */
export function foamLeft(shape: SoleShape, plan: Plan = planOfShape(shape)): { readonly at: Point; readonly thickness: Mm } {
  const { build, stiffener } = shape, inner = heightsOf(foamFace(shape));
  const foamAt = ({ upper, along }: Place): Mm => upper + build - stiffener - inner(along);
  const place = lowestOver(plan, foamAt);
  return { at: place.at, thickness: foamAt(place) };
}
