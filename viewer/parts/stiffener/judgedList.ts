import { inFull, type Finding } from '../../../src/checks/finding.ts';
import type { Side } from '../../../src/fitting/words.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { numbersIn, SEVERITY_WORDS } from '../checks.ts';
import { el } from '../dom.ts';

export interface JudgedList { readonly box: HTMLElement; readonly show: (findings: readonly Finding[], lengths: LengthUnit) => void }

/** What stops or warns of one stiffener, where it is looked at; the list of checks says the same, and there a stop is taken on a name. */
export function judgedList(side: Side): JudgedList {
  const box = el('ul', { class: 'findings judged', hidden: true, 'aria-label': `what is wrong with the stiffener of the ${side} shoe` });
  let told = '';
  return {
    box,
    show: (findings, lengths) => {
      const own = findings.filter((one) => one.side === side && isOfStiffener(one) && one.severity !== 'note'), next = JSON.stringify([own, lengths]);
      if (next === told) return;
      told = next;
      box.hidden = own.length === 0;
      box.replaceChildren(...own.map((one) => el('li', { class: `finding ${one.severity}${one.overriddenBy ? ' taken' : ''}` },
        el('div', { class: 'tell' }, el('strong', {}, SEVERITY_WORDS[one.severity]), ` ${inFull(one)}`, numbersIn(one, lengths)), one.overriddenBy && el('p', { class: 'by' }, `Taken by ${one.overriddenBy.by}: ${one.overriddenBy.reason}`))));
    },
  };
}

const isOfStiffener = ({ where }: Finding): boolean => where === 'stiffener' || where === 'plies of the stiffener';
