import type { Difference } from '../keep/differences.ts';
import { el } from './dom.ts';

/** What has changed since a version was laid under: on the sheet first, then what came of it. Empty where nothing was. */
export function differencesTable(host: HTMLElement): (rows: readonly Difference[] | undefined) => void {
  const body = el('tbody'), table = el('table', { class: 'figures', hidden: true },
    el('caption', {}, 'Changed since the version laid under'), el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'what'), el('th', { scope: 'col' }, 'before'), el('th', { scope: 'col' }, 'now'))), body);
  host.append(table);
  return (rows) => {
    table.hidden = rows === undefined;
    body.replaceChildren(...(rows ?? []).map(({ label, before, after }) => el('tr', {}, el('th', { scope: 'row' }, label), el('td', {}, before), el('td', {}, after))));
  };
}
