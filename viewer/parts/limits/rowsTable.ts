import type { Row } from '../../../src/targets/words.ts';
import { el } from '../dom.ts';

/** Rows told in words, the first cell of each its name. @param marked rows that stand out */
export function rowsTable(name: string, heads: Row, rows: readonly Row[], marked: (row: Row) => boolean = () => false): HTMLTableElement {
  return el('table', { class: 'figures', 'aria-label': name },
    el('thead', {}, el('tr', {}, ...heads.map((head) => (head === '' ? el('td') : el('th', { scope: 'col' }, head))))),
    el('tbody', {}, ...rows.map((row) => el('tr', { class: marked(row) ? 'bites' : undefined }, ...row.map((cell, i) => (i === 0 ? el('th', { scope: 'row' }, cell) : el('td', {}, cell)))))));
}
