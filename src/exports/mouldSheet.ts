import type { Path, PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { rimFrom } from '../making/cavity.ts';
import type { ShoeMould } from '../making/made.ts';
import { outlineOf } from '../making/mould/layout.ts';
import type { Outline } from '../making/mould/outline.ts';
import { round, type Hole } from '../making/places.ts';
import type { DxfEntity } from './dxf.ts';
import { lettered, path, sheet } from './dxfSheets.ts';
import { onSide } from './planLines.ts';

/**
 * The plan of a mould, seen from above, full size, mm: where the cavity opens, the ground line on its floor, the border of
 * the block and every bore, with the joints. Lines run through the very corners of the solids.
 * @param name job and side, for the lettering
 */
export function mouldSheet({ side, order, mould: { layout } }: ShoeMould, name: string): string {
  const { dowels, bolts, pour, vents, blocks: { border }, cuts, rows } = layout;
  const on = (layer: string, line: Path): DxfEntity[] => path(layer, onSide(side, line)), bores = (layer: string, holes: readonly Hole[]): DxfEntity[] => holes.flatMap((hole) => on(layer, circle(hole)));
  const [ys, xs] = [border.map(([, y]) => y), border.map(([x]) => x)], across = (x: number): Path => [{ kind: 'line', from: [x, Math.min(...ys)], to: [x, Math.max(...ys)] }];
  const open = closed(outlineOf(layout, 'open')), groove = rows.some(({ inner }) => inner.groove.length > 0);
  return sheet([
    ...on('CAVITY_EDGE', open), ...on('GROUND_LINE', apartFrom(open, closed(outlineOf(layout, 'bottom')))), ...on('MOULD_BORDER', closed(border)),
    ...(groove ? [...on('FLASH_GROOVE', closed(round(rows, ({ groove: [first], open }) => first ?? open))), ...on('FLASH_GROOVE', closed(round(rows, rimFrom)))] : []),
    ...bores('DOWELS', dowels), ...bores('BOLTS', bolts), ...bores('POUR_HOLE', pour), ...bores('VENTS', vents),
    ...cuts.cavity.flatMap((x) => on('CAVITY_JOINT', across(x))), ...cuts.lid.flatMap((x) => on('LID_JOINT', across(x))),
    ...(order.split ? on('CAVITY_JOINT', [{ kind: 'line', from: [Math.min(...xs), 0], to: [Math.max(...xs), 0] }]) : []),
    ...lettered([`${name} mould, seen from above mm`], [Math.min(...xs), Math.min(...onSide(side, closed(border)).map((piece) => (piece.kind === 'line' ? piece.from[1] : 0))) - 15]),
  ]);
}

/** Corners that lie in one place are one. */
const APART = 1e-5;

function closed(corners: Outline): Path {
  const kept = corners.filter((to, i) => Math.hypot(to[0] - corners.at(i - 1)![0], to[1] - corners.at(i - 1)![1]) > APART);
  return kept.map((to, i) => ({ kind: 'line', from: kept.at(i - 1)!, to }));
}

/** Under an upright wall the ground line lies on the edge of the cavity, and one line is drawn. */
function apartFrom(drawn: Path, path: Path): Path {
  const place = (piece: PathPiece): string => (piece.kind === 'line' ? [...piece.from, ...piece.to].map((value) => value.toFixed(5)).join(' ') : '');
  const taken = new Set(drawn.map(place));
  return path.filter((piece) => !taken.has(place(piece)));
}

/** Two halves: a drawing program knows no arc of a full turn. */
const circle = ({ at, diameter }: { readonly at: Point; readonly diameter: number }): Path =>
  [0, Math.PI].map((start) => ({ kind: 'arc', centre: at, radius: diameter / 2, start, sweep: Math.PI }));
