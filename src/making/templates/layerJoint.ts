import { atan, cos, sin } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import { upperSurface, type SoleShape, type Surface } from '../../solid/soleShape.ts';

/** Where two layers of foam meet: so deep below the face under the stiffener, square to it, on a stretch of the long axis. */
export interface LayerJoint { readonly name: string; readonly depth: Mm; readonly from: Mm; readonly to: Mm }

/** Fineness of the table of the face, and how far it reaches beyond both ends of the last. */
const STEP: Mm = 1, BEYOND: Mm = 60;

/**
 * The face that a joint lies in: layers lie bent along the face above them, so it is that face set down square to itself.
 * Its dish across is that of the face.
 */
export function jointSurface(shape: SoleShape, depth: Mm): Surface {
  const height = upperSurface(shape, shape.stiffener), count = Math.ceil((shape.last.length + 2 * BEYOND) / STEP);
  const points = Array.from({ length: count + 1 }, (_, i): readonly [Mm, Mm] => {
    const x = i * STEP - BEYOND, slope = atan((height(x + STEP / 2, 0) - height(x - STEP / 2, 0)) / STEP);
    return [x + depth * sin(slope), height(x, 0) - depth * cos(slope)];
  });
  return (x, y) => alongTable(points, x) + height(x, y) - height(x, 0);
}

/** Straight between neighbours of a table with rising places, and on beyond its ends. */
function alongTable(points: readonly (readonly [Mm, Mm])[], x: Mm): Mm {
  let low = 0, high = points.length - 1;
  while (high - low > 1) { const middle = (low + high) >> 1; if (points[middle]![0] <= x) low = middle; else high = middle; }
  const [ax, az] = points[low]!, [bx, bz] = points[high]!;
  return az + ((bz - az) * (x - ax)) / (bx - ax);
}
