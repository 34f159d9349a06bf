import type { MakingName } from '../../../src/fitting/words.ts';
import type { NamesBeside } from '../../../src/making/shownNames.ts';
import type { SolePart } from '../../desk/protocol.ts';
import { shownLength, UNIT_WORDS, typedLength, type LengthUnit } from '../../keep/lengths.ts';
import { button, el } from '../dom.ts';
import { numberTyped } from '../numbers.ts';
import { besideMenu } from './besideMenu.ts';
import { SOLE_PARTS } from './partNames.ts';
import type { SolidMoves } from './solidPart.ts';
import { FIRST_PARTS, VIEWS, type SolidView } from './solidView.ts';

/** Where a cut may stand, mm from the heel or to the left of the long axis. */
const REACH = { x: { least: -10, most: 320, first: 100 }, y: { least: -60, most: 60, first: 0 } } as const;
const TITLES: Partial<Record<SolePart, string>> = { foot: 'A drawn foot, as long as the client\'s and with ankle and ball where theirs are. It is not the client\'s own.' };

/** @property asked things made besides the sole of which a part is to be seen */
export interface SolidControls { readonly beside: (things: readonly NamesBeside[]) => void; readonly asked: () => readonly MakingName[]; readonly lengths: (unit: LengthUnit) => void }

/** The verbs of a view as buttons with words: above it the ways to look, below it what is shown. */
export function solidControls(host: HTMLElement, view: SolidView, { save, want }: SolidMoves): SolidControls {
  if (!view.drawn) return { beside: () => undefined, asked: () => [], lengths: () => undefined };
  const boxes = new Map(SOLE_PARTS.map((part) => [part, el('input', { type: 'checkbox', checked: FIRST_PARTS[part] === true, onchange: () => changed(part) })]));
  let asked = '';
  const askFor = (): void => {
    const extras = { foot: boxes.get('foot')!.checked, beside: menu.asked() }, next = JSON.stringify(extras);
    if (next !== asked) want(extras);
    asked = next;
  };
  const changed = (part: SolePart): void => { view.parts({ [part]: boxes.get(part)!.checked }); if (part === 'foot') askFor(); };
  const menu = besideMenu((on) => { view.parts(on); askFor(); });
  const cut = cutFields(view);
  host.prepend(el('div', { class: 'tools' }, ...VIEWS.map((name) => button(name, () => view.view(name)))));
  host.append(el('div', { class: 'tools' }, ...[...boxes].map(([part, box]) => el('label', { title: TITLES[part] }, box, ` ${part}`)), ...cut.fields,
    pressed('thickness', (is) => view.shade(is ? 'thickness' : 'material')), pressed('measure', view.measure),
    button('Save a picture', () => void view.picture().then(save))), menu.box);
  return {
    lengths: cut.lengths,
    beside: menu.show,
    asked: menu.asked,
  };
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
function cutFields(view: SolidView): { readonly fields: readonly HTMLElement[]; readonly lengths: (unit: LengthUnit) => void } {
  const axis = el('select', { 'aria-label': 'cut', onchange: () => turned() }, el('option', { value: '' }, 'not cut'), el('option', { value: 'x' }, 'cut across'), el('option', { value: 'y' }, 'cut along'));
  const slider = el('input', { type: 'range', step: 1, 'aria-label': 'place of the cut', style: 'accent-color: var(--computed)', oninput: () => put(slider.valueAsNumber) });
  const number = el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', style: 'width: 6rem', oninput: () => typed(), onchange: () => write() });
  const words = el('span'), place = el('span', { style: 'display: inline-flex; flex-wrap: wrap; gap: 0.5rem; align-items: center', hidden: true }, slider, number, words);
  let at = 0, unit: LengthUnit = 'mm';
  const along = (): 'x' | 'y' | undefined => (axis.value === 'x' || axis.value === 'y' ? axis.value : undefined);
  const cut = (): void => { slider.value = String(at); view.section(along(), at); };
  const write = (): void => { number.value = String(shownLength(at, 'mm', unit)); };
  const put = (mm: number): void => { at = mm; write(); cut(); };
  const typed = (): void => { const value = numberTyped(number.value); if (value !== undefined) { at = typedLength(value, unit, 'mm'); cut(); } };
  const label = (): void => {
    words.textContent = `${UNIT_WORDS[unit]} ${along() === 'y' ? 'left of the long axis' : 'from the heel'}`;
    number.setAttribute('aria-label', `place of the cut, ${UNIT_WORDS[unit]}`);
  };
  const turned = (): void => {
    const way = along();
    place.hidden = way === undefined;
    label();
    if (way === undefined) return view.section(undefined, 0);
    slider.min = String(REACH[way].least);
    slider.max = String(REACH[way].most);
    put(REACH[way].first);
  };
  return { fields: [axis, place], lengths: (shown) => { unit = shown; label(); write(); } };
}
