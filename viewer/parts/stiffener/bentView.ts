import type { Side } from '../../../src/fitting/words.ts';
import type { LoadShown, PackShown } from '../../desk/protocol.ts';
import { el } from '../dom.ts';
import { bentPicture, mostTimes } from './bentPicture.ts';

/** @property loads what each load does, side by side @property box the one that is chosen, drawn */
export interface BentView { readonly loads: HTMLElement; readonly box: HTMLElement; readonly show: (pack: PackShown) => void }

const FIRST_TIMES = 5;
const LIES = { bench: 'From the side, foot side down as on the bench card, the toe to the right; dashed before the mass hangs', shoe: 'From the side, the toe to the right; dashed at rest' } as const;

/** What the stiffener does under each load, side by side; the one that is pressed is drawn from the side, its bend as many times as far as the slider says. */
export function bentView(side: Side): BentView {
  let pack: PackShown | undefined, of: LoadShown['of'] = 'finished shoe', times = FIRST_TIMES;
  const place = el('div'), words = el('p', { class: 'truly', role: 'status' }), drawn = el('output', { class: 'of' }), caption = el('figcaption');
  const slider = el('input', { type: 'range', min: 1, max: 10, step: 1, value: FIRST_TIMES, 'aria-label': `bend drawn so many times as far, ${side} shoe`, oninput: () => { times = Number(slider.value); lay(); } });
  const loads = el('div', { class: 'loads', role: 'group', 'aria-label': `how far it bends and under what, ${side} shoe` });
  const presses = new Map<LoadShown['of'], HTMLButtonElement>();
  function press(load: LoadShown): HTMLButtonElement {
    const made = presses.get(load.of) ?? el('button', { type: 'button', class: 'load', onclick: () => { of = load.of; lay(); } });
    presses.set(load.of, made);
    const { name, does, load: force } = load, parts = [el('span', {}, name), el('strong', {}, does), el('span', {}, force)];
    if (made.textContent !== parts.map(({ textContent }) => textContent).join('')) made.replaceChildren(...parts);
    return made;
  }
  function lay(): void {
    const load = pack?.loads.find((one) => one.of === of) ?? pack?.loads[0];
    for (const [one, made] of presses) made.setAttribute('aria-pressed', String(one === load?.of));
    if (!pack || !load) return;
    // What was asked for stays, for a stiffer load.
    const most = mostTimes(pack, load), now = Math.min(times, most), said = now === 1 ? 'as it is' : `${now} times`;
    slider.max = String(most);
    slider.value = String(now);
    slider.disabled = most === 1 || load.shape.length === 0;
    drawn.textContent = said;
    slider.setAttribute('aria-valuetext', said);
    caption.textContent = load.clamp ? LIES.bench : LIES.shoe;
    place.replaceChildren(...(load.shape.length > 0 ? [bentPicture(pack, load, now)] : []));
    if (words.textContent !== load.words) words.textContent = load.words;
  }
  function put(next: PackShown): void {
    const wanted = next.loads.map(press);
    pack = next;
    if (wanted.length !== loads.childElementCount || wanted.some((one, i) => loads.children[i] !== one)) loads.replaceChildren(...wanted);
    lay();
  }
  const box = el('figure', { class: 'picture-box' }, caption, el('div', { class: 'exaggerate' }, el('span', { 'aria-hidden': 'true' }, 'Bend drawn'), slider, drawn), place, words);
  return { loads, box, show: put };
}
