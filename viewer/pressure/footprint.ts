import type { Point } from '../../src/geometry/point.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { SoleSeen } from '../desk/protocol.ts';

/** Pressure by cell: rows from the heel to the toes, cells of a row from the outer to the inner side of a left foot, or from the inner to the outer side of a right one. */
export type Print = readonly (readonly number[])[];

/** Where a cell of the print comes to lie on the sole, and its pressure as a share of the peak. */
export interface Pressed { readonly at: Point; readonly share: number; readonly row: number; readonly column: number }

/** Cells pressed less than this share of the peak are left out. */
export const LEAST_SHARE = 0.1;
/** The print keeps this far from the outline. */
const CLEAR: Mm = 2.5;
/** A print is this much shorter than its foot behind and before, as shares of the foot: heel and toes are round. Guessed from the look of prints; no source gives it. */
const ROUND_HEEL = 0.02, ROUND_TOE = 0.04;
/** How much of the ball line a print takes up. */
const OF_BALL = 0.88;
const ROUNDS = 12;

export const readPrint = (text: string): Print => text.trim().split(/\r?\n/).map((row) => row.split(',').map(Number));

/**
 * Lays a mean print on a sole: along it by the foot's heel, ball line and toes, so that the peak under the ball comes to lie
 * on the ball line; across it by the ball's width, drawn in where a row would pass the outline. Pure.
 */
export function footprint(print: Print, sole: SoleSeen): Pressed[] {
  const peak = Math.max(...print.flat()), rows = rowsOf(print, peak * LEAST_SHARE), first = rows[0], last = rows.at(-1);
  if (!first || !last || peak <= 0) return [];
  const peakRow = rows.find(({ cells }) => cells.some(({ value }) => value === peak))!, heel = rows[Math.round(rows.length * 0.13)]!;
  const [inner, outer] = sole.ball, per = (OF_BALL * Math.abs(outer[1] - inner[1])) / (peakRow.to - peakRow.from);
  const columnOf = (row: number): number => heel.middle + (peakRow.middle - heel.middle) * Math.min(1, Math.max(0, (row - heel.row) / (peakRow.row - heel.row)));
  const across = (row: number, column: number): Mm => (columnOf(row) - column) * per;
  const lay = ({ row, cells }: Row, x: Mm): Pressed[] => {
    const span = spanAt(sole.outline, x);
    if (!span) return [];
    const middle = (span[0] + span[1]) / 2, half = Math.max(0, (span[1] - span[0]) / 2 - CLEAR);
    const draw = Math.min(1, half / Math.max(...cells.map(({ column }) => Math.abs(across(row, column)))));
    return cells.map(({ column, value }): Pressed => ({ at: [x, middle + draw * across(row, column)], share: value / peak, row, column }));
  };
  const ballX = (y: Mm): Mm => inner[0] + ((outer[0] - inner[0]) * (y - inner[1])) / (outer[1] - inner[1]);
  // The ball line runs aslant: how far along it the peak lies hangs on how far across, and that on the width there.
  let ball = ballX(0);
  for (let round = 0; round < ROUNDS; round++) ball = ballX(lay(peakRow, ball).find(({ share }) => share === 1)?.at[1] ?? 0);
  const along = alongBy([first.row, peakRow.row, last.row], ends(sole, ball));
  return rows.flatMap((row) => lay(row, along(row.row)));
}

interface Row { readonly row: number; readonly cells: readonly { readonly column: number; readonly value: number }[]; readonly from: number; readonly to: number; readonly middle: number }

const rowsOf = (print: Print, least: number): Row[] => print.flatMap((values, row) => {
  const cells = values.flatMap((value, column) => value >= least ? [{ column, value }] : []), from = cells[0]?.column, to = cells.at(-1)?.column;
  return from === undefined || to === undefined ? [] : [{ row, cells, from, to, middle: (from + to) / 2 }];
});

/** Where heel, peak and toes of the print lie along the sole: within the foot, and within the outline. */
function ends({ foot: [heel, toe], outline }: SoleSeen, ball: Mm): readonly [Mm, Mm, Mm] {
  const xs = outline.map(([x]) => x), length = toe - heel;
  return [Math.max(heel + ROUND_HEEL * length, Math.min(...xs) + CLEAR), ball, Math.min(toe - ROUND_TOE * length, Math.max(...xs) - CLEAR)];
}

const alongBy = ([r0, r1, r2]: readonly [number, number, number], [x0, x1, x2]: readonly [Mm, Mm, Mm]) => (row: number): Mm =>
  row <= r1 ? x0 + ((row - r0) / (r1 - r0)) * (x1 - x0) : x1 + ((row - r1) / (r2 - r1)) * (x2 - x1);

/** How far an outline reaches to the right and to the left at a place along it. */
export function spanAt(outline: readonly Point[], x: Mm): readonly [Mm, Mm] | undefined {
  const ys = outline.flatMap(([ax, ay], i): Mm[] => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return (ax <= x) === (bx <= x) ? [] : [ay + ((x - ax) / (bx - ax)) * (by - ay)];
  });
  return ys.length < 2 ? undefined : [Math.min(...ys), Math.max(...ys)];
}
