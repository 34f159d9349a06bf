import type { PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { drawn, LETTERS, polyline, stroke, words, type Box, type Mark, type Words } from './drawing.ts';
import { wrapped, type Lettering } from './letters.ts';

/** A strip of a page that is never cut: what it draws when its upper left corner lies at a place. */
export interface Block {
  readonly height: Mm;
  readonly marks: (left: Mm, top: Mm) => readonly Mark[];
  /** A heading does not stand alone at the foot of a page. */
  readonly staysWithNext?: boolean;
  /** Begins on a page of its own. */
  readonly newPage?: boolean;
  /** Head of the table it belongs to, said again where the table runs on over a page. */
  readonly head?: Block;
  /** The same with less air, where it has any to give. */
  readonly close?: Block;
}

/** Blocks one below the other on as many pages as they need. */
export const pagesOf = (blocks: readonly Block[], room: Box): Mark[][] => filledWith(blocks, [room]);

/** The same in columns, each filled before the next: as many pages as that needs, each with its columns. */
export function columnsOf(blocks: readonly Block[], columns: readonly Box[]): Mark[][] {
  const filled = filledWith(blocks, columns), pages = Math.ceil(filled.length / columns.length);
  return Array.from({ length: pages }, (_, page) => filled.slice(page * columns.length, (page + 1) * columns.length).flat());
}

/** Fills one room after the other, and begins again with the first. */
function filledWith(blocks: readonly Block[], rooms: readonly Box[]): Mark[][] {
  const filled: Mark[][] = [[]], room = (): Box => rooms[(filled.length - 1) % rooms.length]!;
  let y = room().top;
  const lay = ({ height, marks }: Block): void => { filled.at(-1)!.push(...marks(room().left, y)); y += height; };
  blocks.forEach((block, i) => {
    if ((block.newPage || y + needed(blocks, i) > room().bottom) && y > room().top) {
      filled.push([]);
      y = room().top;
      if (block.head) lay(block.head);
    }
    lay(block);
  });
  return filled;
}

/** The height of a block with all that must follow it on the same page. */
function needed(blocks: readonly Block[], i: number): Mm {
  const { height, staysWithNext } = blocks[i]!;
  return height + (staysWithNext && i + 1 < blocks.length ? needed(blocks, i + 1) : 0);
}

/** A block in smaller letters and with no more air than it needs: what was laid out for a width takes that much of it. */
export function shrunk(block: Block, by: number): Block {
  const { staysWithNext, head } = block, { height, marks } = block.close ?? block;
  return {
    height: height * by, ...(staysWithNext ? { staysWithNext } : {}), ...(head ? { head: shrunk(head, by) } : {}),
    marks: (left, top) => marks(0, 0).map((mark) => scaled(mark, by, [left, top])),
  };
}

/** A mark laid out at zero, smaller or larger, and moved to a place. */
function scaled(mark: Mark, scale: number, zero: Point): Mark {
  const at = ([x, y]: Point): Point => [zero[0] + x * scale, zero[1] + y * scale];
  if (mark.kind === 'text') return { ...mark, at: at(mark.at), size: mark.size * scale };
  return { ...mark, path: mark.path.map((piece): PathPiece => (piece.kind === 'line' ? { kind: 'line', from: at(piece.from), to: at(piece.to) } : { ...piece, centre: at(piece.centre), radius: piece.radius * scale })) };
}

/** From line to line in letter sizes, and what a row of a table takes besides. */
interface Air { readonly line: number; readonly row: Mm }
const USUAL: Air = { line: 1.36, row: 1 }, CLOSE: Air = { line: 1.2, row: 0.6 };
const lineHeight = ({ size }: Lettering, { line } = USUAL): Mm => size * line;

const BODY: Lettering = { size: LETTERS.label };

export const space = (height: Mm): Block => ({ height, marks: () => [] });

export function heading(text: string): Block {
  return { height: 10, staysWithNext: true, marks: (left, top) => [words(text, [left, top + 6.5], { size: LETTERS.heading, bold: true })] };
}

export function subheading(text: string): Block {
  return { height: 7, staysWithNext: true, marks: (left, top) => [words(text, [left, top + 4.8], { bold: true })] };
}

/** Lines of text, each at its height below the top. */
function lines(texts: readonly string[], left: Mm, top: Mm, lettering: Lettering, air = USUAL): Words[] {
  return texts.map((text, i) => words(text, [left, top + (0.78 + i) * lineHeight(lettering, air)], lettering));
}

/** A paragraph over the width given. */
export function paragraph(text: string, width: Mm, lettering: Lettering = BODY): Block {
  const texts = wrapped(text, width, lettering);
  return { height: texts.length * lineHeight(lettering) + 1.4, marks: (left, top) => lines(texts, left, top, lettering) };
}

/** What a table below is about; never left behind at the foot of a page. */
export const introduction = (text: string, width: Mm): Block => ({ ...paragraph(text, width), staysWithNext: true });

/** Sentences in a thick frame, each on a line of its own: what nobody may overlook. */
export function framed(sentences: readonly string[], width: Mm): Block {
  const lettering = { size: LETTERS.heading, bold: true }, texts = sentences.flatMap((sentence) => wrapped(sentence, width - 6, lettering)), height = texts.length * lineHeight(lettering) + 5;
  return {
    height: height + 2.5,
    marks: (left, top) => [
      drawn(polyline([[left, top], [left + width, top], [left + width, top + height], [left, top + height]], true), 'visible'),
      ...lines(texts, left + 3, top + 2.2, lettering),
    ],
  };
}

export interface Column { readonly title: string; readonly width: Mm; readonly right?: boolean }
/** One cell: text, or bold text. */
export type Cell = string | { readonly text: string; readonly bold: true };
export interface Row { readonly cells: readonly Cell[] }

const PAD: Mm = 1.2;

/** A table with a hairline under every row; its head, where it has one, comes again on each page. */
export function table(columns: readonly Column[], rows: readonly Row[], lettering: Lettering = BODY): Block[] {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const row = (cells: readonly Cell[], rule: 'visible' | 'thin'): Block => ({ ...rowBlock(columns, cells, lettering, width, rule, USUAL), close: rowBlock(columns, cells, lettering, width, rule, CLOSE) });
  const head = row(columns.map(({ title }): Cell => ({ text: title, bold: true })), 'visible'), body = rows.map(({ cells }) => row(cells, 'thin'));
  if (columns.every(({ title }) => title === '')) return body;
  return [{ ...head, staysWithNext: true }, ...body.map((block) => ({ ...block, head }))];
}

function rowBlock(columns: readonly Column[], cells: readonly Cell[], { size }: Lettering, width: Mm, rule: 'visible' | 'thin', air: Air): Block {
  const written = columns.map((column, i) => {
    const cell = cells[i] ?? '', bold = typeof cell !== 'string', lettering = { size, bold };
    return { column, lettering, texts: wrapped(bold ? cell.text : cell, column.width - 2 * PAD, lettering) };
  });
  const height = Math.max(1, ...written.map(({ texts }) => texts.length)) * lineHeight({ size }, air) + air.row;
  return {
    height,
    marks: (left, top) => {
      let x = left;
      const marks = written.flatMap(({ column, lettering, texts }) => {
        const from = x;
        x += column.width;
        return lines(texts, from + PAD, top + 0.3 * air.row, lettering, air).map((line): Words => column.right ? { ...line, anchor: 'end', at: [from + column.width - PAD, line.at[1]] } : line);
      });
      return [...marks, stroke([left, top + height], [left + width, top + height], rule, 'ink')];
    },
  };
}
