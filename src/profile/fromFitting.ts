import type { Foot, SheetRocker, ShoeFitting } from '../fitting/fitting.ts';
import { lastFrom } from '../last/fromFitting.ts';
import { completeOrder } from '../prescription/order.ts';
import type { RockerCase } from './rocker.ts';
import { footNumbers } from './stance.ts';

/** A shoe whose order is a rocker; the sheet's reader has seen to its foot. */
export type RockerFitting = ShoeFitting & { readonly foot: Foot; readonly order: SheetRocker };
export const isRockerFitting = (shoe: ShoeFitting): shoe is RockerFitting => shoe.order.kind === 'rocker' && shoe.foot !== undefined;

/** All that decides the rocker of a shoe, alone: the other shoe may yet ask for more height. */
export function rockerCase({ foot, last: measures, order }: RockerFitting): RockerCase {
  const last = lastFrom(measures);
  return { foot: footNumbers(foot), last, order: completeOrder(order, foot, last) };
}
