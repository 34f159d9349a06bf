import { el } from '../dom.ts';

/** What each column of the ways says, for somebody at the bench. */
const MEANS: Readonly<Record<string, string>> = {
  plies: 'layers of cloth, strips across the ball counted', thick: 'plies and core together', weight: 'all of it, resin in', resin: 'of the weight, what is mixed and stays in the plies',
  bends: 'at the ball on the bench, under 0.125 N·m for each kg of body mass', strain: 'how far the plies are stretched in walking, at most; more than 0.3 % is too much for every day (common practice)',
  safety: 'how many times as hard a stumble may be before a ply fails; below 1 it fails', 'keeps to': 'all that is asked; only the bend and a stumble; or not even those',
};

/** Only of columns that are there. */
export const legendOf = (heads: readonly string[]): HTMLElement => el('dl', { class: 'legend', 'aria-label': 'what the columns say' },
  ...heads.flatMap((head) => (MEANS[head] === undefined ? [] : [el('div', {}, el('dt', {}, head), el('dd', {}, MEANS[head]))])));
