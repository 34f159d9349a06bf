import { capital } from '../checks/say.ts';
import { SIDES } from '../fitting/words.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { estimatesBehind, figuresOf } from '../checks/figures.ts';
import { inputOf } from '../checks/inputs.ts';
import { CHECK, checkBar } from './checkBar.ts';
import { drawn, LETTERS, polyline, roomFor, stroke, WIDER, words, type Box, type Mark, type Paper, type Words } from './drawing.ts';
import { wrapped, type Lettering } from './letters.ts';

/** Which sheet of how many. */
export interface SheetNumber { readonly n: number; readonly of: number }

const MARGIN: Mm = 8, STRIP: Mm = 17;

/** The frame, and the part of it that is left for the drawing. */
const frameBox = ({ width, height }: Paper): Box => ({ left: MARGIN, top: MARGIN, right: width - MARGIN, bottom: height - MARGIN });
export const drawingBox = (paper: Paper, design: Design): Box => ({ ...frameBox(paper), bottom: frameBox(paper).bottom - STRIP - legendHeight(design, paper) });

const LEGEND: Lettering = { size: 2.7 }, LEGEND_LINE: Mm = 3.7;

/** Says of the mark "est." which measures were estimated; no line where none was. */
function legend(design: Design, paper: Paper): readonly string[] {
  const known = legends.get(design), lines = known?.width === paper.width ? known.lines : writeLegend(design, paper);
  legends.set(design, { width: paper.width, lines });
  return lines;
}

/** The box of a drawing, its frame and its scale all ask for the same lines. */
const legends = new WeakMap<Design, { readonly width: Mm; readonly lines: readonly string[] }>();

function writeLegend({ fitting, shoes }: Design, paper: Paper): string[] {
  const estimates = shoes.flatMap((shoe): string[] => {
    const labels = estimatesBehind(shoe, figuresOf(shoe, fitting).map(({ key }) => key)).map((field) => inputOf(field).label);
    return labels.length === 0 ? [] : [`${shoe.side}: ${labels.join(', ')}`];
  });
  const { left, right } = frameBox(paper);
  return estimates.length === 0 ? [] : wrapped(`Estimated or left to a default, ${estimates.join('; ')}. A number that rests on one is marked "est."`, (right - left - 3) / WIDER, LEGEND);
}

function legendHeight(design: Design, paper: Paper): Mm {
  const lines = legend(design, paper).length;
  return lines === 0 ? 0 : lines * LEGEND_LINE + 1;
}

const legendMarks = (design: Design, paper: Paper, { left, top }: Box): Mark[] =>
  legend(design, paper).map((line, i) => words(line, [left + 1.5, top + 3 + i * LEGEND_LINE], LEGEND));

const rectangle = ({ left, top, right, bottom }: Box): readonly Point[] => [[left, top], [right, top], [right, bottom], [left, bottom]];

interface Field { readonly caption: string; readonly value: string; readonly share: number }

/** Frame and title block. Fields after ISO 7200: what it is of, its title, scale, date, units, sheet, who made and who ordered it. */
export function sheetFrame(design: Design, paper: Paper, title: string, scale: number, sheet: SheetNumber): Mark[] {
  const { job } = design.fitting, box = frameBox(paper), strip = { ...box, top: box.bottom - STRIP };
  const above = { ...strip, top: drawingBox(paper, design).bottom, bottom: strip.top };
  const legendFrame = above.top < above.bottom ? [drawn(polyline(rectangle(above), true), 'thin'), ...legendMarks(design, paper, above)] : [];
  const upper: Field[] = [
    { caption: 'job', value: job.reference, share: 0.2 }, { caption: 'part', value: title, share: 0.42 },
    { caption: 'scale', value: `1 : ${scale}`, share: 0.1 }, { caption: 'lengths in', value: 'mm', share: 0.08 },
    { caption: 'date', value: job.date, share: 0.11 }, { caption: 'sheet', value: `${sheet.n} of ${sheet.of}`, share: 0.09 },
  ];
  const lower: Field[] = [
    { caption: 'maker', value: job.maker ?? '', share: 0.38 },
    { caption: 'prescribed by', value: [job.prescriber, job.prescribed].filter(Boolean).join(', '), share: 0.62 },
  ];
  return [
    drawn(polyline(rectangle(box), true), 'visible'), ...legendFrame,
    drawn(polyline(rectangle(strip), true), 'visible'),
    stroke([strip.left, strip.top + STRIP / 2], [strip.right, strip.top + STRIP / 2], 'thin', 'ink'),
    ...row(upper, strip, strip.top), ...row(lower, strip, strip.top + STRIP / 2),
  ];
}

/** One row of the title block. A value too long for its field is written smaller, never cut. */
function row(fields: readonly Field[], { left, right }: Box, top: Mm): Mark[] {
  const width = right - left;
  let x = left;
  return fields.flatMap(({ caption, value, share }, i): Mark[] => {
    const from = x, room = width * share - 3;
    x += width * share;
    const size = Math.min(LETTERS.label, (LETTERS.label * room) / (roomFor(value, { size: LETTERS.label, bold: true }) || 1));
    return [
      ...(i === 0 ? [] : [stroke([from, top], [from, top + STRIP / 2], 'thin', 'ink')]),
      words(caption, [from + 1.5, top + 2.9], { size: LETTERS.caption, ink: 'pencil' }),
      words(value, [from + 1.5, top + STRIP / 2 - 1.7], { size, bold: true }),
    ];
  });
}

/** Stops that were taken on somebody's own name, with what was stopped; they stand on every sheet. */
export function stopsTaken({ findings }: Design): string[] {
  return findings.flatMap(({ severity, side, where, text, overriddenBy }) =>
    severity === 'stop' && overriddenBy ? [`STOP taken by ${overriddenBy.by}: ${overriddenBy.reason} (${[side, where].filter(Boolean).join(', ')}: ${firstSentence(text)})`] : []);
}
const firstSentence = (text: string): string => text.split(/(?<=[.;:]) /)[0]!.replace(/[.;:]$/, '');

/** The same in the upper right corner of a drawing. */
export function stopMarks(design: Design, { left, right, top }: Box): Words[] {
  const style = { size: LETTERS.label, bold: true }, room = right - left - CHECK - 16;
  return stopsTaken(design).flatMap((text) => wrapped(text, room, style)).map((line, i) =>
    words(line, [right - 4, top + 6.5 + 4.6 * i], { ...style, anchor: 'end', ink: 'governs' }));
}

/** "Left and right shoes", "Right shoe". */
export function shoesInWords({ shoes }: Design): string {
  const sides = SIDES.filter((side) => shoes.some((shoe) => shoe.side === side)).join(' and ');
  return `${capital(sides)} ${shoes.length > 1 ? 'shoes' : 'shoe'}`;
}

/** Two lines that are 100 mm long on paper, along and across: measured before anything is taken from the sheet. */
export function checkLines([x, y]: Point): Mark[] {
  return [
    ...checkBar([x, y], 'level'), ...checkBar([x, y], 'upright'),
    words(`${CHECK} mm on paper, both ways: else the print is not to scale`, [x + 3, y + 4]),
    words(`${CHECK} mm`, [x + 4, y + CHECK / 2], { turned: true, anchor: 'middle' }),
  ];
}
