import type { Design } from '../checks/design.ts';
import type { ShoeBlock } from '../making/made.ts';
import type { Mm } from '../geometry/units.ts';
import { blockDrawing } from './blockDrawing.ts';
import { blockText } from './blockText.ts';
import { A4, type Drawing, type Mark } from './drawing.ts';
import { pagesOf } from './flow.ts';
import { footMarks, overFoot, writtenRoom } from './pageFoot.ts';
import { WIDTH } from './textPaper.ts';
import { pdfBytes } from './pdf.ts';

const SIDE: Mm = 12, TOP: Mm = 12;

/** The set-up sheet of the router: for each shoe its block drawn in scale, and what is to be done in words. Same design, same bytes. */
export function blockPdf(design: Design, blocks: readonly ShoeBlock[]): Uint8Array {
  const { reference, date } = design.fitting.job;
  const room = writtenRoom(design, { left: SIDE, top: TOP, width: WIDTH });
  const sheets = blocks.map((shoe) => ({ shoe, written: pagesOf(blockText(design, shoe, WIDTH), room) })), of = sheets.reduce((sum, { written }) => sum + 1 + written.length, 0);
  const title = `${reference}: set-up of the router`, pages: Drawing[] = [];
  const lay = (marks: readonly Mark[]): void => { pages.push({ paper: A4, title, marks: [...marks, ...footMarks(design, A4, { n: pages.length + 1, of })] }); };
  for (const { shoe, written } of sheets) {
    lay(blockDrawing(design, shoe, overFoot(design, A4), { n: pages.length + 1, of }).marks);
    written.forEach(lay);
  }
  return pdfBytes(pages, title, date);
}
