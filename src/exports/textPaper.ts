import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { CHECK, checkBar } from './checkBar.ts';
import { A4, words, type Drawing, type Mark } from './drawing.ts';
import { pagesOf, type Block } from './flow.ts';
import { footMarks, writtenRoom } from './pageFoot.ts';

/** What is written goes over so much of an upright page. */
export const WIDTH: Mm = 186;
const LEFT: Mm = 12, TOP: Mm = 17;

/**
 * Written pages on upright A4, each with the foot of every paper of the job and with two lines that prove the print.
 * @param after how many pages of drawings follow in the same document
 */
export function textPages(design: Design, title: string, blocks: readonly Block[], after = 0): Drawing[] {
  const written = pagesOf(blocks, writtenRoom(design, { left: LEFT, top: TOP, width: WIDTH }));
  return written.map((marks, i) => ({ paper: A4, title, marks: [...checkBars(), ...marks, ...footMarks(design, A4, { n: i + 1, of: written.length + after })] }));
}

const ALONG: Mm = 9, UP: Mm = 6;

/** In the upper and the left margin. */
function checkBars(): Mark[] {
  return [...checkBar([LEFT, ALONG], 'level'), ...checkBar([UP, TOP], 'upright'), words(`${CHECK} mm on paper, as the line on the left: else the print is not to scale`, [LEFT + CHECK + 4, ALONG + 1], { size: 2.6 })];
}
