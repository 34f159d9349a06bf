import type { Making, WedgeOrder } from '../fitting/making.ts';
import { MAKINGS, type MakingName } from '../fitting/words.ts';
import type { Pair } from '../pair/shoe.ts';

/** Names of the solids a thing has, in the order they are listed; each says by itself what it is. */
export interface NamesBeside { readonly of: MakingName; readonly names: readonly string[] }

export const BLOCKS = ['block, upper face cut', 'block, both faces cut'] as const;
export const TRIAL_BASE = 'trial base';
export const wedgeName = (number: number): string => `trial wedge ${number}`;

/** The solids a thing has as it is ordered, known before it is worked out; things without have none to be seen. Their solids: shown.ts. */
const NAMES: Readonly<Partial<Record<MakingName, (making: Making, pair: Pair) => readonly string[]>>> = {
  mould: () => ['mould', 'lid'],
  block: ({ block }) => BLOCKS.slice(0, block?.faces === 'both faces' ? 2 : 1),
  // Printed whole it is the sole itself.
  print: ({ print }) => (print?.split ? ['heel part', 'forepart'] : []),
  jig: () => ['jig'],
  wedges: ({ wedges }, pair) => (wedges ? [TRIAL_BASE, ...Array.from({ length: wedgeCount(wedges, pair) }, (_, i) => wedgeName(i + 1))] : []),
};

/** Three with a flat and three without, and the shape as planned where that has another flat. */
const wedgeCount = ({ flat }: WedgeOrder, { shoes }: Pair): number =>
  (shoes.some((shoe) => shoe.kind === 'rocker' && ![0, flat].includes(shoe.order.standingFlat)) ? 7 : 6);

/** What is ordered and has solids. @param making as the sheet orders it */
export const namesBeside = (making: Making, pair: Pair): readonly NamesBeside[] => MAKINGS.flatMap((of) => {
  const names = making[of] === undefined ? [] : NAMES[of]?.(making, pair) ?? [];
  return names.length ? [{ of, names }] : [];
});
