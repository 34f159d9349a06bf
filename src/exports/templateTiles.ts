import { clipped, windowRound, type Window } from '../geometry/clip.ts';
import { moved, type Path } from '../geometry/path.ts';
import { add, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { boxOf, clearWords, type Box, type Mark } from './drawing.ts';
import { labelled } from './labelled.ts';
import { isLine, type Template } from './template.ts';

/** Room of a page for its share of a template. */
export interface Room { readonly width: Mm; readonly height: Mm }

/**
 * How a template is spread over pages: windows of one size in columns and rows, each reaching over the next by the overlap.
 * Places are those of the template, y down.
 */
export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly room: Room;
  readonly overlap: Mm;
  /** Upper left corner of the first window. */
  readonly zero: Point;
}
/** Columns and rows from 0. */
export interface Tile { readonly column: number; readonly row: number }

/** Room kept between what is drawn and the border of the windows. */
const AROUND: Mm = 1.5;

/** Everything that a template draws or letters in a place of its own. */
export function extentOf({ picture: { shapes }, fixed }: Template): Window {
  return windowRound([...shapes.filter(isLine).map(({ path }) => path), ...fixed.map((one) => cornersOf(boxOf(one)))]);
}

const cornersOf = ({ left, top, right, bottom }: Box): Path => [{ kind: 'line', from: [left, top], to: [right, bottom] }];

/**
 * As few windows as cover it. The template begins at the left border, so that only the last page of a row is part empty; one
 * row has it half way up, several begin at the upper border. @throws RangeError when the overlap leaves nothing of a page
 */
export function tilingFor({ least, most }: Window, room: Room, overlap: Mm): Tiling {
  if (!(overlap >= 0 && overlap < Math.min(room.width, room.height) / 2)) throw new RangeError(`an overlap must be 0 mm or more and less than half a page, got ${overlap} mm`);
  const size = [most[0] - least[0] + 2 * AROUND, most[1] - least[1] + 2 * AROUND] as const;
  const [columns, rows] = [countFor(size[0], room.width, overlap), countFor(size[1], room.height, overlap)];
  return {
    columns, rows, room, overlap,
    zero: [least[0] - AROUND, rows > 1 ? least[1] - AROUND : (least[1] + most[1] - room.height) / 2],
  };
}

const countFor = (size: Mm, page: Mm, overlap: Mm): number => Math.max(1, Math.ceil((size - overlap) / (page - overlap) - 1e-9));

/** The window of a tile, on the template. */
export function windowOf({ room: { width, height }, overlap, zero: [x, y] }: Tiling, { column, row }: Tile): Window {
  const [left, top] = [x + column * (width - overlap), y + row * (height - overlap)];
  return { least: [left, top], most: [left + width, top + height] };
}

/** Row by row: A1, A2, then B1. */
export const tilesOf = ({ columns, rows }: Tiling): Tile[] =>
  Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column): Tile => ({ column, row }))).flat();
export const tileName = ({ column, row }: Tile): string => `${String.fromCharCode(65 + row)}${column + 1}`;

/** Strips that lie on two pages: labels keep off them, or they would be cut in two. */
const SEAM_LEAST: Mm = 3;
function seams(tiling: Tiling): Box[] {
  const first = windowOf(tiling, { column: 0, row: 0 }), last = windowOf(tiling, { column: tiling.columns - 1, row: tiling.rows - 1 });
  const whole: Box = { left: first.least[0], top: first.least[1], right: last.most[0], bottom: last.most[1] }, less = Math.max(0, SEAM_LEAST - tiling.overlap) / 2;
  const upright = Array.from({ length: tiling.columns - 1 }, (_, i): Box => {
    const { least } = windowOf(tiling, { column: i + 1, row: 0 });
    return { ...whole, left: least[0] - less, right: least[0] + tiling.overlap + less };
  });
  const level = Array.from({ length: tiling.rows - 1 }, (_, i): Box => {
    const { least } = windowOf(tiling, { column: 0, row: i + 1 });
    return { ...whole, top: least[1] - less, bottom: least[1] + tiling.overlap + less };
  });
  return [...upright, ...level];
}

/** The template with every label in a place where no page cuts it. */
export function lettered({ picture, fixed }: Template, tiling: Tiling): readonly Mark[] {
  const first = windowOf(tiling, { column: 0, row: 0 }), last = windowOf(tiling, { column: tiling.columns - 1, row: tiling.rows - 1 });
  const within: Box = { left: first.least[0] - 2, top: first.least[1] - 2, right: last.most[0] + 2, bottom: last.most[1] };
  return [...labelled({ ...picture, boxes: [...picture.boxes, ...seams(tiling)] }, within, fixed).marks, ...fixed.flatMap(clearWords)];
}

/**
 * The share of a tile, moved to where its window lies on the page. Lines are cut at the border, exactly; lettering stands
 * whole on each page that holds it, and on the one with its middle where none does.
 * @param corner of the window on the page, upper left
 */
export function tileMarks(marks: readonly Mark[], tiling: Tiling, tile: Tile, corner: Point): Mark[] {
  const window = windowOf(tiling, tile), by: Point = [corner[0] - window.least[0], corner[1] - window.least[1]];
  return marks.flatMap((mark): Mark[] => {
    if (mark.kind === 'text') return holds(tiling, window, boxOf(mark)) ? [{ ...mark, at: add(mark.at, by) }] : [];
    if (mark.kind === 'fill') return holds(tiling, window, boxRound(mark.path)) ? [{ ...mark, path: moved(mark.path, by) }] : [];
    const path = clipped(mark.path, window);
    return path.length === 0 ? [] : [{ ...mark, path: moved(path, by) }];
  });
}

function boxRound(path: Path): Box {
  const { least, most } = windowRound([path]);
  return { left: least[0], top: least[1], right: most[0], bottom: most[1] };
}

function holds(tiling: Tiling, window: Window, box: Box): boolean {
  if (isIn(window, box)) return true;
  const middle: Point = [(box.left + box.right) / 2, (box.top + box.bottom) / 2], homeless = tilesOf(tiling).every((other) => !isIn(windowOf(tiling, other), box));
  return homeless && middle[0] >= window.least[0] && middle[0] <= window.most[0] && middle[1] >= window.least[1] && middle[1] <= window.most[1];
}

const isIn = ({ least, most }: Window, { left, top, right, bottom }: Box): boolean => left >= least[0] && right <= most[0] && top >= least[1] && bottom <= most[1];

/** Where crosses stand, on the template: each on the middle of a seam, on both of its pages. */
export function crossesOf(tiling: Tiling): Point[] {
  const { columns, rows, room, overlap } = tiling, inset: Mm = CROSS_INSET;
  return tilesOf(tiling).flatMap((tile): Point[] => {
    const { least, most } = windowOf(tiling, tile), x = most[0] - overlap / 2, y = most[1] - overlap / 2;
    return [
      ...(tile.column < columns - 1 ? [inset, room.height - inset].map((off): Point => [x, least[1] + off]) : []),
      ...(tile.row < rows - 1 ? [inset, room.width - inset].map((off): Point => [least[0] + off, y]) : []),
    ];
  });
}
const CROSS_INSET: Mm = 8;
