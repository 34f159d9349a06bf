import type { Mm } from '../geometry/units.ts';
import type { Design } from '../checks/design.ts';
import { jobCardFor, type DatedStep, type JobCard } from '../making/card/card.ts';
import type { Made } from '../making/made.ts';
import { CHECK, checkBar } from './checkBar.ts';
import { A4, LETTERS, words, type Drawing, type Mark } from './drawing.ts';
import { pagesOf, table, type Block } from './flow.ts';
import { bigHeading, CARD_WIDTH, checkBlock, checkHead, sentence, stepBlock, writingLines } from './jobCardBlocks.ts';
import { footMarks, writtenRoom } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { shoesInWords } from './sheetFrame.ts';

const SIDE: Mm = 12, TOP: Mm = 12;

/**
 * The card that walks with both shoes from the first cut to the hand-over: steps with the numbers to hit, times with
 * clock boxes, batches, cautions where they belong, and the lists before and after. Same design, same bytes.
 */
export function jobCardPdf(design: Design, made: Made): Uint8Array {
  const { reference, date } = design.fitting.job;
  return pdfBytes(jobCardPages(design, jobCardFor(design, made)), `Job card ${reference}`, date);
}

export function jobCardPages(design: Design, card: JobCard): Drawing[] {
  const written = pagesOf(blocksOf(design, card), writtenRoom(design, { left: SIDE, top: TOP, width: CARD_WIDTH }));
  return written.map((marks, i): Drawing => ({
    paper: A4, title: 'Job card', marks: [...marks, ...(i === 0 ? upright() : []), ...footMarks(design, A4, { n: i + 1, of: written.length })],
  }));
}

function blocksOf(design: Design, { way, before, phases, after }: JobCard): Block[] {
  const steps = phases.flatMap((phase) => phase.steps);
  return [
    titleBlock(design), sentence(`Made: ${way}. ${steps.length} steps, ${steps.at(-1)?.day ?? 1} days at least. Tick, sign and write the clock time; what is found goes into the boxes. L and R are the left and the right shoe; "(est.)" rests on a measure that was estimated.`),
    sentence('Times and machine settings are common practice unless a source stands under them. The data sheets of machine and material, and local codes, come first. The body may be made while the stiffener cures; the days count one after the other.'),
    bigHeading('Days'), ...daysTable(steps),
    bigHeading('Before cutting'), checkHead, ...before.map(checkBlock),
    ...phases.flatMap(({ name, steps: own }) => [bigHeading(name), ...own.map(stepBlock)]),
    bigHeading('When they are done'), checkHead, ...after.map(checkBlock),
    bigHeading('Faults found, and what was done'), writingLines(5),
  ];
}

/** Job and shoes in large letters over the level check line; the upright one runs down the margin of the same page. */
const titleBlock = (design: Design): Block => ({
  height: 34,
  marks: (left, top) => [
    words(`Job card ${design.fitting.job.reference}`, [left, top + 8], { size: 9, bold: true }), words(`${shoesInWords(design)}   ${design.fitting.job.date}`, [left, top + 16], { size: 5 }),
    ...checkBar([left, top + 26], 'level'), words(`${CHECK} mm on paper, both ways, ± 0.3: else the print is not to scale`, [left, top + 31]),
    words('maker', [left + 110, top + 25], { size: LETTERS.caption }), words(design.fitting.job.maker ?? '', [left + 110, top + 30], { bold: true }),
  ],
});

const upright = (): Mark[] => [...checkBar([SIDE - 5, TOP + 26], 'upright'), words(`${CHECK} mm`, [SIDE - 1.4, TOP + 26 + CHECK * 0.75], { size: LETTERS.caption, turned: true, anchor: 'middle' })];

/** Which work falls on which day at the earliest, with room for the date. */
function daysTable(steps: readonly DatedStep[]): Block[] {
  const days = [...new Set(steps.map(({ day }) => day))];
  return table(
    [{ title: 'Day', width: 14 }, { title: 'Steps', width: 82 }, { title: 'Over night', width: 60 }, { title: 'Date', width: CARD_WIDTH - 156 }],
    days.map((day) => {
      const own = steps.filter((one) => one.day === day), nights = own.filter(({ step }) => step.wait?.nights).map(({ step }) => step.wait?.time ?? '');
      return { cells: [{ text: String(day), bold: true }, own.map(({ number, step }) => `${number} ${step.name}`).join('; '), nights.join('; '), ''] };
    }), { size: 3.6 },
  );
}
