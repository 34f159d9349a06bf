import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { stroke, words, type Drawing, type Mark, type Paper } from './drawing.ts';
import { pagesOf, type Block } from './flow.ts';
import { footHeight, footMarks } from './pageFoot.ts';
import { WIDTH } from './jobSheetSections.ts';

const A4: Paper = { width: 210, height: 297 };
const LEFT: Mm = 12, TOP: Mm = 17;

/** Written pages on upright A4, each with the foot of every paper of the job and with two lines that prove the print. */
export function textPages(design: Design, title: string, blocks: readonly Block[]): Drawing[] {
  const written = pagesOf(blocks, { left: LEFT, right: LEFT + WIDTH, top: TOP, bottom: A4.height - footHeight(design, A4) });
  return written.map((marks, i) => ({ paper: A4, title, marks: [...checkBars(), ...marks, ...footMarks(design, A4, { n: i + 1, of: written.length })] }));
}

const CHECK: Mm = 100, END: Mm = 1.5, ALONG: Mm = 9, UP: Mm = 6;

/** In the upper and the left margin. */
function checkBars(): Mark[] {
  const ends: readonly (readonly [readonly [Mm, Mm], readonly [Mm, Mm]])[] = [
    [[LEFT, ALONG], [LEFT + CHECK, ALONG]], [[UP, TOP], [UP, TOP + CHECK]],
    ...[LEFT, LEFT + CHECK].map((x) => [[x, ALONG - END], [x, ALONG + END]] as const), ...[TOP, TOP + CHECK].map((y) => [[UP - END, y], [UP + END, y]] as const),
  ];
  return [...ends.map(([from, to]) => stroke(from, to, 'thin', 'ink')), words(`${CHECK} mm on paper, as the line on the left: else the print is not to scale`, [LEFT + CHECK + 4, ALONG + 1], { size: 2.6 })];
}
