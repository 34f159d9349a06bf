import type { Paper } from '../../../src/exports/drawing.ts';
import { element } from '../../../src/exports/svg.ts';
import { keySaid, tradeOffSheet } from '../../../src/exports/tradeOffDrawing.ts';
import type { ShoeTargets } from '../../../src/targets/shoeTargets.ts';
import type { CurvePoint } from '../../../src/targets/tradeOff.ts';
import { lossSaid, valuesSaid, type SayLength } from '../../../src/targets/words.ts';
import { deg } from '../../../src/checks/say.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { button, el, svgEl } from '../dom.ts';
import { takeButton } from './takeButton.ts';

export interface CurvePicture {
  readonly box: HTMLElement;
  /** Which dot stands on the sheet, and whether others can be taken. */
  readonly show: (taken: number | undefined, open: boolean) => void;
}

export interface CurveMoves { readonly take: (at: number) => void; readonly choose: (at: number) => void }

/** So that letters stay readable. */
export const ON_A_PHONE = '(max-width: 600px)';
const WIDE: Paper = { width: 116, height: 78 }, NARROW: Paper = { width: 78, height: 80 };
const RING = 2.2;
const KEYS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowRight: (at) => at + 1, ArrowUp: (at) => at + 1, ArrowLeft: (at) => at - 1, ArrowDown: (at) => at - 1, Home: () => 0, End: (_, last) => last,
};

/** What a dot says of itself. */
export interface DotWords { readonly height: string; readonly reached: string; readonly values: string; readonly loss: string }
export function dotWords({ curve: { label }, answer: { estimated } }: ShoeTargets, { limit, best }: CurvePoint, say: SayLength): DotWords {
  return { height: `${label} ${say(limit)}`, reached: `toe-off ${deg(best.figures.toeOff)}${estimated.includes('toeOff') ? ' (est.)' : ''}`, values: valuesSaid(best, say), loss: lossSaid(best.loss, say) };
}

/** The dot to begin with: the highest that keeps to the limit, or the lowest. */
export const firstDot = ({ asked = Infinity, points }: ShoeTargets['curve']): number => Math.max(0, points.findLastIndex(({ limit }) => limit <= asked + 1e-9));

/** The curve as a picture whose dots are chosen by pointer or arrow keys, and taken with Enter or the button below. */
export function curvePicture(targets: ShoeTargets, lengths: LengthUnit, say: SayLength, chosen: number, moves: CurveMoves): CurvePicture {
  const { curve: { points, side }, answer } = targets, paper = window.matchMedia(ON_A_PHONE).matches ? NARROW : WIDE;
  const { drawing: { marks, title }, dots } = tradeOffSheet(targets, '', { lengths, paper, headed: false }), told = points.map((point) => dotWords(targets, point, say));
  const marked = svgEl('g', { 'aria-hidden': 'true' }), svg = svgEl('svg', { viewBox: `0 0 ${paper.width} ${paper.height}`, class: 'curve' });
  marked.innerHTML = marks.map(element).join('');
  const group = svgEl('g', { role: 'radiogroup', 'aria-label': `${title.replace(/^, /, '')}. Arrow keys choose a dot, Enter takes it.` });
  const dotsMade = dots.map(([cx, cy], i) => {
    const left = i === 0 ? 0 : (dots[i - 1]![0] + cx) / 2, right = i === dots.length - 1 ? paper.width : (cx + dots[i + 1]![0]) / 2, { height, reached, values, loss } = told[i]!;
    const dot = svgEl('g', { role: 'radio', 'aria-label': `${height}: ${reached}. ${values}. ${loss}` });
    // As wide as half way to the next, and as high as the picture: no dot has to be hit.
    dot.append(svgEl('rect', { x: left, y: 0, width: right - left, height: paper.height }), svgEl('circle', { cx, cy, r: RING }));
    dot.addEventListener('click', () => { choose(i); dot.focus({ preventScroll: true }); });
    return dot;
  });
  group.append(...dotsMade);
  svg.append(marked, group);
  let at = chosen, taken: number | undefined, open = true;
  const height = el('strong'), reached = el('span'), values = el('p'), loss = el('p');
  const lower = button('lower', () => choose(at - 1), { 'aria-label': 'a lower dot' }), higher = button('higher', () => choose(at + 1), { 'aria-label': 'a higher dot' });
  const take = takeButton('Take this rocker', `${side} shoe`, () => moves.take(at));
  function choose(next: number): void {
    if (next < 0 || next >= points.length) return;
    at = next;
    moves.choose(at);
    lay();
  }
  function lay(): void {
    const said = told[at]!;
    dotsMade.forEach((dot, i) => {
      dot.setAttribute('aria-checked', String(i === at));
      dot.setAttribute('tabindex', i === at ? '0' : '-1');
      dot.classList.toggle('taken', i === taken);
    });
    height.textContent = said.height;
    reached.textContent = `: ${said.reached}`;
    values.textContent = said.values;
    loss.textContent = said.loss;
    lower.setAttribute('aria-disabled', String(at === 0));
    higher.setAttribute('aria-disabled', String(at === points.length - 1));
    take.show(at === taken, open);
  }
  group.addEventListener('keydown', (event) => {
    const to = KEYS[event.key]?.(at, points.length - 1);
    if (event.key === 'Enter') { event.preventDefault(); if (open && at !== taken) moves.take(at); }
    if (to === undefined) return;
    event.preventDefault();
    choose(to);
    dotsMade[at]!.focus({ preventScroll: true });
  });
  lay();
  return {
    box: el('figure', { class: 'curve-box' }, svg, el('figcaption', {}, el('p', { class: 'key' }, keySaid(answer.ok)), el('p', { class: 'chosen' }, height, reached), values, loss, el('div', { class: 'tools' }, lower, higher, take.button))),
    show: (now, can) => { taken = now; open = can; lay(); },
  };
}
