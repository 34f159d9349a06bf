import { capital } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import { figuresOf, inWords } from '../checks/figures.ts';
import { walkWords, type ShoeWalkFigures, type WalkFigure } from '../checks/walkFigures.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { OTHER_LANDS, OTHER_LIFTS } from '../walk/phases.ts';
import { ruleWords } from '../walk/drive.ts';
import { MEAN_CREDIT } from '../walk/meanStance.ts';
import type { CurveSource } from '../walk/stanceCurve.ts';
import { stroke, words, type Mark } from './drawing.ts';

/** The numbers of a strip: which of them, and a column for each shoe and for an ordinary one in the place of a rocker. */
export interface StripTable { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] }

const KEYS = ['strikeReached', 'toeOff', 'walkCarried', 'walkBackEdgePast', 'walkTip', 'walkPivotDrop', 'walkHipContact', 'walkHipHighest', 'walkRolled', 'walkPivotMoment', 'walkBallMoment'];

export function stripTable(design: Design, figures: readonly ShoeWalkFigures[]): StripTable {
  const columns = figures.flatMap((one): Told[] => {
    const shoe = design.shoes.find(({ side }) => side === one.side), rolls = shoe?.kind === 'rocker' ? figuresOf(shoe, design.fitting) : [];
    const roll = rolls.map((figure) => ({ key: figure.key, label: figure.label, text: inWords(figure).replace(/[()]/g, '') })), step = (of: readonly WalkFigure[]) => of.map((figure) => ({ ...figure, text: walkWords(figure) }));
    return [{ name: `${one.side === 'left' ? 'Left' : 'Right'} shoe`, told: [...roll, ...step(one.own)] }, ...(one.walk.kind === 'rocker' ? [{ name: 'ordinary instead', told: step(one.ordinary) }] : [])];
  });
  const cell = (key: string) => ({ told }: Told) => told.find((one) => one.key === key), there = KEYS.filter((key) => columns.some(cell(key)));
  return { columns: columns.map(({ name }) => name), rows: there.map((key) => [columns.flatMap((column) => cell(key)(column) ?? [])[0]?.label ?? '', ...columns.map((column) => cell(key)(column)?.text ?? '')]) };
}

/** What one column tells. */
interface Told { readonly name: string; readonly told: readonly { readonly key: string; readonly label: string; readonly text: string }[] }

/** Set small: the pictures need the room. */
const SIZE: Mm = 2.5, ROW: Mm = 3.3, LABEL: Mm = 68, VALUE: Mm = 31;

export const tableWidth = ({ columns }: StripTable): Mm => LABEL + columns.length * VALUE;
export const tableHeight = ({ rows }: StripTable): Mm => (rows.length + 1) * ROW + 1;

export function drawnTable(table: StripTable, [left, top]: Point): Mark[] {
  const right = left + tableWidth(table), end = (i: number): Mm => left + LABEL + (i + 1) * VALUE;
  const line = (cells: readonly string[], row: number, bold: boolean): Mark[] => {
    const y = top + (row + 1) * ROW, [label = '', ...values] = cells;
    return [
      words(label, [left, y - 0.8], { size: SIZE, bold }), ...values.flatMap((value, i) => (value === '' ? [] : [words(value, [end(i), y - 0.8], { size: SIZE, bold, anchor: 'end' })])),
      stroke([left, y], [right, y], 'thin', 'ink'),
    ];
  };
  return [...line(['Figure', ...table.columns], 0, true), ...table.rows.flatMap((cells, i) => line(cells, i + 1, false))];
}

/** The curve of a shoe, told short; the mean's credit stands once. */
const DRIVEN_BY: Readonly<Record<CurveSource, string>> = {
  mean: 'walk not measured, the mean stands for it (est.)', angles: 'three angles from a side video, between them as the mean (est.)', table: 'walk as in its table',
};

/** What drives each shoe and what is drawn, in sentences. */
export function ruleLines(figures: readonly ShoeWalkFigures[]): string[] {
  const each = (of: (one: ShoeWalkFigures) => string): string[] => [...new Set(figures.map(of))].map((text) => `${capital(figures.filter((one) => of(one) === text).map(({ side }) => side).join(' and '))}: ${text}.`);
  const measured = figures.filter(({ walk: { own } }) => own.curve.pushSource === 'table').length;
  const pushes = measured === figures.length ? 'the table' : measured === 0 ? 'the mean (est.)' : 'the mean (est.) where no table tells it';
  return [
    ...each(({ walk: { ankle, borrowed } }) => `${ruleWords(ankle)}${borrowed ? '; measured on the other foot (est.)' : ''}`), ...each(({ walk: { own } }) => DRIVEN_BY[own.curve.source]),
    ...(figures.every(({ walk: { own } }) => own.curve.source === 'table' && own.curve.pushSource === 'table') ? [] : [`${capital(MEAN_CREDIT)}.`]),
    `Toe down positive. Heights above the floor, knee straight. Arrow: the floor's upright push, of ${pushes}; fore and aft left out. The other foot lifts at ${100 * OTHER_LIFTS} % of stance, lands at ${100 * OTHER_LANDS} %. Thin: an ordinary shoe of the same heights.`,
  ];
}

