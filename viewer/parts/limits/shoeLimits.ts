import type { Side } from '../../../src/fitting/words.ts';
import { valueAt } from '../../keep/sheet.ts';
import { button, el } from '../dom.ts';
import { freeOn, hasTargets, limitsSet } from './limitsSet.ts';
import type { OnBench } from './limitsPart.ts';

/** @property place where what was found for the shoe is laid */
export interface ShoeLimits { readonly side: Side; readonly box: HTMLElement; readonly place: HTMLElement; readonly show: (bench: OnBench) => void }

/** The limits of one shoe, each leading to its field; where none are set they can be. */
export function shoeLimits(side: Side, goTo: (path: string) => void, setFirst: () => void): ShoeLimits {
  const set = el('div', { class: 'set' }), place = el('div', { class: 'place-of-answer' });
  const box = el('section', { 'aria-label': `limits of the ${side} shoe` }, el('h3', {}, `${side === 'left' ? 'Left' : 'Right'} shoe`), set, place);
  let told = '';
  const show = ({ sheet, lengths, seats }: OnBench): void => {
    box.hidden = valueAt(sheet, `${side}.order.kind`) !== 'rocker';
    const limits = limitsSet(sheet, side, lengths), free = freeOn(sheet, side), seat = seats[side], has = hasTargets(sheet, side), next = JSON.stringify([has, limits, free, seat === undefined]);
    if (next === told) return;
    told = next;
    set.replaceChildren(...(has
      ? [...limits.map(({ path, words }) => button(words, () => goTo(path))), button(`May be changed: ${free.join(', ') || 'nothing yet'}`, () => goTo(`${side}.order.targets.free`))]
      : [button('Set limits', setFirst, { 'aria-label': `Set limits, ${side} shoe`, disabled: seat === undefined })]));
  };
  return { side, box, place, show };
}
