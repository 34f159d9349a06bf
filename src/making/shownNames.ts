import type { Design } from '../checks/design.ts';
import type { Making, WedgeOrder } from '../fitting/making.ts';
import { MAKINGS, type MakingName } from '../fitting/words.ts';
import type { RockerShoe, Shoe } from '../pair/shoe.ts';

/** Names of the solids a thing has, in the order they are listed; each says by itself what it is. */
export interface NamesBeside { readonly of: MakingName; readonly names: readonly string[] }

export const BLOCKS = ['block, upper face cut', 'block, both faces cut'] as const;
export const TRIAL_BASE = 'trial base';
export const wedgeName = (number: number): string => `trial wedge ${number}`;

/** The solids a thing has as it is ordered, known by its findings before it is worked out; things without have none to be seen. Their solids: shown.ts. */
const NAMES: Readonly<Partial<Record<MakingName, (making: Making, design: Design) => readonly string[]>>> = {
  mould: (_, { mouldFaults }) => (mouldFaults.length ? [] : ['mould', 'lid']),
  block: ({ block }) => BLOCKS.slice(0, block?.faces === 'both faces' ? 2 : 1),
  // Printed whole it is the sole itself.
  print: ({ print }) => (print?.split ? ['heel part', 'forepart'] : []),
  jig: () => ['jig'],
  wedges: ({ wedges }, design) => {
    const numbers = wedges ? [...new Set(design.shoes.filter(isRocker).flatMap((shoe) => wedgesMade(wedges, shoe, design)))].sort((a, b) => a - b) : [];
    return numbers.length ? [TRIAL_BASE, ...numbers.map(wedgeName)] : [];
  },
};
const isRocker = (shoe: Shoe): shoe is RockerShoe => shoe.kind === 'rocker';

/** Three with a flat and three without, and the shape as planned where that has another flat; less those that are told to be left out. */
function wedgesMade({ flat }: WedgeOrder, { side, order }: RockerShoe, { findings }: Design): number[] {
  const told = findings.filter((one) => one.side === side), asked = [0, flat].includes(order.standingFlat) ? 6 : 7;
  if (told.some(({ code }) => code === 'NO_TRIAL')) return [];
  const without = told.flatMap(({ code, measured }) => (code === 'WEDGE_LEFT_OUT' ? [measured] : []));
  return Array.from({ length: asked }, (_, i) => i + 1).filter((number) => !without.includes(number));
}

/** What is ordered and has solids. @param making as the sheet orders it  @param design with its findings of what is made besides */
export const namesBeside = (making: Making, design: Design): readonly NamesBeside[] => MAKINGS.flatMap((of) => {
  const names = making[of] === undefined ? [] : NAMES[of]?.(making, design) ?? [];
  return names.length ? [{ of, names }] : [];
});
