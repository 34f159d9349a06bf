import { inWords } from '../../src/checks/figure.ts';
import type { Mark } from '../../src/exports/drawing.ts';
import { element } from '../../src/exports/svg.ts';
import type { PlanShown, ShoeShown } from '../desk/protocol.ts';
import { el, svgEl } from './dom.ts';
import { pressureSwitch } from './pressureSwitch.ts';

export interface PlanView {
  readonly show: (plan: PlanShown, shoes: readonly ShoeShown[]) => void;
  readonly light: (of: string | undefined) => void;
}

/** The soles from above, alive: a number and its lines answer together, by pointer and by keyboard. */
export function planView(host: HTMLElement, light: (of: string | undefined) => void): PlanView {
  const svg = svgEl('svg', { role: 'group' }), marks = svgEl('g'), picture = el('div', { class: 'still' });
  const pressure = pressureSwitch(host);
  svg.append(pressure.layer, marks);
  picture.append(svg);
  host.append(picture);
  const aboutOf = (event: Event): string | undefined => (event.target as Element).closest('[data-of]')?.getAttribute('data-of') ?? undefined;
  marks.addEventListener('pointerover', (event) => light(aboutOf(event)));
  marks.addEventListener('pointerleave', () => light(undefined));
  marks.addEventListener('focusin', (event) => light(aboutOf(event)));
  marks.addEventListener('focusout', () => light(undefined));
  const every = (of: string): NodeListOf<SVGElement> => marks.querySelectorAll<SVGElement>(`[data-of="${CSS.escape(of)}"]`);

  return {
    show: ({ drawing: { paper, title, marks: drawn }, soles }, shoes) => {
      const focused = marks.contains(document.activeElement) ? document.activeElement?.getAttribute('data-of') : undefined;
      svg.setAttribute('viewBox', `0 0 ${paper.width} ${paper.height}`);
      svg.setAttribute('aria-label', title);
      marks.innerHTML = drawn.map(markUp).join('');
      for (const { side, figures } of shoes) for (const figure of figures) {
        const first = every(`${side}.${figure.key}`)[0];
        if (!first) continue;
        first.setAttribute('tabindex', '0');
        first.setAttribute('role', 'img');
        first.setAttribute('aria-label', `${side} shoe, ${figure.label}: ${inWords(figure)}`);
      }
      if (focused) every(focused)[0]?.focus();
      pressure.show(soles);
    },
    light: (of) => {
      for (const lit of marks.querySelectorAll('.lit')) lit.classList.remove('lit');
      if (of) for (const mark of every(of)) mark.classList.add('lit');
    },
  };
}

/** A hairline is hard to hit: an unseen wide one lies with it. */
function markUp(mark: Mark): string {
  if (mark.of === undefined) return element(mark);
  const reach = mark.kind === 'line' ? element(mark).replace('<path ', '<path class="reach" ') : '';
  return `<g data-of="${mark.of}">${element(mark)}${reach}</g>`;
}
