import type { Design } from '../checks/design.ts';
import type { Making, MouldOrder, PrintOrder } from '../fitting/making.ts';
import type { MakingName, Side } from '../fitting/words.ts';
import { partsOf, type SoleParts } from '../pair/shoe.ts';
import { blockOf, plannedBlock, type Block } from './block/block.ts';
import type { Booleans } from './booleans.ts';
import { gaugesFor, type ShoeGauges } from './gauges/gauges.ts';
import { jigsFor, type ShoeJig } from './jig/ordered.ts';
import { mouldOf, type Mould } from './mould.ts';
import { pliesFor, type Plies } from './plies/plies.ts';
import { printOf, type Print } from './print/print.ts';
import { stacksFor } from './stack/buildUp.ts';
import type { Stacks } from './stack/stack.ts';
import { wedgesFor, type ShoeWedges } from './wedges/wedges.ts';

/** All that a sheet orders besides the soles, worked out once for every file and paper that tells of it; empty what it does not order. */
export interface Made {
  readonly moulds: readonly ShoeMould[];
  readonly blocks: readonly ShoeBlock[];
  readonly prints: readonly ShoePrint[];
  readonly gauges: readonly ShoeGauges[];
  readonly jigs: readonly ShoeJig[];
  readonly stack: Stacks | undefined;
  readonly plies: Plies | undefined;
  readonly wedges: readonly ShoeWedges[];
}

/** Each by the shoe it is for; the solids are still those of a left shoe. */
export interface ShoeMould { readonly side: Side; readonly order: MouldOrder; readonly mould: Mould }
export interface ShoeBlock { readonly side: Side; readonly parts: SoleParts; readonly block: Block }
export interface ShoePrint { readonly side: Side; readonly order: PrintOrder; readonly print: Print }

/** What is drilled, split or engraved. */
const CUT_BY_KERNEL: readonly MakingName[] = ['mould', 'block', 'print', 'wedges'];

/** Whether anything ordered needs the solid kernel. */
export const needsKernel = (making: Making): boolean => CUT_BY_KERNEL.some((name) => making[name] !== undefined);

/**
 * Everything a design orders besides the soles.
 * @param kernel the one that drills and splits; needed where needsKernel says so
 * @throws RangeError when the kernel is needed and there is none, or when a sole could not leave its mould
 */
export function madeFor(design: Design, kernel: Booleans | undefined): Made {
  if (needsKernel(design.fitting.making) && !kernel) throw new RangeError('what the sheet orders needs the solid kernel, so it must be loaded first (loadBooleans) and handed in');
  return { ...(kernel ? cutOf(design, kernel) : { moulds: [], blocks: [], prints: [], wedges: [] }), gauges: gaugesFor(design), jigs: jigsFor(design), stack: stacksFor(design), plies: pliesFor(design) };
}

const cutOf = (design: Design, kernel: Booleans): Pick<Made, 'moulds' | 'blocks' | 'prints' | 'wedges'> =>
  ({ moulds: mouldsFor(design, kernel), blocks: blocksFor(design, kernel), prints: printsFor(design, kernel), wedges: wedgesFor(design, kernel) });

interface Sole { readonly side: Side; readonly parts: SoleParts }

/** Every sole that is made. */
const solesOf = ({ shoes }: Design): Sole[] => shoes.flatMap((shoe) => {
  const parts = partsOf(shoe);
  return parts ? [{ side: shoe.side, parts }] : [];
});

function mouldsFor(design: Design, kernel: Booleans): ShoeMould[] {
  const { mouldFaults, fitting: { making: { mould: order, chordGap, printBed } } } = design;
  if (!order) return [];
  if (mouldFaults.length) throw new RangeError(mouldFaults.map(({ text }) => text).join('; '));
  return solesOf(design).map(({ side, parts }) => ({ side, order, mould: mouldOf(parts, order, chordGap, kernel, printBed) }));
}

/** A block for each foam body that one can be planned for. */
function blocksFor(design: Design, kernel: Booleans): ShoeBlock[] {
  const { making } = design.fitting;
  return solesOf(design).flatMap(({ side, parts }) => {
    const plan = plannedBlock(parts, making);
    return plan ? [{ side, parts, block: blockOf(parts, plan, making, kernel) }] : [];
  });
}

function printsFor(design: Design, kernel: Booleans): ShoePrint[] {
  const { print: order, printBed } = design.fitting.making;
  return order ? solesOf(design).map(({ side, parts }) => ({ side, order, print: printOf(parts, order, kernel, printBed) })) : [];
}
