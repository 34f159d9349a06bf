import { deg, rounded } from '../../../src/checks/say.ts';
import { inDegrees } from '../../../src/geometry/units.ts';
import type { Frame, TouchesWith } from '../../../src/walk/frame.ts';
import { lengthWords, type LengthUnit } from '../../keep/lengths.ts';
import type { ShoeWalkShown } from '../../desk/protocol.ts';
import { el } from '../dom.ts';

/** What is read off one moment, in the order of the table. */
export const READ = ['Roll, toe down', 'Ankle pivot above the floor', 'Hip above the floor', 'Push ahead of the ankle pivot', 'Push, in body weights', 'Stands on'] as const;

const STANDS_ON: Readonly<Record<TouchesWith, string>> = { sole: 'its sole', 'rear corner': 'its back edge', 'front corner': 'its front end' };

/** The words for each of them. @param bends at the ball, which is the front end of what turns with the foot */
export const readIn = ({ roll, pivot, hip, contact, push, touches }: Frame, lengths: LengthUnit, bends: boolean): readonly string[] => [
  deg(inDegrees(roll)), lengthWords(pivot[1], lengths), lengthWords(hip[1], lengths), lengthWords(contact[0] - pivot[0], lengths), rounded(push, 2),
  bends && touches === 'front corner' ? 'the ball' : STANDS_ON[touches],
];

export interface Readout { readonly table: HTMLTableElement; readonly lay: (own: Frame, ordinary: Frame) => void }

/** The numbers of the moment that is shown, beside those of an ordinary shoe where there is one. */
export function readout({ side, columns, estimated, cut }: ShoeWalkShown, lengths: LengthUnit): Readout {
  const cells = columns.map(() => READ.map(() => el('td', {}, '')));
  const table = el('table', { class: 'figures read' },
    el('caption', {}, `${side} shoe at this moment${estimated ? ' (est.)' : ''}`),
    el('thead', {}, el('tr', {}, el('td', {}), ...columns.map((name, i) => el('th', { scope: 'col', class: i ? 'of-ordinary' : undefined }, name)))),
    el('tbody', {}, ...READ.map((label, i) => el('tr', {}, el('th', { scope: 'row' }, label), ...cells.map((column, k) => { if (k) column[i]!.className = 'of-ordinary'; return column[i]!; })))));
  return {
    table,
    lay: (...frames) => cells.forEach((column, k) => readIn(frames[k]!, lengths, k > 0 || !cut).forEach((text, i) => { if (column[i]!.textContent !== text) column[i]!.textContent = text; })),
  };
}
