import type { Point } from '../../../src/geometry/point.ts';
import type { OrdinaryShape } from '../../../src/walk/ordinaryShape.ts';

/** The upper of a shoe from the side, of the rest: the part that goes with the heel, and the cap over the toes; text of SVG paths. */
export interface FootDrawn { readonly rear: string; readonly fore: string }

/**
 * A plain upper round ankle pivot and ball. It is drawn for the eye; nothing of it was measured but where these two are.
 * @param tip where the sole ends in front, at its upper face
 */
export function footDrawn({ rear: [, ball, , heel], fore }: OrdinaryShape, pivot: Point, tip = fore[2]): FootDrawn {
  if (!ball || !heel || !tip) return { rear: '', fore: '' };
  const at = (x: number, up: number): string => `${x.toFixed(1)} ${(-up).toFixed(1)}`, [px, pz] = pivot, [bx, bz] = ball, [hx, hz] = heel, [tx, tz] = tip;
  const vamp = at(bx, bz + 44), back = at(px - 40, pz + 26), front = at(px + 38, pz + 30);
  return {
    rear: `M${at(hx + 3, hz)}Q${at(hx - 5, (hz + pz) / 2)} ${back}L${front}Q${at(px + 52, pz - 8)} ${vamp}L${at(bx, bz)}Z`,
    fore: `M${at(bx, bz)}L${vamp}Q${at(tx - 6, Math.max(bz, tz - 8) + 40)} ${at(tx - 3, tz)}Z`,
  };
}
