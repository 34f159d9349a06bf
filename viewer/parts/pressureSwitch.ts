import { spot } from '../../src/exports/view.ts';
import type { SoleSeen } from '../desk/protocol.ts';
import { footprint } from '../pressure/footprint.ts';
import { el, svgEl } from './dom.ts';

/** From this share of the peak on, a dot of this radius, mm on the paper of the plan. */
const STEPS = [[0.1, 0.35], [0.25, 0.55], [0.5, 0.8], [0.75, 1.1]] as const;
const NAMES = ['10 to 25 %', '25 to 50 %', '50 to 75 %', '75 to 100 %'] as const;
type Data = typeof import('../pressure/prints.ts');

/** A switch that lays a mean footprint under the lines of the plan. What it needs is loaded when it is first switched on. */
export function pressureSwitch(host: HTMLElement): { readonly layer: SVGGElement; readonly show: (soles: readonly SoleSeen[]) => void } {
  const layer = svgEl('g', { class: 'pressed', 'aria-hidden': 'true' });
  const tick = el('input', { type: 'checkbox', onchange: () => void turned() }), legend = el('div', { class: 'print-legend', hidden: true });
  host.append(el('div', { class: 'tools' }, el('label', {}, tick, 'where a foot presses')), legend);
  let data: Data | undefined, soles: readonly SoleSeen[] = [];

  async function turned(): Promise<void> {
    try { data ??= await import('../pressure/prints.ts'); }
    catch { tick.checked = false; legend.hidden = false; legend.textContent = 'The footprint could not be loaded. Switch it on again when the page can be reached.'; return; }
    if (tick.checked) legend.replaceChildren(...legendOf(data.LICENCE));
    draw();
  }
  function draw(): void {
    legend.hidden = !tick.checked;
    const { PRINTS } = data ?? {};
    layer.replaceChildren(...(tick.checked && PRINTS ? soles.map((sole) => dotsOf(PRINTS, sole)) : []));
  }
  return { layer, show: (now) => { soles = now; draw(); } };
}

function dotsOf(prints: Data['PRINTS'], sole: SoleSeen): SVGGElement {
  const group = svgEl('g');
  // Radii are for a sole at one to two; on a smaller or larger picture the dots go with it.
  const by = sole.view.scale / 0.5;
  group.append(...footprint(prints[sole.side], sole).map(({ at, share }) => {
    const [cx, cy] = spot(sole.view, at), [, r] = STEPS.findLast(([from]) => share >= from)!;
    return svgEl('circle', { cx: cx.toFixed(2), cy: cy.toFixed(2), r: (r * by).toFixed(2) });
  }));
  return group;
}

function legendOf(licence: string): readonly HTMLElement[] {
  const steps = STEPS.map(([, r], i) => {
    const dot = svgEl('svg', { viewBox: '-1.5 -1.5 3 3', width: 16, height: 16, 'aria-hidden': 'true' });
    dot.append(svgEl('circle', { r }));
    return el('li', {}, dot, NAMES[i]);
  });
  return [
    el('p', {}, 'The mean pressure under the feet of 104 adults, laid out by the length of this foot and its ball line. It is not the pressure of this client. The larger the dot, the nearer to the peak:'),
    el('ul', { class: 'print-steps' }, ...steps),
    el('details', {}, el('summary', {}, 'Source and licence of the footprint'), el('pre', {}, `MUN104, mean of 104 adults\n\n${licence}`)),
  ];
}
