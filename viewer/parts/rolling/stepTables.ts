import type { FigureRow, ShoeWalkShown, WalkShown } from '../../desk/protocol.ts';
import { el } from '../dom.ts';

/** The step of one shoe in figures, beside an ordinary one where it rolls. */
export const figuresOf = ({ side, columns, figures }: ShoeWalkShown): HTMLElement => table(`${side} step`, columns, figures);

/** How one step differs from the other; nothing where only one is known. */
export const differencesOf = ({ differences }: WalkShown): readonly HTMLElement[] => (differences.length ? [table('left step less right step', [], differences)] : []);

const table = (title: string, columns: readonly string[], rows: readonly FigureRow[]): HTMLElement => el('table', { class: 'figures' },
  el('caption', {}, title),
  columns.length > 1 && el('thead', {}, el('tr', {}, el('td', {}), ...columns.map((name) => el('th', { scope: 'col' }, name)))),
  el('tbody', {}, ...rows.map(({ label, cells }) => el('tr', {}, el('th', { scope: 'row' }, label), ...cells.map((text) => el('td', {}, text))))));
