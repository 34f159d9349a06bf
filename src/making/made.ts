import type { Design } from '../checks/design.ts';
import type { Making, MouldOrder, PrintOrder } from '../fitting/making.ts';
import type { Side } from '../fitting/words.ts';
import { partsOf, type SoleParts } from '../pair/shoe.ts';
import { blockOf, plannedBlock, type Block } from './block/block.ts';
import type { Booleans } from './booleans.ts';
import { gaugesFor, type ShoeGauges } from './gauges/gauges.ts';
import { mouldOf, type Mould } from './mould.ts';
import { printOf, type Print } from './print/print.ts';

/** All that a sheet orders besides the soles, worked out once for every file and paper that tells of it. */
export interface Made { readonly moulds: readonly ShoeMould[]; readonly prints: readonly ShoePrint[] }

/** A mould by the shoe it is for; its solids are still those of a left shoe. */
export interface ShoeMould { readonly side: Side; readonly order: MouldOrder; readonly mould: Mould }

/** What is printed, by the shoe it is for; its solids are still those of a left shoe. */
export interface ShoePrint { readonly side: Side; readonly order: PrintOrder; readonly print: Print }

/** Whether anything ordered is drilled, split or engraved, for which the solid kernel must be loaded. */
export const needsKernel = ({ mould, print }: Making): boolean => mould !== undefined || print !== undefined;

/**
 * Everything a design orders besides the soles.
 * @param kernel the one that drills and splits; needed where needsKernel says so
 * @throws RangeError when the kernel is needed and there is none, or when a sole could not leave its mould
 */
export function madeFor(design: Design, kernel: Booleans | undefined): Made {
  if (needsKernel(design.fitting.making) && !kernel) throw new RangeError('what the sheet orders needs the solid kernel, so it must be loaded first (loadBooleans) and handed in');
  return { moulds: kernel ? mouldsFor(design, kernel) : [], prints: kernel ? printsFor(design, kernel) : [] };
}

/** One mould for each sole that is made, where the sheet orders them. @throws RangeError when a sole could not leave its mould */
export function mouldsFor({ shoes, mouldFaults, fitting: { making: { mould: order, chordGap, printBed } } }: Design, kernel: Booleans): ShoeMould[] {
  if (!order) return [];
  if (mouldFaults.length) throw new RangeError(mouldFaults.map(({ text }) => text).join('; '));
  return shoes.flatMap((shoe) => {
    const parts = partsOf(shoe);
    return parts ? [{ side: shoe.side, order, mould: mouldOf(parts, order, chordGap, kernel, printBed) }] : [];
  });
}

/** Every sole that is made, as it is printed, where the sheet orders that. */
export function printsFor({ shoes, fitting: { making: { print: order, printBed } } }: Design, kernel: Booleans): ShoePrint[] {
  return order ? shoes.flatMap((shoe) => {
    const parts = partsOf(shoe);
    return parts ? [{ side: shoe.side, order, print: printOf(parts, order, kernel, printBed) }] : [];
  }) : [];
}
