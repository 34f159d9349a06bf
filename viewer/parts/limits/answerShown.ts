import type { Blame } from '../../../src/targets/blame.ts';
import type { Answer, Solution } from '../../../src/targets/seek.ts';
import type { TradeOff } from '../../../src/targets/tradeOff.ts';
import { blameSaid, FIGURE_HEADS, figureRows, HELD_UP, JUST_KEPT, LIMIT_HEADS, limitRows, lossSaid, VALUE_HEADS, valueRows, worksSaid } from '../../../src/targets/words.ts';
import { lengthWords, type LengthUnit } from '../../keep/lengths.ts';
import { button, el } from '../dom.ts';
import { curvePicture, firstDot, type CurvePicture } from './curvePicture.ts';
import { rowsTable } from './rowsTable.ts';
import { takeButton } from './takeButton.ts';

/** What was found for one shoe so far, and the dot that is looked at. */
export interface Found { readonly answer: Answer; readonly curve?: TradeOff; readonly dot?: number }

export interface AnswerMoves {
  /** Takes an answer's values, by the name it has on the page. */
  readonly take: (name: string, solution: Solution) => void;
  /** Puts limits that work in place of those that cannot be kept, and seeks again. */
  readonly loosen: (blame: Blame) => void;
  readonly choose: (dot: number) => void;
}

export interface AnswerShown {
  readonly box: HTMLElement;
  /** The curve comes later than the answer; what is focused stays so. */
  readonly add: (curve: TradeOff, dot?: number) => void;
  /** What stands on the sheet, and whether more can be taken. */
  readonly show: (taken: string | undefined, open: boolean) => void;
}

/** The answer's own name; a dot of the curve has its number. */
const ANSWER = 'answer';

/** What the limits of one shoe come to: what to change and what is lost, or which limit is to blame; and what height buys. */
export function answerShown(answer: Answer, lengths: LengthUnit, moves: AnswerMoves): AnswerShown {
  const say = (mm: number): string => lengthWords(mm, lengths), { side } = answer;
  const take = answer.ok ? takeButton('Take these values', `${side} shoe`, () => moves.take(ANSWER, answer.best)) : undefined;
  const works = answer.ok ? [] : answer.blame.map((one) => button(`Try ${worksSaid(one, say)}`, () => moves.loosen(one)));
  const told = answer.ok
    ? [el('p', { class: 'loss' }, lossSaid(answer.best.loss, say)), rowsTable(`what to change, ${side} shoe`, VALUE_HEADS, valueRows(answer.best, say)), el('div', { class: 'tools' }, take!.button),
      rowsTable(`limits, ${side} shoe`, LIMIT_HEADS, limitRows(answer, answer.best, say), (row) => row.at(-1) === JUST_KEPT),
      el('details', {}, el('summary', {}, 'All figures, as ordered and within the limits'), rowsTable(`figures within the limits, ${side} shoe`, FIGURE_HEADS, figureRows(answer, answer.best, say)))]
    : [el('p', { class: 'loss' }, 'No rocker keeps to all limits.'), ...blameSaid(answer.blame, say).map((line, i) => el('div', { class: 'blame' }, el('p', {}, line), works[i]))];
  const box = el('div', { class: 'answer' }, el('div', { class: 'told' }, ...told, answer.heldUp && el('p', {}, HELD_UP)));
  let picture: CurvePicture | undefined;
  return {
    box,
    add: (curve, dot) => {
      const { points } = curve;
      if (points.length === 0) return;
      picture = curvePicture({ answer, curve }, lengths, say, dot ?? firstDot(curve), { choose: moves.choose, take: (at) => moves.take(String(at), points[at]!.best) });
      box.append(picture.box);
    },
    show: (taken, open) => {
      take?.show(taken === ANSWER, open);
      for (const one of works) one.disabled = !open;
      picture?.show(taken === undefined || taken === ANSWER ? undefined : Number(taken), open);
    },
  };
}
