import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { A4, type Drawing, type Paper } from './drawing.ts';
import { pagesOf } from './flow.ts';
import { cautionsSection, estimatesSection, figuresSection, filesSection, findingsSection, orderSection, stationSection, WIDTH, type Checksum } from './jobSheetSections.ts';
import type { Made } from '../making/made.ts';
import { mouldSection } from './mouldPaper.ts';
import { footMarks, overFoot, writtenRoom } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { printSection } from './printPaper.ts';
import { planDrawing } from './planDrawing.ts';
import { sideDrawing } from './sideDrawing.ts';
import { bandsOf, spreadSection } from './spreadSection.ts';
import { targetsSection } from './targetPaper.ts';

const A4_LANDSCAPE: Paper = { width: 297, height: 210 };
const SIDE: Mm = 12, TOP: Mm = 12;

/**
 * The paper that walks with the shoes through the workshop: drawings in scale, order and measures, every figure, the
 * stations, the findings, the estimates, the cautions and the files. Same design and files, same bytes.
 * @param files all other files of the job, by name with their checksums
 * @param made all that the job orders besides the soles
 */
export function jobSheetPdf(design: Design, files: readonly Checksum[], made: Made): Uint8Array {
  const { reference, date } = design.fitting.job;
  return pdfBytes(jobSheetPages(design, files, made), `Job sheet ${reference}`, date);
}

function jobSheetPages(design: Design, files: readonly Checksum[], made: Made): Drawing[] {
  const blocks = [
    ...findingsSection(design), ...orderSection(design), ...spreadSection(design), ...figuresSection(design), ...stationSection(design),
    ...mouldSection(made.moulds, design.fitting.making), ...printSection(made.prints, design.fitting.making), ...targetsSection(design.fitting), ...estimatesSection(design), ...cautionsSection(design), ...filesSection(files, design.fitting.making),
  ];
  const written = pagesOf(blocks, writtenRoom(design, { left: SIDE, top: TOP, width: WIDTH })), of = written.length + 2;
  const drawings = [sideDrawing(design, overFoot(design, A4_LANDSCAPE), { n: 1, of }, bandsOf(design)), planDrawing(design, overFoot(design, A4), { n: 2, of })];
  const pages = [
    { ...drawings[0]!, paper: A4_LANDSCAPE }, { ...drawings[1]!, paper: A4 },
    ...written.map((marks): Drawing => ({ paper: A4, title: 'Job sheet', marks })),
  ];
  return pages.map((page, i) => ({ ...page, marks: [...page.marks, ...footMarks(design, page.paper, { n: i + 1, of })] }));
}
