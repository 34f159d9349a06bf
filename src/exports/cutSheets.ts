import { rounded } from '../checks/say.ts';
import type { BoardOrder } from '../fitting/making.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { cutLine } from '../making/cut/kerf.ts';
import { laid, type Placed } from '../making/cut/placed.ts';
import { relieved } from '../making/cut/relief.ts';
import { takesBoard } from '../making/cut/takesBoard.ts';
import type { FlatPart, PartLetters } from '../making/flatPart.ts';
import type { DxfEntity } from './dxf.ts';
import { path, sheet } from './dxfSheets.ts';
import { polyline } from './drawing.ts';

/**
 * Parts as they lie on the boards they are cut from, one drawing a board, mm, lower left corner of the board at zero. The
 * lines to cut are those the middle of the beam or cutter follows, half the kerf off the edges, in exact arcs: the
 * machine makes no allowance of its own. What lies inside a part comes first, so that nothing is cut that has fallen out.
 * @param name job and what the parts are, for the lettering
 */
export function cutSheets(name: string, parts: readonly Placed[], board: BoardOrder): string[] {
  const of = 1 + Math.max(0, ...parts.map((part) => part.sheet));
  return Array.from({ length: of }, (_, i) => cutSheet(`${name}, board ${i + 1} of ${of}`, parts.filter((part) => part.sheet === i).map(laid), board));
}

function cutSheet(name: string, parts: readonly FlatPart[], board: BoardOrder): string {
  const { length, width, kerf } = board, corners: Point[] = [[0, 0], [length, 0], [length, width], [0, width]];
  const cut = (layer: string, edges: readonly FlatPart['outline'][]): DxfEntity[] => edges.flatMap((edge) => path(layer, cutLine(relieved(edge, kerf), kerf / 2)));
  return sheet([
    ...path('BOARD', polyline(corners, true)), ...lettered([name, ...boardLines(board, parts.some((part) => takesBoard(part, board)))]),
    ...parts.flatMap(({ marks, letters }) => [...marks.flatMap((mark) => path('MARK', mark.path)), ...letters.map(letter)]),
    ...cut('CUT_IN', parts.flatMap(({ holes }) => holes)), ...cut('CUT_OUT', parts.map(({ outline }) => outline)),
  ]);
}

const letter = ({ text, at, size, turn = 0 }: PartLetters): DxfEntity => ({ kind: 'text', layer: 'LETTERS', at, height: size, text, turn });

/** Below the board, where nothing is cut. */
const SIZE: Mm = 6;
const lettered = (lines: readonly string[]): DxfEntity[] => lines.map((text, i) => letter({ text, at: [0, -2 * SIZE - i * 1.7 * SIZE], size: SIZE }));

/** What the lines reckon with: the board as it is, and the cut that is taken into them. */
const boardLines = ({ thickness, measured, kerf, clearance }: BoardOrder, slotted: boolean): string[] => [
  `board ${number(thickness)} mm thick, ${measured ? 'as measured' : 'NOT MEASURED: measure it before cutting'}${slotted ? `; slots ${number(thickness + clearance)} mm` : ''}`,
  kerf === 0 ? 'no kerf taken into the lines' : `kerf ${number(kerf)} mm taken into the lines: cut ON the line, no allowance in the machine`,
];
const number = (value: Mm): string => String(Number(rounded(value, 2)));
