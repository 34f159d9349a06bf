import { UNIT_WORDS, type LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { STEPS, stepWords } from './shades.ts';

export interface Legend { readonly box: HTMLElement; readonly show: (is: boolean) => void; readonly lengths: (unit: LengthUnit) => void }

/** What the colours of thickness mean; nothing is written while they are not used. */
export function legendOf(): Legend {
  const box = el('p', { class: 'legend', hidden: true });
  let unit: LengthUnit = 'mm';
  const write = (): void => box.replaceChildren(`Thickness of the sole, straight down from its upper face, stiffener counted, ${UNIT_WORDS[unit]} (the outsole keeps its own colour): `,
    ...STEPS.flatMap(({ colour }, step) => [el('span', { style: 'white-space: nowrap' }, el('i', { style: `background: ${colour}` }), ` ${stepWords(step, unit)}${step + 1 < STEPS.length ? ', ' : ''}`), ' ']));
  return {
    box,
    show: (is) => { box.hidden = !is; if (is) write(); },
    lengths: (shown) => { unit = shown; if (!box.hidden) write(); },
  };
}
