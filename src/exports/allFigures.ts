import type { Design } from '../checks/design.ts';
import type { Mm } from '../geometry/units.ts';
import type { Made } from '../making/made.ts';
import { A4, type Box, type Drawing, type Paper } from './drawing.ts';
import { cautionsSection, estimatesSection, figuresSection, filesSection, findingsSection, orderSection, stationSection, WIDTH, type Checksum } from './figureSections.ts';
import { columnsOf, heading, shrunk, type Block } from './flow.ts';
import { mouldSection } from './mouldPaper.ts';
import { footMarks, overFoot, writtenRoom } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { planDrawing } from './planDrawing.ts';
import { printSection } from './printPaper.ts';
import { spreadSection } from './spreadSection.ts';
import { standBlocks } from './standPicture.ts';
import { targetsSection } from './targetPaper.ts';

/** Lying down. Source: ISO 216. */
const A4_DOWN: Paper = { width: 297, height: 210 };
const SIDE: Mm = 10, TOP: Mm = 9, BETWEEN: Mm = 6;
const COLUMN: Mm = (A4_DOWN.width - 2 * SIDE - BETWEEN) / 2;

/**
 * Everything behind the job sheet: the soles from above in scale, findings in full, order and measures, which measure decides
 * what, every figure, how each rocker stands, the stations, estimates, all cautions, the files. Same design and files, same bytes.
 * @param files all other files of the job, by name with their checksums
 * @param made all that the job orders besides the soles
 */
export function allFiguresPdf(design: Design, files: readonly Checksum[], made: Made): Uint8Array {
  const { reference, date } = design.fitting.job;
  return pdfBytes(allFiguresPages(design, files, made), `All figures ${reference}`, date);
}

function allFiguresPages(design: Design, files: readonly Checksum[], made: Made): Drawing[] {
  const written = columnsOf(blocksOf(design, files, made), columnsIn(design)), of = written.length + 1;
  const plan = { ...planDrawing(design, overFoot(design, A4), { n: 1, of }), paper: A4 };
  const pages = [plan, ...written.map((marks): Drawing => ({ paper: A4_DOWN, title: 'All figures', marks }))];
  return pages.map((page, i) => ({ ...page, marks: [...page.marks, ...footMarks(design, page.paper, { n: i + 1, of })] }));
}

const columnsIn = (design: Design): Box[] => [0, 1].map((i) => writtenRoom(design, { left: SIDE + i * (COLUMN + BETWEEN), top: TOP, width: COLUMN }, A4_DOWN));

const blocksOf = (design: Design, files: readonly Checksum[], made: Made): Block[] => [
  ...small([...findingsSection(design), ...orderSection(design), ...spreadSection(design), ...figuresSection(design)]), ...standingSection(design),
  ...small([
    ...stationSection(design), ...mouldSection(made.moulds, design.fitting.making), ...printSection(made.prints, design.fitting.making), ...targetsSection(design.fitting),
    ...estimatesSection(design), ...cautionsSection(design), ...filesSection(files, design.fitting.making),
  ]),
];

const small = (blocks: readonly Block[]): Block[] => blocks.map((block) => shrunk(block, COLUMN / WIDTH));

/** How each rocker stands, drawn. */
const standingSection = ({ shoes, fitting }: Design): Block[] => [
  ...small([heading('Standing')]), ...shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? standBlocks(shoe, fitting, { width: COLUMN, size: LETTERS_SMALL }) : [])),
];
const LETTERS_SMALL: Mm = 2.6;
