import type { StackOrder } from '../../fitting/making.ts';
import { partsOf, type Pair } from '../../pair/shoe.ts';
import { coverOf } from './blanks.ts';
import { cutter, layOn, shoeStack, type Built, type LaidOut } from './cut.ts';
import { plansFor, type Plan } from './plan.ts';
import { leftOver, type Stacks } from './stack.ts';

/** Of so many pairs of stacks at most it is tried how they lie on the sheets. */
const NESTED = 8;
/** And of fewer, where they have more blanks together than this: each must be held against many others. */
const BLANKS_NESTED = 160;

/** What a job's soles need of the rack, worked out once for findings, files and papers. */
interface Work { readonly order: StackOrder; readonly rack: Rack; readonly built: readonly Built[]; stacks?: Stacks }
type Rack = Pair['fitting']['making']['rack'];
const works = new WeakMap<Pair['shoes'], Work>();

function workOn(shoes: Pair['shoes'], order: StackOrder, rack: Rack): Work {
  const known = works.get(shoes);
  if (known?.order === order && known.rack === rack) return known;
  const built = shoes.flatMap((shoe): Built[] => {
    const parts = partsOf(shoe);
    if (!parts) return [];
    const cover = coverOf(parts, order.trim);
    return [{ shoe, parts, cover, plans: plansFor(cover, shoe, order, rack) }];
  });
  const work = { order, rack, built };
  works.set(shoes, work);
  return work;
}

/** What each sole needs, and the stacks the rack has for it; nothing where the sheet orders none. */
export const builtFor = ({ shoes, fitting: { making: { stack: order, rack } } }: Pair): readonly Built[] => order ? workOn(shoes, order, rack).built : [];

/** What the sheet orders built up from sheets; undefined where it orders none. */
export function stacksFor({ shoes, fitting: { job: { reference }, making: { stack: order, rack } } }: Pair): Stacks | undefined {
  if (!order) return undefined;
  const work = workOn(shoes, order, rack);
  return (work.stacks ??= stacksFrom(work.built, order, reference));
}

/**
 * Stacks for all soles that can have one: of the best of each, those that cost least with what is left over of the sheets.
 * They are tried in the order of what they cost without that, until no other can be better, or the tries are used up.
 */
function stacksFrom(built: readonly Built[], order: StackOrder, reference: string): Stacks {
  const able = built.filter(({ plans }) => plans.length > 0), cut = able.map((one) => cutter(one, reference));
  let best: Tried | undefined;
  let nested = 0;
  for (const plans of pairsOf(able).slice(0, NESTED)) {
    const blanks = plans.flatMap((plan, i) => cut[i]!(plan));
    nested += blanks.reduce((sum, layer) => sum + layer.blanks.length, 0);
    if (best && (costOf(plans) >= best.cost || nested > BLANKS_NESTED)) break;
    const laid = layOn(blanks, order), cost = costOf(plans) + leftOver(laid);
    if (!best || cost < best.cost - SAME) best = { plans, laid, cost };
  }
  if (!best) return { shoes: [], sheets: [] };
  const { plans, laid } = best;
  return { shoes: able.map((one, i) => shoeStack(one, plans[i]!, cut[i]!(plans[i]!), order, laid.files)), sheets: laid.sheets };
}

const SAME = 1e-3;
interface Tried { readonly plans: readonly Plan[]; readonly laid: LaidOut; readonly cost: number }
const costOf = (plans: readonly Plan[]): number => plans.reduce((sum, { cost }) => sum + cost, 0);

/** One plan for each sole, all ways, the cheapest together first. */
function pairsOf(built: readonly Built[]): Plan[][] {
  const all = built.reduce<Plan[][]>((ways, { plans }) => ways.flatMap((way) => plans.map((plan) => [...way, plan])), [[]]);
  return all.toSorted((a, b) => costOf(a) - costOf(b));
}
