import type { Side } from '../fitting/words.ts';
import type { MouldOrder } from '../fitting/fitting.ts';
import type { Booleans } from '../making/booleans.ts';
import { mouldOf, type Mould } from '../making/mould.ts';
import { partsOf } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';

/** A mould by the shoe it is for; its solids are still those of a left shoe. */
export interface ShoeMould { readonly side: Side; readonly order: MouldOrder; readonly mould: Mould }

/**
 * The moulds of a job whose sheet asks for them, one for each sole that is made.
 * @param booleans the kernel that drills them; only a job with a mould needs it
 * @throws RangeError when a mould is asked for and there is no kernel, or when a sole could not leave its mould
 */
export function mouldsFor(design: Design, booleans: Booleans | undefined): ShoeMould[] {
  const { shoes, mouldFaults, fitting: { making: { mould: order, chordGap } } } = design;
  if (!order) return [];
  if (!booleans) throw new RangeError('the sheet asks for a mould, so the solid kernel must be loaded first (loadBooleans) and handed in');
  if (mouldFaults.length) throw new RangeError(mouldFaults.map(({ text }) => text).join('; '));
  return shoes.flatMap((shoe) => {
    const parts = partsOf(shoe);
    return parts ? [{ side: shoe.side, order, mould: mouldOf(parts, order, chordGap, booleans) }] : [];
  });
}
