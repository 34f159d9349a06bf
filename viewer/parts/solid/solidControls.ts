import type { PartName } from '../../desk/protocol.ts';
import { button, el } from '../dom.ts';
import { FIRST_PARTS, VIEWS, type SolidView } from './solidView.ts';

/** Where a cut may stand, mm from the heel or to the left of the long axis. */
const REACH = { x: { least: -10, most: 320, first: 100 }, y: { least: -60, most: 60, first: 0 } } as const;
const PARTS: readonly PartName[] = ['foam', 'outsole', 'whole sole'];

/** The verbs of a view as buttons with words: above it the ways to look, below it what is shown. */
export function solidControls(host: HTMLElement, view: SolidView, save: (picture: Blob) => void): void {
  if (!view.drawn) return;
  host.prepend(el('div', { class: 'tools' }, ...VIEWS.map((name) => button(name, () => view.view(name)))));
  host.append(el('div', { class: 'tools' }, ...PARTS.map((part) => partBox(view, part)), ...cutFields(view),
    pressed('thickness', (on) => view.shade(on ? 'thickness' : 'material')), pressed('measure', view.measure),
    button('Save a picture', () => void view.picture().then(save))));
}

function partBox(view: SolidView, part: PartName): HTMLElement {
  const box = el('input', { type: 'checkbox', checked: FIRST_PARTS[part], onchange: () => view.parts({ [part]: box.checked }) });
  return el('label', {}, box, ` ${part}`);
}

function pressed(words: string, press: (on: boolean) => void): HTMLButtonElement {
  const made = button(words, () => {
    const on = made.getAttribute('aria-pressed') !== 'true';
    made.setAttribute('aria-pressed', String(on));
    press(on);
  }, { 'aria-pressed': 'false' });
  return made;
}

/** Across or along, and where: by a slider, or to a tenth of a millimetre by a number. */
function cutFields(view: SolidView): readonly HTMLElement[] {
  const axis = el('select', { 'aria-label': 'cut', onchange: () => turned() }, el('option', { value: '' }, 'not cut'), el('option', { value: 'x' }, 'cut across'), el('option', { value: 'y' }, 'cut along'));
  const slider = el('input', { type: 'range', step: 1, 'aria-label': 'place of the cut', style: 'accent-color: var(--computed)', oninput: () => { number.value = slider.value; cut(); } });
  const number = el('input', { type: 'number', step: 0.1, 'aria-label': 'place of the cut, mm', style: 'width: 6rem', oninput: () => { slider.value = number.value; cut(); } });
  const unit = el('span'), place = el('span', { style: 'display: inline-flex; flex-wrap: wrap; gap: 0.5rem; align-items: center', hidden: true }, slider, number, unit);
  const along = (): 'x' | 'y' | undefined => (axis.value === 'x' || axis.value === 'y' ? axis.value : undefined);
  const cut = (): void => { if (Number.isFinite(number.valueAsNumber)) view.section(along(), number.valueAsNumber); };
  const turned = (): void => {
    const way = along();
    place.hidden = way === undefined;
    if (way === undefined) { view.section(undefined, 0); return; }
    const { least, most, first } = REACH[way];
    for (const field of [slider, number]) Object.assign(field, { min: String(least), max: String(most), value: String(first) });
    unit.textContent = way === 'x' ? 'mm from the heel' : 'mm left of the long axis';
    cut();
  };
  return [axis, place];
}
