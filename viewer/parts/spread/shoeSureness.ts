import { deg, inInches, rounded } from '../../../src/checks/say.ts';
import type { MeasureShown, ResultShown, SpreadShown, TriedShown } from '../../desk/spreadShown.ts';
import { LENGTH_DIGITS } from '../../../src/fitting/lengthUnit.ts';
import { inUnit, lengthWords, unbroken, type LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';

/** One shoe: which measure to take again, how far its results spread, and the measures by what they decide. */
export function shoeSureness({ side, kind, again, results, measures, rest }: SpreadShown, tried: TriedShown | undefined, lengths: LengthUnit, goTo: (path: string) => void): HTMLElement {
  const said = (text: string): string => unbroken(lengths === 'in' ? inInches(text) : text), others = results.filter(({ first }) => !first);
  const table = (of: readonly ResultShown[], caption: string): HTMLElement => resultsTable(of, tried, lengths, caption);
  return el('article', {},
    el('h3', {}, `${side === 'left' ? 'Left' : 'Right'} shoe: ${kind === 'rocker' ? 'rolls' : 'raised to match'}`),
    el('p', { class: 'again' }, said(again ?? 'Nothing about it is unsure.')),
    table(results.filter(({ first }) => first), `How sure the ${side} shoe is`),
    others.length > 0 && el('details', { class: 'group' }, el('summary', {}, 'More results'), table(others, `More of the ${side} shoe`)),
    tried && el('p', { class: 'agreement' }, said(tried.agreement)),
    measures.length > 0 && el('ol', { class: 'matters', 'aria-label': `measures of the ${side} shoe by what they decide` }, ...measures.map((one) => el('li', {}, measureButton(one, said, goTo)))),
    rest !== '' && el('p', { class: 'rest' }, rest),
  );
}

/** Leads to the measure's field. */
const measureButton = ({ path, name, stands, effect, share, decides }: MeasureShown, said: (text: string) => string, goTo: (path: string) => void): HTMLElement =>
  el('button', { type: 'button', 'data-path': path, onclick: () => goTo(path) },
    el('strong', {}, name), ' ', el('span', { class: 'stands' }, said(stands)), ' ', el('span', { class: 'effect' }, said(effect)), ' ',
    el('span', { class: 'decides' }, el('i', { style: `width:${Math.max(1, 100 * share).toFixed(1)}%`, 'aria-hidden': 'true' }), el('span', {}, `decides ${decides}`)));

function resultsTable(results: readonly ResultShown[], tried: TriedShown | undefined, lengths: LengthUnit, caption: string): HTMLElement {
  const spanOf = (key: string): TriedShown['spans'][number] | undefined => tried?.spans.find((one) => one.key === key);
  const row = ({ key, label, unit, value, deviation }: ResultShown): HTMLElement => {
    const words = (size: number): string => (unit === 'mm' ? lengthWords(size, lengths) : deg(size)), span = spanOf(key);
    return el('tr', {}, el('th', { scope: 'row' }, label), el('td', {}, words(value)), el('td', {}, unbroken(`± ${words(deviation)}`)),
      tried && el('td', { class: 'span' }, span ? unbroken(`${bare(span.low, unit, lengths)} to ${words(span.high)}`) : ''));
  };
  const head = (words: string): HTMLElement => el('th', { scope: 'col' }, words);
  return el('table', { class: 'figures' }, el('caption', {}, caption),
    el('thead', {}, el('tr', {}, el('td', {}), head('as made'), head('two of three within'), tried && head('nine of ten, tried'))),
    el('tbody', {}, ...results.map(row)));
}

const bare = (size: number, unit: ResultShown['unit'], lengths: LengthUnit): string =>
  (unit === 'mm' && lengths === 'in' ? rounded(inUnit(size, 'in'), LENGTH_DIGITS.in) : rounded(size, 1));
