import type { Fitting } from '../fitting/fitting.ts';
import { targetsOn } from '../targets/shoeTargets.ts';
import { blameSaid, FIGURE_HEADS, figureRows, HELD_UP, LIMIT_HEADS, limitRows, lossSaid, sayOn, VALUE_HEADS, valueRows, type Row } from '../targets/words.ts';
import { heading, introduction, paragraph, space, subheading, table, type Block } from './flow.ts';
import { bold, WIDTH } from './figureSections.ts';

/** What limits on the sheet come to: offered, not made. None where no shoe has any. */
export function targetsSection(fitting: Fitting): Block[] {
  const found = targetsOn(fitting), say = sayOn(fitting.units);
  if (found.length === 0) return [];
  return [
    heading('Within limits'),
    introduction('What the sheet asks of the looks, and the best rocker that keeps to it. It is an offer: what is made is the order, as the other pages have it.', WIDTH),
    ...found.flatMap(({ answer }): Block[] => [
      subheading(`${answer.side === 'left' ? 'Left' : 'Right'} shoe`),
      ...(answer.ok
        ? [paragraph(lossSaid(answer.best.loss, say), WIDTH), ...rows(VALUE_HEADS, valueRows(answer.best, say)), space(3), ...rows(LIMIT_HEADS, limitRows(answer, answer.best, say)), space(3), ...rows(FIGURE_HEADS, figureRows(answer, answer.best, say))]
        : blameSaid(answer.blame, say).map((line) => paragraph(line, WIDTH))),
      ...(answer.heldUp ? [paragraph(HELD_UP, WIDTH)] : []),
    ]),
  ];
}

function rows(heads: Row, cells: readonly Row[]): Block[] {
  const first = 66, width = (WIDTH - first) / (heads.length - 1);
  return table(heads.map((title, i) => (i === 0 ? { title, width: first } : { title, width, right: true })), cells.map(([what = '', ...others]) => ({ cells: [bold(what), ...others] })));
}
