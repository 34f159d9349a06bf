import { el } from '../dom.ts';
import { STEPS, stepWords } from './shades.ts';

/** What the colours of thickness mean; hidden while they are not used. */
export const legendOf = (): HTMLElement => el('p', { class: 'legend', hidden: true }, 'Thickness of the sole, straight down from its upper face, mm: ',
  ...STEPS.map(({ colour }, step) => el('span', { style: 'white-space: nowrap' }, el('i', { style: `background: ${colour}` }), ` ${stepWords(step)}${step + 1 < STEPS.length ? ', ' : ''}`)).flatMap((one) => [one, ' ']));
