import type { PartName, ShoeShown } from '../../work/protocol.ts';
import { button, el } from '../dom.ts';
import { STEPS } from './shades.ts';
import { solidView, type Shading, type SolidView, type ViewName } from './solidView.ts';

export interface SolidPart { readonly show: (shoes: readonly ShoeShown[], fine: boolean) => void }

const VIEWS: readonly ViewName[] = ['corner', 'inner side', 'outer side', 'above', 'below', 'heel', 'toe'];
const PARTS: readonly PartName[] = ['whole sole', 'foam', 'outsole'];

/** The solid with its controls. Where the browser has no WebGL it says so, and all else goes on. */
export function solidPart(host: HTMLElement, save: (picture: Blob) => void): SolidPart {
  let view: SolidView;
  const stage = el('div', { class: 'stage' });
  host.append(stage);
  try { view = solidView(stage); }
  catch {
    stage.append('This browser cannot draw solids (no WebGL). The drawings, checks and files are complete without it.');
    return { show: () => undefined };
  }
  const told = el('p', { class: 'measured', role: 'status' }), legend = el('p', { class: 'legend', hidden: true }, 'Thickness, mm: ', ...STEPS.map(({ from, colour }) => el('span', {}, el('i', { style: `background:${colour}` }), ` from ${from} `)));
  const boxes = PARTS.map((part) => ({ part, box: el('input', { type: 'checkbox', checked: part === 'whole sole', onchange: () => choose() }) }));
  const choose = (): void => view.parts(new Set(boxes.filter(({ box }) => box.checked).map(({ part }) => part)));
  const axis = el('select', { 'aria-label': 'cut', onchange: () => slice() }, el('option', { value: '' }, 'not cut'), el('option', { value: 'x' }, 'cut across, at'), el('option', { value: 'y' }, 'cut along, at'));
  const place = el('input', { type: 'range', min: 0, max: 300, step: 1, value: 100, 'aria-label': 'place of the cut, mm', oninput: () => slice() }), number = el('output');
  const slice = (): void => {
    const along = axis.value === 'y';
    place.min = along ? '-50' : '0';
    place.max = along ? '50' : '300';
    number.textContent = axis.value === '' ? '' : `${place.value} mm ${along ? 'from the long axis' : 'from the heel'}`;
    view.section(axis.value === '' ? undefined : axis.value as 'x' | 'y', Number(place.value));
  };
  const pressed = (words: string, press: (on: boolean) => void): HTMLButtonElement => {
    const made = button(words, () => { const on = made.getAttribute('aria-pressed') !== 'true'; made.setAttribute('aria-pressed', String(on)); press(on); }, { 'aria-pressed': 'false' });
    return made;
  };
  stage.before(el('div', { class: 'tools' }, ...VIEWS.map((name) => button(name, () => view.view(name)))));
  host.append(
    el('div', { class: 'tools' }, ...boxes.map(({ part, box }) => el('label', {}, box, ` ${part}`)), axis, place, number,
      pressed('thickness', (on) => { legend.hidden = !on; view.shade((on ? 'thickness' : 'material') satisfies Shading); }),
      pressed('measure', (on) => { view.measure(on, (words) => { told.textContent = words; }); if (!on) told.textContent = ''; }),
      button('Save a picture', () => void view.picture().then(save))),
    legend, told);
  return { show: view.show };
}
