import type { Path } from '../../geometry/path.ts';
import { arcsRound } from '../../solid/groundLine.ts';
import { foamFace, sweptSurface, upperSurface, type SoleShape, type Surface } from '../../solid/soleShape.ts';
import { meetSurface, wallLine } from '../../solid/wall.ts';

/** The foam body in plan, LEFT shoe: where its walls meet the face under the stiffener, and where they meet the outsole. */
export function foamOutlines(shape: SoleShape): { readonly upper: Path; readonly lower: Path } {
  if (Object.values(shape.taper).every((lean) => lean === 0)) return { upper: shape.edge, lower: shape.edge };
  const met = (surface: Surface): Path => arcsRound(shape, (w) => { const [x, y] = meetSurface(wallLine(shape, w), surface); return [x, y]; });
  return { upper: met(upperSurface(shape, shape.stiffener)), lower: met(sweptSurface(foamFace(shape), shape.line)) };
}
