import type { Design } from '../checks/design.ts';
import type { Mm } from '../geometry/units.ts';
import { A4, LETTERS, stroke, words, type Box, type Mark, type Paper } from './drawing.ts';
import { wrapped } from './letters.ts';
import { stopsTaken, type SheetNumber } from './sheetFrame.ts';

/** The foot of every page of every paper. */

const SIDE: Mm = 12;

/** The sentence under every page. */
export const LIMITS = 'This sheet computes shape, not therapy; the prescriber decides.';

/** Height of a line of the foot, of the foot of a page without stops, and how much of it a drawing's own margin does not cover. */
const LINE: Mm = 4.4, FOOT: Mm = 15, BELOW_FRAME: Mm = 7;

/** What the foot of a page takes. */
const footHeight = (design: Design, paper: Paper): Mm => footLines(design, paper).length * LINE + FOOT;

/** What of a paper is left for a drawing with a margin of its own. */
export const overFoot = (design: Design, paper: Paper): Paper => ({ ...paper, height: paper.height - footLines(design, paper).length * LINE - BELOW_FRAME });

/** The room that is left for writing on a page. */
export const writtenRoom = (design: Design, { left, top, width }: { readonly left: Mm; readonly top: Mm; readonly width: Mm }, paper = A4): Box =>
  ({ left, right: left + width, top, bottom: paper.height - footHeight(design, paper) });

/** Every stop that somebody took on his own name. */
const footLines = (design: Design, { width }: Paper): string[] =>
  stopsTaken(design).flatMap((stop) => wrapped(stop, width - 2 * SIDE, { size: LETTERS.label, bold: true }));

/** The foot of a page: job, number, limits, and every stop taken. */
export function footMarks(design: Design, paper: Paper, { n, of }: SheetNumber): Mark[] {
  const { reference, date } = design.fitting.job, stops = footLines(design, paper), last = paper.height - 5.5, right = paper.width - SIDE;
  const line = (i: number): Mm => last - (stops.length + 1 - i) * LINE, top = line(0) - LINE + 0.8;
  return [
    stroke([SIDE, top], [right, top], 'thin', 'ink'),
    ...stops.map((text, i) => words(text, [SIDE, line(i)], { bold: true, ink: 'governs' })),
    words(`${reference}   ${date}`, [SIDE, line(stops.length)], { bold: true }),
    words(`sheet ${n} of ${of}`, [right, line(stops.length)], { anchor: 'end', bold: true }),
    words(LIMITS, [SIDE, last]),
  ];
}
