import { el } from './dom.ts';

/** Whether the side drawing shows how far the ground face may lie off. What that means is put beside it once it is loaded. */
export function bandSwitch(host: HTMLElement, turned: () => void): { readonly box: HTMLElement; readonly on: () => boolean } {
  const tick = el('input', { type: 'checkbox', onchange: turned }), box = el('div', { class: 'tools banding' }, el('label', {}, tick, 'how far the ground face may lie off'));
  host.append(box);
  return { box, on: () => tick.checked };
}
