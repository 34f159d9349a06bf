import type { StackOrder } from '../../fitting/making.ts';
import { partsOf, type Pair } from '../../pair/shoe.ts';
import { coverOf } from './blanks.ts';
import { cutter, layOn, shoeStack, type Built, type LaidOut } from './cut.ts';
import { plansFor, type Plan } from './plan.ts';
import { leftOver, type Stacks } from './stack.ts';

/** Of so many pairs of stacks at most it is tried how they lie on the sheets; those that cost least first. */
const NESTED = 8;

/** What each sole needs, and the stacks the rack has for it, worked out once for findings and files. */
export function builtFor({ shoes, fitting: { making: { stack: order, rack } } }: Pair): readonly Built[] {
  const known = builtOnce.get(shoes);
  if (known?.order === order && known?.rack === rack) return known.built;
  const built = order ? shoes.flatMap((shoe): Built[] => {
    const parts = partsOf(shoe);
    if (!parts) return [];
    const cover = coverOf(parts, order.trim);
    return [{ shoe, parts, cover, plans: plansFor(cover, shoe.last, order, rack) }];
  }) : [];
  builtOnce.set(shoes, { order, rack, built });
  return built;
}

interface Known { readonly order: StackOrder | undefined; readonly rack: Pair['fitting']['making']['rack']; readonly built: readonly Built[] }
const builtOnce = new WeakMap<Pair['shoes'], Known>();

/** What the sheet orders built up from sheets; undefined where it orders none. */
export function stacksFor(pair: Pair): Stacks | undefined {
  const { job: { reference }, making: { stack: order } } = pair.fitting;
  return order && stacksFrom(builtFor(pair), order, reference);
}

/** Stacks for all soles that can have one: of the best of each, those that leave least of their sheets over. */
function stacksFrom(built: readonly Built[], order: StackOrder, reference: string): Stacks {
  const able = built.filter(({ plans }) => plans.length > 0), cut = able.map((one) => cutter(one, reference));
  const tries = pairsOf(able).slice(0, NESTED).map((plans): Tried => ({ plans, laid: layOn(plans.flatMap((plan, i) => cut[i]!(plan)), order) }));
  const cost = ({ plans, laid: { sheets } }: Tried): number => plans.reduce((sum, plan) => sum + plan.cost, 0) + leftOver({ sheets });
  const best = tries.reduce((least, one) => (cost(one) < cost(least) - SAME ? one : least));
  return { shoes: able.map((one, i) => shoeStack(one, best.plans[i]!, cut[i]!(best.plans[i]!), order, best.laid.files)), sheets: best.laid.sheets };
}

const SAME = 1e-3;
interface Tried { readonly plans: readonly Plan[]; readonly laid: LaidOut }

/** One plan for each sole, all ways, the cheapest together first. */
function pairsOf(built: readonly Built[]): Plan[][] {
  const all = built.reduce<Plan[][]>((ways, { plans }) => ways.flatMap((way) => plans.map((plan) => [...way, plan])), [[]]);
  const cost = (way: readonly Plan[]): number => way.reduce((sum, plan) => sum + plan.cost, 0);
  return all.toSorted((a, b) => cost(a) - cost(b));
}
