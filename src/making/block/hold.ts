import { distance } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Tab } from './tabs.ts';

/** Fewer tabs than this let a part that is cut free tip; and they reach over this share of its length. Common practice of the trade. */
const FEWEST = 3, SPREAD = 1 / 3;

/** Whether tabs hold a part of a length by themselves: three at least, on both sides, well spread along it. */
export function standsWell(tabs: readonly Tab[], length: Mm): boolean {
  const xs = tabs.map(({ x }) => x), sides = new Set(tabs.map(({ side }) => side));
  return tabs.length >= FEWEST && sides.size === 2 && Math.max(...xs) - Math.min(...xs) >= SPREAD * length;
}

/** Two tabs nearer than this hold no more than one. */
const APART: Mm = 40;

/** More tabs from those that could stand, each as far as can be from all there are, up to a count of all; the first of those as far. */
export function elsewhere(standing: readonly Tab[], others: readonly Tab[], count: number): Tab[] {
  const added: Tab[] = [];
  while (standing.length + added.length < count) {
    const away = ({ at }: Tab): Mm => Math.min(...[...standing, ...added].map((tab) => distance(tab.at, at)));
    const best = others.reduce<Tab | undefined>((far, tab) => (!far || Math.min(away(tab), FAR) > Math.min(away(far), FAR) ? tab : far), undefined);
    if (!best || away(best) < APART) break;
    added.push(best);
  }
  return added;
}
/** With no tab standing all places are as far. */
const FAR: Mm = 1e6;
