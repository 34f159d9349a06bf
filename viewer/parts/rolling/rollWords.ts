import type { WalkShown } from '../../desk/protocol.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el, svgEl } from '../dom.ts';

/** What the lines of the pictures mean, how they are drawn, and what drives the roll. */
export function rollWords({ told, walking: { shoes } }: WalkShown, marks: number, lengths: LengthUnit): HTMLElement {
  const compared = shoes.some(({ kind }) => kind === 'rocker');
  return el('div', { class: 'roll-words' },
    el('ul', { class: 'key' },
      key('leg', 'Leg line, ankle pivot to hip; cut off above.'), key('push', 'The floor\'s upright push, where it acts; the longer, the more body weights.'), key('trace', 'Path of the ankle pivot.'),
      ...(compared ? [key('ordinary', 'An ordinary shoe of the same heights, which bends at the ball.')] : [])),
    el('p', {}, `True to scale; marks on the floor ${lengths === 'in' ? '2 in' : `${marks} mm`} apart. The hip has a strip of its own, its heights much enlarged.`),
    ...told.map((sentence) => el('p', {}, sentence)));
}

function key(name: string, words: string): HTMLElement {
  const line = svgEl('svg', { viewBox: '0 0 34 10', width: 34, height: 10, 'aria-hidden': 'true' }), group = svgEl('g', { class: name });
  group.append(svgEl('line', { x1: 1, x2: 33, y1: 5, y2: 5, class: name }));
  line.append(group);
  return el('li', {}, line, words);
}
