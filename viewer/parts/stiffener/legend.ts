import { el } from '../dom.ts';

/** What each column of the ways says, for somebody at the bench. */
export const legendOf = (heads: readonly string[], means: readonly string[]): HTMLElement => el('dl', { class: 'legend', 'aria-label': 'what the columns say' },
  ...heads.map((head, i) => el('div', {}, el('dt', {}, head), el('dd', {}, means[i]))));
