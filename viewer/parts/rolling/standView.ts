import type { StandShown } from '../../desk/protocol.ts';
import { el, svgEl } from '../dom.ts';

/** Each rocker standing still: on the level, on slopes, and what its flat buys. */
export const standView = (shown: readonly StandShown[]): readonly HTMLElement[] => shown.map(({ side, paper: { width, height }, marks, words }) => {
  const svg = svgEl('svg', { class: 'stands', role: 'img', viewBox: `0 0 ${width} ${height}`, 'data-side': side, 'aria-label': words });
  svg.innerHTML = marks.join('');
  return el('div', { class: 'stand' }, svg);
});
