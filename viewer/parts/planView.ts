import { inWords } from '../../src/checks/figure.ts';
import type { PlanShown, ShoeShown } from '../desk/protocol.ts';
import { el, svgEl } from './dom.ts';
import { markLayer } from './markLayer.ts';
import { pressureSwitch } from './pressureSwitch.ts';

export interface PlanView {
  readonly show: (plan: PlanShown, shoes: readonly ShoeShown[]) => void;
  readonly clear: () => void;
  readonly light: (of: string | undefined) => void;
}

/** The soles from above, alive: a number and its lines answer together, by pointer and by keyboard. */
export function planView(host: HTMLElement, light: (of: string | undefined) => void): PlanView {
  const svg = svgEl('svg', { role: 'group' }), picture = el('div', { class: 'still' }), pressure = pressureSwitch(host);
  const { layer: marks, show: draw, light: lightUp } = markLayer();
  svg.append(pressure.layer, marks);
  picture.append(svg);
  host.append(picture);
  const aboutOf = (event: Event): string | undefined => (event.target as Element).closest('[data-of]')?.getAttribute('data-of') ?? undefined;
  marks.addEventListener('pointerover', (event) => light(aboutOf(event)));
  marks.addEventListener('pointerleave', () => light(undefined));
  marks.addEventListener('focusin', (event) => light(aboutOf(event)));
  marks.addEventListener('focusout', () => light(undefined));
  const firstOf = (of: string): SVGElement | null => marks.querySelector<SVGElement>(`[data-of="${CSS.escape(of)}"]`);

  return {
    show: ({ drawing: { paper, title, marks: drawn }, soles }, shoes) => {
      const focused = marks.contains(document.activeElement) ? document.activeElement?.getAttribute('data-of') : undefined;
      svg.setAttribute('viewBox', `0 0 ${paper.width} ${paper.height}`);
      svg.setAttribute('aria-label', title);
      draw(drawn);
      for (const { side, figures } of shoes) for (const figure of figures) {
        const first = firstOf(`${side}.${figure.key}`);
        if (!first) continue;
        first.setAttribute('tabindex', '0');
        first.setAttribute('role', 'img');
        first.setAttribute('aria-label', `${side} shoe, ${figure.label}: ${inWords(figure)}`);
      }
      if (focused && !marks.contains(document.activeElement)) firstOf(focused)?.focus();
      pressure.show(soles);
    },
    clear: () => { draw([]); pressure.show([]); },
    light: lightUp,
  };
}
