import type { Mm } from '../../geometry/units.ts';

/** What a layer of one sheet costs where the layers above it reach so deep, mm³ of foam; undefined where the sheet is too small for it. */
export type Costing = (sheet: number, reach: Mm) => number | undefined;

/** Sheets from the face downwards, by their number in the list they were chosen from. @property cost of all layers together, mm³ of foam */
export interface Choice { readonly cost: number; readonly sheets: readonly number[] }

export interface Search {
  /** How much each sheet adds, its glue line counted. */
  readonly adds: readonly Mm[];
  readonly costOf: Costing;
  /** Whether no foam is needed deeper. */
  readonly enough: (reach: Mm) => boolean;
  /** How many of the best are wanted. */
  readonly keep: number;
}

/**
 * The stacks that reach deep enough at the least cost, best first; among equals those of fewest layers. What a layer
 * costs hangs only on how deep the layers above it reach, so the best way on from each depth is found once: all
 * combinations in all orders are looked at without being gone through one by one.
 */
export function leastStacks(search: Search, from: Mm = 0): readonly Choice[] {
  const known = new Map<number, readonly Choice[]>();
  const onFrom = (reach: Mm): readonly Choice[] => {
    if (search.enough(reach)) return [{ cost: 0, sheets: [] }];
    const key = Math.round(reach / SAME_DEPTH), found = known.get(key) ?? best(search, reach, onFrom);
    known.set(key, found);
    return found;
  };
  return onFrom(from);
}

/** Depths nearer than this are one. */
const SAME_DEPTH: Mm = 1e-6;

function best({ adds, costOf, keep }: Search, reach: Mm, onFrom: (reach: Mm) => readonly Choice[]): Choice[] {
  const all = adds.flatMap((thickness, sheet): Choice[] => {
    const cost = costOf(sheet, reach);
    return cost === undefined ? [] : onFrom(reach + thickness).map((rest) => ({ cost: cost + rest.cost, sheets: [sheet, ...rest.sheets] }));
  });
  return all.sort(better).slice(0, keep);
}

/** Costs nearer than this, mm³, are equal. */
const SAME_COST = 1e-3;

function better(a: Choice, b: Choice): number {
  if (Math.abs(a.cost - b.cost) > SAME_COST) return a.cost - b.cost;
  return a.sheets.length - b.sheets.length || a.sheets.reduce((order, sheet, i) => order || sheet - b.sheets[i]!, 0);
}
