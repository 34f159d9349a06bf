import type { FieldShown } from '../desk/protocol.ts';
import type { LengthUnit } from '../keep/lengths.ts';
import { controlFor, type SheetAccess } from './controls.ts';
import { button, el } from './dom.ts';
import { faulted } from './faulted.ts';

export interface ListRow {
  readonly row: HTMLElement;
  readonly update: (anew: boolean) => void;
  readonly faults: (texts: ReadonlyMap<string, string>) => void;
  /** The cell of a place, or the first one. */
  readonly focus: (path?: string) => void;
  readonly focusRemove: () => void;
}

/** A column's name with its unit. */
export const headOf = ({ label, unit }: FieldShown, lengths: LengthUnit): string => [label, unit === 'length' ? lengths : unit].filter(Boolean).join(', ');

export interface RowMoves { readonly copy: (at: number) => void; readonly remove: (at: number) => void }

/** One row of a list, by its number. The arrow keys go to the same cell of the row above or below, ready to be typed over. */
export function listRow({ path, columns = [], row: word = 'row' }: FieldShown, at: number, sheet: SheetAccess, moves: RowMoves): ListRow {
  const cells = columns.map((column) => {
    const place = `${path}[${at}]${column.path}`, fault = el('p', { class: 'fault', id: `${place}-fault` });
    const control = controlFor({ ...column, path: place }, sheet, { name: place, 'aria-label': `${word} ${at + 1}, ${column.label}`, 'aria-describedby': `${place}-fault`, title: column.help });
    return { place, fault, control, column, cell: el('td', {}, control.input, fault) };
  });
  const remove = button('remove', () => moves.remove(at), { 'aria-label': `remove ${word} ${at + 1}` });
  const row = el('tr', {}, ...cells.map(({ cell }) => cell), el('td', { class: 'moves' }, button('copy', () => moves.copy(at), { 'aria-label': `copy ${word} ${at + 1}` }), remove));
  row.addEventListener('keydown', (event) => {
    const { key, target } = event, to = key === 'ArrowDown' ? row.nextElementSibling : key === 'ArrowUp' ? row.previousElementSibling : null;
    const column = cells.findIndex(({ control }) => control.input === target);
    if (!to || column < 0 || !(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const cell = to.children[column]?.querySelector('input');
    cell?.focus();
    cell?.select();
  });
  return {
    row,
    update: (anew) => { for (const { control, cell, column } of cells) { cell.dataset.label = headOf(column, sheet.lengths()); control.update(anew); } },
    faults: (texts) => { for (const { place, fault, control, cell } of cells) faulted(firstSentence(texts.get(place)), cell, fault, control.input); },
    focus: (path) => (cells.find(({ place }) => place === path) ?? cells.find(({ place }) => path !== undefined && place.startsWith(`${path}.`)) ?? cells[0])?.control.input.focus(),
    focusRemove: () => remove.focus(),
  };
}

/** A cell has room for what is wrong; what to do about it is told below the drawing. */
const firstSentence = (text: string | undefined): string | undefined => (text === undefined ? undefined : /^.*?[.?](?=\s|$)/.exec(text)?.[0] ?? text);
