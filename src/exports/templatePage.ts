import type { PaperSize } from '../fitting/words.ts';
import type { Path } from '../geometry/path.ts';
import { add, scale, type Point } from '../geometry/point.ts';
import { clamp } from '../geometry/solve.ts';
import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { CHECK, checkBar } from './checkBar.ts';
import { boxOf, clearWords, drawn, filled, grown, LETTERS, polyline, stroke, WIDER, words, type Box, type Drawing, type Mark, type Paper } from './drawing.ts';
import { placed, type Place } from './labels.ts';
import { wrapped } from './letters.ts';
import { stopsTaken } from './sheetFrame.ts';
import { isLine, segments, type Template } from './template.ts';
import { crossesOf, extentOf, lettered, tileMarks, tileName, tilesOf, tilingFor, windowOf, type Room, type Tile, type Tiling } from './templateTiles.ts';

/** The papers, lying: ISO 216 A4 and A3, and North American Letter of 8.5 by 11 inches. */
const PAPERS: Readonly<Record<PaperSize, Paper>> = { A4: { width: 297, height: 210 }, A3: { width: 420, height: 297 }, Letter: { width: 279.4, height: 215.9 } };

/** What no printer reaches, the column of the upright check line, the strip that says what the page is, and a line of a stop. */
const MARGIN: Mm = 6, COLUMN: Mm = 10, STRIP: Mm = 26, STOP_LINE: Mm = 4.4;

/** A sheet of paper with the corner and the size of its window. */
interface Frame { readonly paper: Paper; readonly room: Room; readonly corner: Point; readonly strip: Mm; readonly stops: readonly string[] }

const CORNER: Point = [MARGIN + COLUMN, MARGIN];
const stopLines = (design: Design, width: Mm): string[] => stopsTaken(design).flatMap((stop) => wrapped(stop, width, { size: LETTERS.label, bold: true }));

function frameOf(paper: Paper, design: Design): Frame {
  const stops = stopLines(design, paper.width - 2 * MARGIN), strip = paper.height - MARGIN - STRIP - stops.length * STOP_LINE;
  return { paper, stops, strip, corner: CORNER, room: { width: paper.width - CORNER[0] - MARGIN, height: strip - CORNER[1] } };
}

/** A paper cut to a template: wide and high enough for the strip and for both check lines. */
function frameRound({ width, height }: Room, design: Design): Frame {
  const wide = Math.max(width + CORNER[0] + MARGIN, PAPERS.Letter.width), stops = stopLines(design, wide - 2 * MARGIN), high = Math.max(height, CHECK + 8);
  const paper: Paper = { width: Math.ceil(wide), height: Math.ceil(CORNER[1] + high + STRIP + stops.length * STOP_LINE + MARGIN) };
  return frameOf(paper, design);
}

/** All pages of some templates, one template after another. @param overlap of neighbouring pages, mm  @param before how many pages lie before them in the same document */
export function templatePages(design: Design, templates: readonly Template[], paper: PaperSize, overlap: Mm, before = 0): Drawing[] {
  const frame = frameOf(PAPERS[paper], design);
  const laid = templates.map((template) => { const tiling = tilingFor(extentOf(template), frame.room, overlap); return { template, tiling, marks: lettered(template, tiling) }; });
  const of = laid.reduce((sum, { tiling }) => sum + tilesOf(tiling).length, before);
  let n = before;
  return laid.flatMap(({ template, tiling, marks }) => tilesOf(tiling).map((tile) => page(design, { template, tiling, marks, tile, frame, n: ++n, of })));
}

/** A template on one sheet as large as it needs. */
export function templateSheet(design: Design, template: Template): Drawing {
  const extent = extentOf(template), size: Room = { width: extent.most[0] - extent.least[0] + 4, height: extent.most[1] - extent.least[1] + 4 };
  const frame = frameRound(size, design), tiling = tilingFor(extent, frame.room, 0);
  return page(design, { template, tiling, marks: lettered(template, tiling), tile: { column: 0, row: 0 }, frame, n: 1, of: 1 });
}

interface Page { readonly template: Template; readonly tiling: Tiling; readonly marks: readonly Mark[]; readonly tile: Tile; readonly frame: Frame; readonly n: number; readonly of: number }

function page(design: Design, one: Page): Drawing {
  const { template: { side, part }, marks, tiling, tile, frame } = one, share = tileMarks(marks, tiling, tile, frame.corner), bars = checkBars(frame);
  return {
    paper: frame.paper, title: `${design.fitting.job.reference}: ${side} ${part}, true size`,
    marks: [...share, ...joinMarks(one, [...share, ...bars]), ...bars, ...stripMarks(design, one)],
  };
}

/** Arms of a cross, cut at the window's border. */
const ARM: Mm = 4;

/** Where neighbours meet: crosses on both pages; the left and the upper page go under, the other one is cut at its border. */
function joinMarks({ tiling, tile, frame: { corner, room } }: Page, share: readonly Mark[]): Mark[] {
  const [left, top] = corner, right = left + room.width, bottom = top + room.height, { overlap } = tiling, { least } = windowOf(tiling, tile);
  const name = (column: number, row: number): string => tileName({ column: tile.column + column, row: tile.row + row });
  const crosses = crossesOf(tiling).map(([x, y]): Point => [x - least[0] + left, y - least[1] + top]).filter(([x, y]) => x >= left && x <= right && y >= top && y <= bottom);
  const joins: readonly Join[] = [
    ...(tile.column < tiling.columns - 1 ? [{ line: stroke([right - overlap, top], [right - overlap, bottom], 'hidden'), text: `glue under ${name(1, 0)}`, at: [right - overlap - 1, bottom - 14], along: [0, -1] } as const] : []),
    ...(tile.column > 0 ? [{ line: stroke([left, top], [left, bottom], 'thin', 'ink'), text: `cut here, lay on ${name(-1, 0)}`, at: [left - 1.2, bottom - 14], along: [0, -1] } as const] : []),
    ...(tile.row < tiling.rows - 1 ? [{ line: stroke([left, bottom - overlap], [right, bottom - overlap], 'hidden'), text: `glue under ${name(0, 1)}`, at: [left + 14, bottom - overlap - 1], along: [1, 0] } as const] : []),
    ...(tile.row > 0 ? [{ line: stroke([left, top], [right, top], 'thin', 'ink'), text: `cut here, lay on ${name(0, -1)}`, at: [left + 14, top + overlap + 3.4], along: [1, 0] } as const] : []),
  ];
  return [...crosses.flatMap((at) => cross(at, [left, right], [top, bottom])), ...joins.map(({ line }) => line), ...joinWords(joins, share, { left: MARGIN, top, right, bottom })];
}

/** The edge of a page that is glued or cut, the words for it, and which way along it they may move. */
interface Join { readonly line: Mark; readonly text: string; readonly at: Point; readonly along: Point }

function cross([x, y]: Point, [left, right]: Point, [top, bottom]: Point): Mark[] {
  return [
    stroke([clamp(x - ARM, left, right), y], [clamp(x + ARM, left, right), y], 'thin', 'ink'), stroke([x, clamp(y - ARM, top, bottom)], [x, clamp(y + ARM, top, bottom)], 'thin', 'ink'),
  ];
}

/** The words of the joins where they cross least of what the page shows. */
function joinWords(joins: readonly Join[], share: readonly Mark[], within: Box): Mark[] {
  const wishes = joins.map(({ text, at, along }) => ({
    label: words(text, at, { turned: along[0] === 0 }), places: Array.from({ length: 14 }, (_, i): Place => ({ at: add(at, scale(along, i * 9)) })),
  }));
  const boxes = share.filter((mark) => mark.kind === 'text').map(boxOf);
  return placed(wishes, { boxes, lines: share.filter(isLine).flatMap(({ path }) => segments(path)), within: grown(within, 2) }).flatMap(({ label }) => clearWords(label));
}

/** Source: common practice, a print may be off by up to 3 %, the line by no more than this. */
const CHECK_WORDS = `must measure ${CHECK} mm, ± 0.3`;

/** Two lines of 100 mm on every page, in the strip and in the column beside the window. */
function checkBars({ corner: [, top], strip }: Frame): Mark[] {
  const x = BAR_LEFT, y = strip + 6.5, upX = MARGIN + 3, upY = top + 3;
  return [
    ...checkBar([x, y], 'level'), ...checkBar([upX, upY], 'upright'),
    words(`${CHECK_WORDS}, both ways: else do not cut`, [x, y - 2.2]),
    words(CHECK_WORDS, [upX + 4.4, upY + CHECK / 2], { turned: true, anchor: 'middle' }),
  ];
}

/** Where the level check line begins, the notes, and how wide the key plan is. */
const BAR_LEFT: Mm = 76, NOTES_LEFT: Mm = BAR_LEFT + CHECK + 6, KEY: Room = { width: 34, height: 20 };
/** Notes are written as large as the strip lets them be; a reader with the papers beside him needs no larger ones. */
const NOTE_SIZES = [2.8, 2.6, 2.4, 2.2] as const, NOTE_LINE = 1.32;

function fitted(notes: readonly string[], width: Mm): { readonly size: Mm; readonly lines: readonly string[] } {
  const tries = NOTE_SIZES.map((size) => ({ size, lines: notes.flatMap((note) => wrapped(note, width / WIDER, { size })) }));
  return tries.find(({ size, lines }) => 5 + (lines.length - 1) * size * NOTE_LINE <= STRIP - 1) ?? tries.at(-1)!;
}

/** What the page is: side and part in large letters, job, date, version, number, notes, and where it lies in the whole. */
function stripMarks(design: Design, one: Page): Mark[] {
  const { template: { side, part, notes }, tiling, tile, frame: { paper, strip, stops }, n, of } = one, { job, version } = design.fitting;
  const right = paper.width - MARGIN, keyLeft = right - KEY.width, tiles = tilesOf(tiling), whole = tiles.length > 1 ? `, ${tileName(tile)} of ${tileName(tiles[0]!)} to ${tileName(tiles.at(-1)!)}` : '';
  const { size, lines: noteLines } = fitted(notes, keyLeft - NOTES_LEFT - 3);
  const partSize = Math.min(6, (6 * (BAR_LEFT - MARGIN - 4)) / (part.length * 0.54 * 6));
  return [
    stroke([MARGIN, strip + 1], [right, strip + 1], 'visible', 'ink'),
    words(side.toUpperCase(), [MARGIN, strip + 11], { size: 10, bold: true }), words(part, [MARGIN, strip + 19.5], { size: partSize, bold: true }),
    words('true size, 1 : 1', [MARGIN, strip + 24.6]),
    words(`${job.reference}   ${job.date}`, [BAR_LEFT, strip + 14], { size: LETTERS.heading, bold: true }),
    words(`sheet version ${version}`, [BAR_LEFT, strip + 19.5]), words(`page ${n} of ${of}${whole}`, [BAR_LEFT, strip + 24.6], { bold: true }),
    ...noteLines.map((text, i) => words(text, [NOTES_LEFT, strip + 5 + i * size * NOTE_LINE], { size })),
    ...keyPlan(one, [keyLeft, strip + 3.5]),
    ...stops.map((text, i) => words(text, [MARGIN, strip + STRIP + 3.2 + i * STOP_LINE], { bold: true, ink: 'governs' })),
  ];
}

/** The whole template in small, with its pages, and this one in grey. */
function keyPlan({ template, tiling, tile }: Page, [left, top]: Point): Mark[] {
  const all = tilesOf(tiling).map((other) => windowOf(tiling, other)), { least } = all[0]!, { most } = all.at(-1)!;
  const by = Math.min(KEY.width / (most[0] - least[0]), KEY.height / (most[1] - least[1]));
  const small = ([x, y]: Point): Point => [left + (x - least[0]) * by, top + (y - least[1]) * by];
  const frame = (window: (typeof all)[number]): Path => { const [a, b] = [small(window.least), small(window.most)]; return polyline([a, [b[0], a[1]], b, [a[0], b[1]]], true); };
  const outlines = template.picture.shapes.filter(isLine).filter(({ line }) => line === 'visible').map(({ path }) => drawn(path.map((piece) => piece.kind === 'line'
    ? { kind: 'line' as const, from: small(piece.from), to: small(piece.to) } : { ...piece, centre: small(piece.centre), radius: piece.radius * by }), 'thin'));
  return [...(all.length > 1 ? [filled(frame(windowOf(tiling, tile)), 'foam')] : []), ...all.map((window) => drawn(frame(window), 'thin')), ...outlines];
}
