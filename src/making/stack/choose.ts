import type { Mm } from '../../geometry/units.ts';

/** What a layer of one sheet costs where the layers above it reach so deep, mm³ of foam; undefined where the sheet is too small for it. */
export type Costing = (sheet: number, reach: Mm) => number | undefined;

/** Sheets from the face downwards, by their number in the list they were chosen from. @property cost of all layers together, mm³ of foam */
export interface Choice { readonly cost: number; readonly sheets: readonly number[] }

export interface Search {
  /** How much each sheet adds, its glue line counted; each more than SAME_DEPTH. */
  readonly adds: readonly Mm[];
  readonly costOf: Costing;
  /** Whether no foam is needed deeper. */
  readonly enough: (reach: Mm) => boolean;
  /** How many of the best are wanted. */
  readonly keep: number;
  /** So many layers at most, and how deep they must reach for sure; any number where left out. */
  readonly layers?: { readonly most: number; readonly deepest: Mm };
}

/** Layers so far, and how deep they reach. */
interface Way extends Choice { readonly reach: Mm }

/** Depths nearer than this are one: no sheet is measured finer. */
export const SAME_DEPTH: Mm = 0.05;

/**
 * The stacks that reach deep enough at the least cost, best first; among equals those of fewest layers. What a layer
 * costs hangs only on how deep the layers above it reach, so of all ways down to one depth only the best are gone on with,
 * from the face downwards: all combinations in all orders are looked at without being gone through one by one, and there
 * are never more of them than there are depths, whatever the sheets measure.
 */
export function leastStacks(search: Search, from: Mm = 0): readonly Choice[] {
  const downTo: Way[][] = [[{ cost: 0, reach: from, sheets: [] }]], deepEnough: Way[] = [];
  for (let depth = 0; depth < downTo.length; depth++) {
    for (const way of best(downTo[depth] ?? [], search.keep)) {
      if (search.enough(way.reach)) deepEnough.push(way);
      else for (const longer of waysOn(search, way)) (downTo[Math.floor((longer.reach - from) / SAME_DEPTH + ROUNDING)] ??= []).push(longer);
    }
    delete downTo[depth];
  }
  return best(deepEnough, search.keep).map(({ cost, sheets }) => ({ cost, sheets }));
}

/** Room for the rounding of sums. */
const ROUNDING = 1e-6;

const waysOn = (search: Search, { cost, reach, sheets }: Way): Way[] => search.adds.flatMap((thickness, sheet): Way[] => {
  const below = reach + thickness, more = isInReach(search, sheets.length + 1, below) ? search.costOf(sheet, reach) : undefined;
  return more === undefined ? [] : [{ cost: cost + more, reach: below, sheets: [...sheets, sheet] }];
});

/** Whether the layers that are left reach deep enough, each of the thickest sheet. */
const isInReach = ({ adds, layers }: Search, used: number, reach: Mm): boolean => !layers || reach + (layers.most - used) * Math.max(...adds) >= layers.deepest;

const best = (ways: readonly Way[], keep: number): Way[] => ways.toSorted(better).slice(0, keep);

/** Costs nearer than this, mm³, are equal. */
const SAME_COST = 1e-3;

function better(a: Choice, b: Choice): number {
  if (Math.abs(a.cost - b.cost) > SAME_COST) return a.cost - b.cost;
  return a.sheets.length - b.sheets.length || a.sheets.reduce((order, sheet, i) => order || sheet - b.sheets[i]!, 0);
}
