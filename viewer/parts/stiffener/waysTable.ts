import type { WaySets } from '../../desk/waySets.ts';
import type { WaysShown } from '../../desk/waysAsk.ts';
import { el } from '../dom.ts';
import { takeButton } from '../limits/takeButton.ts';

/** @property box the ways @property refresh says whether they may be taken now */
export interface WaysTable { readonly box: HTMLElement; readonly refresh: (open: boolean) => void }

/** More letters than this need room for two numbers on a card. */
const ROOM = 9;

/** Other ways beside the pack itself, which stands first: on a narrow page each a card, its numbers named. What can be written into the sheet has a button. */
export function waysTable({ heads, ways, sets }: WaysShown, shoe: string, take: (sets: WaySets) => void): WaysTable {
  const takes = ways.map(({ way }, i) => { const own = sets[i]; return own && takeButton('Take', `${way}, ${shoe}`, () => take(own)); }), any = takes.some((one) => one), long = heads.map((_, k) => ways.some(({ numbers }) => (numbers[k]?.length ?? 0) > ROOM));
  const table = el('table', { class: 'figures', 'aria-label': `ways to the stiffener, ${shoe}` },
    el('thead', {}, el('tr', {}, ...['way', ...heads].map((head) => el('th', { scope: 'col' }, head)), any && el('td'))),
    el('tbody', {}, ...ways.map(({ way, numbers }, i) => el('tr', { class: i === 0 ? 'bites' : undefined },
      el('th', { scope: 'row' }, way), ...numbers.map((number, k) => el('td', { 'data-label': heads[k], class: long[k] ? 'long' : undefined }, number)), any && el('td', { class: 'takes' }, takes[i]?.button)))));
  const refresh = (open: boolean): void => { for (const one of takes) one?.show(false, open); };
  return { box: el('div', { class: 'ways-box', role: 'region', tabindex: 0, 'aria-label': `ways to the stiffener, ${shoe}` }, table), refresh };
}
