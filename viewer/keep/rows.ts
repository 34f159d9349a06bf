import type { FieldShown } from '../desk/protocol.ts';
import { withValue, type Json } from './sheet.ts';

/** A row of a list on the sheet as it is begun: what has to be told is there, and waits. @param columns of the list */
export const emptyRow = (columns: readonly FieldShown[]): Json =>
  columns.filter(({ required }) => required).reduce((sheet, { path }) => withValue(sheet, `row${path}`, null), {} as { readonly row?: Json }).row ?? {};

export const rowsOf = (list: unknown): readonly Json[] => (Array.isArray(list) ? list as readonly Json[] : []);

/** The list with a row put in at a place; those from there on move down. */
export const withRow = (rows: readonly Json[], row: Json, at = rows.length): readonly Json[] => [...rows.slice(0, at), row, ...rows.slice(at)];

/** A list without one of its rows; undefined where that was the only one, for an empty list says nothing. */
export function withoutRow(rows: readonly Json[], at: number): readonly Json[] | undefined {
  const left = rows.filter((_, i) => i !== at);
  return left.length ? left : undefined;
}

/** Rows made of what counts where the list is empty, cell by cell. @param cellAt undefined where that row has none such */
export function rowsFrom(columns: readonly FieldShown[], cellAt: (row: number, column: FieldShown) => Json | undefined): readonly Json[] {
  const rows: Json[] = [];
  for (let i = 0; ; i++) {
    const row = columns.reduce((sheet, column) => withValue(sheet, `row${column.path}`, cellAt(i, column)), {} as { readonly row?: Json }).row;
    if (row === undefined) return rows;
    rows.push(row);
  }
}
