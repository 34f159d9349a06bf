import type { JigOrder } from '../../fitting/making.ts';
import type { Mm } from '../../geometry/units.ts';
import type { SoleShape } from '../../solid/soleShape.ts';

/** A rail keeps at least this radius: tighter, a bush would hang on a corner. */
const TIGHTEST: Mm = 5;

/** How far the edge a guide bush runs along lies inside the line its cutter cuts. Rule of the trade: (bush - cutter) / 2. */
export const offsetFor = ({ diameter, cutter }: NonNullable<JigOrder['bush']>): Mm => (diameter - cutter) / 2;

/** The widest offset the arcs of a sole take. */
export function largestOffset({ face, outsole }: SoleShape, { face: cut }: Pick<JigOrder, 'face'>): Mm {
  const radii = face.pieces.flatMap((piece) => piece.kind === 'arc' ? [piece.radius] : []);
  return Math.min(...radii) - (cut === 'foam body' ? outsole : 0) - TIGHTEST;
}

/** Whether a bush can be used on a sole: wider than its cutter, and not so wide that an arc is lost. */
export const bushWorks = (shape: SoleShape, order: JigOrder): boolean =>
  order.bush !== undefined && offsetFor(order.bush) > 0 && offsetFor(order.bush) <= largestOffset(shape, order);

/** The offset of the rails; none without a bush, or with one that cannot be used. */
export const bushOffset = (shape: SoleShape, order: JigOrder): Mm => (order.bush && bushWorks(shape, order) ? offsetFor(order.bush) : 0);
