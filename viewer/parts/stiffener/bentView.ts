import type { Side } from '../../../src/fitting/words.ts';
import { BENT_BY, type BentBy } from '../../../src/stiffener/bentBy.ts';
import type { PackShown } from '../../desk/protocol.ts';
import { button, el } from '../dom.ts';
import { bentPicture, mostTimes } from './bentPicture.ts';

export interface BentView { readonly box: HTMLElement; readonly show: (pack: PackShown) => void }

const LOADS: Readonly<Record<BentBy, string>> = { bench: 'on the bench', walking: 'walking', stumble: 'a stumble' };
const FIRST_TIMES = 5;

/** The sole from the side under a load that is chosen, its bend drawn as many times as far as the slider says; what it truly is stands below. */
export function bentView(side: Side): BentView {
  let pack: PackShown | undefined, by: BentBy = 'bench', times = FIRST_TIMES;
  const place = el('div'), words = el('p', { class: 'truly', role: 'status' }), drawn = el('output', { class: 'of' });
  const slider = el('input', { type: 'range', min: 1, max: 10, step: 1, value: FIRST_TIMES, 'aria-label': `bend drawn so many times as far, ${side} shoe`, oninput: () => { times = Number(slider.value); lay(); } });
  const loads = BENT_BY.map((of) => ({ of, press: button(LOADS[of], () => { by = of; lay(); }) }));
  function lay(): void {
    const bent = pack?.bent.find((one) => one.by === by);
    for (const { of, press } of loads) press.setAttribute('aria-pressed', String(of === by));
    if (!pack || !bent) return;
    // What was asked for stays, for a stiffer load.
    const most = mostTimes(pack, bent), now = Math.min(times, most), said = now === 1 ? 'as it is' : `${now} times`;
    slider.max = String(most);
    slider.value = String(now);
    slider.disabled = most === 1 || bent.shape.length === 0;
    drawn.textContent = said;
    slider.setAttribute('aria-valuetext', said);
    place.replaceChildren(...(bent.shape.length > 0 ? [bentPicture(pack, bent, now)] : []));
    if (words.textContent !== bent.words) words.textContent = bent.words;
  }
  const box = el('figure', { class: 'picture-box' }, el('figcaption', {}, 'From the side, the toe to the right; dashed at rest'),
    el('div', { class: 'tools', role: 'group', 'aria-label': `load, ${side} shoe` }, ...loads.map(({ press }) => press)), el('div', { class: 'exaggerate' }, el('span', { 'aria-hidden': 'true' }, 'Bend drawn'), slider, drawn), words, place);
  return { box, show: (next) => { pack = next; lay(); } };
}
