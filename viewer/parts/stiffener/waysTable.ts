import type { WayWords } from '../../../src/checks/packWords.ts';
import type { WaysShown } from '../../desk/waysAsk.ts';
import { el } from '../dom.ts';
import { takeButton } from '../limits/takeButton.ts';

/** Takes a way into the sheet; undefined where the sheet has no words for it. */
export type TakeWay = (way: WayWords) => (() => void) | undefined;

/** Other ways beside the pack itself, which stands first: on a narrow page each a card, its numbers named. What can be written into the sheet has a button. */
export function waysTable({ heads, ways }: WaysShown, shoe: string, take: TakeWay): HTMLElement {
  const takes = ways.map((way, i) => (i === 0 ? undefined : take(way))), any = takes.some((one) => one);
  const table = el('table', { class: 'figures', 'aria-label': `ways to the stiffener, ${shoe}` },
    el('thead', {}, el('tr', {}, ...['way', ...heads].map((head) => el('th', { scope: 'col' }, head)), any && el('td'))),
    el('tbody', {}, ...ways.map(({ way, numbers }, i) => {
      const press = takes[i] && takeButton('Take', `${way}, ${shoe}`, takes[i]);
      press?.show(false, true);
      return el('tr', { class: i === 0 ? 'bites' : undefined }, el('th', { scope: 'row' }, way), ...numbers.map((number, k) => el('td', { 'data-label': heads[k] }, number)), any && el('td', { class: 'takes' }, press?.button));
    })));
  return el('div', { class: 'ways-box', role: 'region', tabindex: 0, 'aria-label': `ways to the stiffener, ${shoe}` }, table);
}
