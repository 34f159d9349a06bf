import { MAKINGS, type MakingName } from '../../src/fitting/words.ts';
import { button, el } from './dom.ts';
import { MAKING_WORDS } from './makingWords.ts';

export interface Ordering { readonly update: () => void }

export interface OrderMoves {
  readonly ordered: (name: MakingName) => boolean;
  readonly order: (name: MakingName, on: boolean) => void;
  /** Goes to the fields of a thing. */
  readonly settings: (name: MakingName) => void;
}

/** What can be made besides the soles, each ordered with a tick. */
export function ordering(host: HTMLElement, { ordered, order, settings }: OrderMoves): Ordering {
  const lines = MAKINGS.map((name) => {
    const { title, about } = MAKING_WORDS[name], box = el('input', { type: 'checkbox', name: `order-${name}`, 'aria-describedby': `about-${name}`, onchange: () => order(name, box.checked) });
    const more = button('settings', () => settings(name), { 'aria-label': `settings: ${title}`, hidden: true });
    return { name, box, more, line: el('li', {}, el('label', {}, box, ` ${title}`), more, el('p', { id: `about-${name}` }, about)) };
  });
  host.append(el('h3', { id: 'orders' }, 'Made besides the soles'), el('ul', { class: 'orders', 'aria-labelledby': 'orders' }, ...lines.map(({ line }) => line)));
  return { update: () => { for (const { name, box, more } of lines) { box.checked = ordered(name); more.hidden = !box.checked; } } };
}
