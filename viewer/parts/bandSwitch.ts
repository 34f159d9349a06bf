import { el } from './dom.ts';

/** Whether the side drawing shows how far the ground face may lie off. */
export function bandSwitch(host: HTMLElement, turned: () => void): { readonly on: () => boolean } {
  const legend = el('p', { class: 'band-legend', hidden: true }, el('i', { 'aria-hidden': 'true' }), ' Where the ground face may lie under the last, nine times in ten, if every measure is off as it may be.');
  const tick = el('input', { type: 'checkbox', onchange: () => { legend.hidden = !tick.checked; turned(); } });
  host.append(el('div', { class: 'tools banding' }, el('label', {}, tick, 'how far the ground face may lie off'), legend));
  return { on: () => tick.checked };
}
