import { UNIT_WORDS, type LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import { STEPS, stepWords } from './shades.ts';

export interface Legend { readonly box: HTMLElement; readonly lengths: (unit: LengthUnit) => void }

/** What the colours of thickness mean; hidden while they are not used. */
export function legendOf(): Legend {
  const box = el('p', { class: 'legend', hidden: true });
  return {
    box,
    lengths: (unit) => box.replaceChildren(`Thickness of the sole, straight down from its upper face, ${UNIT_WORDS[unit]}: `,
      ...STEPS.flatMap(({ colour }, step) => [el('span', { style: 'white-space: nowrap' }, el('i', { style: `background: ${colour}` }), ` ${stepWords(step, unit)}${step + 1 < STEPS.length ? ', ' : ''}`), ' '])),
  };
}
