import type { FieldShown, Used } from '../desk/protocol.ts';
import { emptyRow, rowsFrom, rowsOf, withoutRow, withRow } from '../keep/rows.ts';
import { isLengthUnit, shownLength, typedLength } from '../keep/lengths.ts';
import type { Json } from '../keep/sheet.ts';
import type { SheetAccess } from './controls.ts';
import { button, el } from './dom.ts';
import { faulted } from './faulted.ts';
import type { Row } from './fieldRow.ts';
import { headOf, listRow, type ListRow } from './listRow.ts';

let listsMade = 0;
/** So many columns do not stand side by side in a narrow form: each row becomes a card there. */
const MANY = 4;

/** A list of the sheet as a table: each cell is typed like any field; rows are added, copied and taken out. */
export function listField(field: FieldShown, sheet: SheetAccess): Row {
  const { path, label, help, columns = [], row: word = 'row' } = field, id = `list-${++listsMade}`;
  const fault = el('p', { class: 'fault', id: `${id}-fault` }), told = el('p', { class: 'help', id: `${id}-help` }, help);
  const heads = columns.map((column) => el('th', { scope: 'col' }, column.label)), body = el('tbody'), usual = el('tbody', { class: 'usual' });
  const table = el('table', { class: 'list', 'aria-label': label, 'aria-describedby': `${id}-fault ${id}-help` }, el('thead', {}, el('tr', {}, ...heads, el('td'))), usual, body);
  const now = (): readonly Json[] => rowsOf(sheet.valueAt(path));
  const put = (rows: readonly Json[] | undefined, said: string): void => sheet.setAll([[path, rows]], `${word} ${said}, ${label}`);
  const add = button(`Add a ${word}`, () => { put(withRow(now(), emptyRow(columns)), 'added'); lines.at(-1)?.focus(); });
  const start = button(`Start from the usual ${word}s`, () => { put(fromUsual(), 'usual ones'); lines[0]?.focus(); }, { hidden: true });
  const copy = (at: number): void => { const row = now()[at]; if (row !== undefined) { put(withRow(now(), row, at + 1), 'copied'); lines[at + 1]?.focus(); } };
  const remove = (at: number): void => { put(withoutRow(now(), at), 'taken out'); if (lines.length) lines[Math.min(at, lines.length - 1)]!.focusRemove(); else add.focus(); };
  let lines: readonly ListRow[] = [], used: Used = {}, faults: ReadonlyMap<string, string> = new Map();

  const own = (): 'mm' | 'in' => { const units = sheet.valueAt('units'); return isLengthUnit(units) ? units : 'mm'; };
  const usualAt = (i: number, column: FieldShown): number | string | undefined => used[`${path}[${i}]${column.path}`];
  const fromUsual = (): readonly Json[] => rowsFrom(columns, (i, column) => {
    const value = usualAt(i, column);
    return typeof value === 'number' && column.unit === 'length' ? typedLength(value, 'mm', own()) : value;
  });
  const showUsual = (): void => {
    const empty = sheet.valueAt(path) === undefined, rows = empty ? rowsFrom(columns, usualAt) : [];
    start.hidden = usual.hidden = rows.length === 0;
    usual.replaceChildren(...rows.map((_, i) => el('tr', {}, ...columns.map((column) => el('td', { 'data-label': headOf(column, sheet.lengths()) }, usualWords(usualAt(i, column), column, sheet))), el('td'))));
  };
  const fit = (): void => {
    const wanted = now().length;
    for (const { row } of lines.slice(wanted)) row.remove();
    const more = Array.from({ length: Math.max(0, wanted - lines.length) }, (_, i) => listRow(field, lines.length + i, sheet, { copy, remove }));
    body.append(...more.map(({ row }) => row));
    lines = [...lines.slice(0, wanted), ...more];
  };
  const box = el('div', { class: columns.length >= MANY ? 'row list-row many' : 'row list-row' }, el('div', { class: 'list-box' }, table), fault, told, el('div', { class: 'tools' }, add, start));
  return {
    row: box,
    update: (anew) => {
      fit();
      columns.forEach((column, i) => { heads[i]!.textContent = headOf(column, sheet.lengths()); });
      for (const line of lines) { line.update(anew); line.faults(faults); }
      showUsual();
    },
    instead: (next) => { used = next; showUsual(); },
    forget: () => undefined,
    faults: (texts) => { faults = texts; faulted(texts.get(path), box, fault, table); for (const line of lines) line.faults(texts); },
    focus: (place) => { const line = lines[Number(/^\[(\d+)\]/.exec(place.slice(path.length))?.[1] ?? 0)]; if (line) line.focus(place); else add.focus(); },
  };
}

const usualWords = (value: number | string | undefined, { unit }: FieldShown, sheet: SheetAccess): string =>
  typeof value === 'number' && unit === 'length' ? String(shownLength(value, 'mm', sheet.lengths())) : String(value ?? '');
