import './limits.css';
import { SIDES, type Side } from '../../../src/fitting/words.ts';
import { withLoosened } from '../../../src/targets/taken.ts';
import type { TradeOff } from '../../../src/targets/tradeOff.ts';
import type { SeekTold } from '../../desk/seeking.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { sheetText, valueAt, type Sheet } from '../../keep/sheet.ts';
import { takingsOn, type Takings } from '../../keep/takings.ts';
import { el } from '../dom.ts';
import { answerShown, type AnswerShown, type Found } from './answerShown.ts';
import { ON_A_PHONE } from './curvePicture.ts';
import { firstLimitAt, hasTargets, ownLengths, withFirstLimit } from './limitsSet.ts';
import { beginSearch } from './search.ts';
import { searchTools } from './searchTools.ts';
import { shoeLimits } from './shoeLimits.ts';

/** The sheet as it stands on the bench. */
export interface OnBench {
  readonly job: string;
  readonly sheet: Sheet;
  readonly lengths: LengthUnit;
  /** It must be corrected before anything can be sought. */
  readonly faulty: boolean;
  /** How high the seats of the shoes stand, mm, where they have a shape. */
  readonly seats: Readonly<Partial<Record<Side, number>>>;
}

export interface LimitsMoves {
  /** Puts another sheet in place of this one, as one step. */
  readonly put: (sheet: Sheet, label: string) => void;
  readonly goTo: (path: string) => void;
}

export interface LimitsPart { readonly show: (bench: OnBench) => void }

const ABOUT = 'Set limits, and what may be changed to keep to them. The rocker that loses least within them is sought; nothing is changed until you take it. Whether the wearer can do with less is for the prescriber to say.';
const WHAT = { rocker: 'the best rocker', curve: 'what height buys' } as const;
const OUTDATED = 'The sheet has changed since this was sought: ask again.';
const CHANGED = 'The sheet was changed meanwhile, so the search was stopped.';

/** Working backwards: the limits that are set, the best rocker within them, what it loses, and what each height would buy. */
export function limitsPart(host: HTMLElement, moves: LimitsMoves): LimitsPart {
  let bench: OnBench | undefined, takings: Takings | undefined, stop: (() => void) | undefined;
  let found: Readonly<Partial<Record<Side, Found>>> = {}, shown: Readonly<Partial<Record<Side, AnswerShown>>> = {}, drawnIn: LengthUnit | undefined;
  const search = searchTools(begin, () => end('Cancelled; what had been found stays.')), { ask } = search, said = el('p', { class: 'waits', role: 'status' });
  const none = el('p', {}, 'No sole on this sheet rolls, so there is nothing to work back to.'), shoes = SIDES.map((side) => shoeLimits(side, moves.goTo, () => setFirst(side)));
  host.append(el('p', { class: 'about' }, ABOUT), none, search.tools, said, ...shoes.map(({ box }) => box));

  function setFirst(side: Side): void {
    const seat = bench?.seats[side];
    if (!bench || seat === undefined) return;
    moves.put(withFirstLimit(bench.sheet, side, seat), `limits set, ${side}`);
    moves.goTo(firstLimitAt(side));
  }

  function begin(): void {
    if (!bench || ask.disabled) return;
    stop?.();
    forget();
    takings = takingsOn(bench.sheet);
    stop = beginSearch(sheetText(bench.sheet), told);
    search.begun();
    said.textContent = 'Seeking.';
    lay();
  }
  function end(words: string): void {
    stop?.();
    stop = undefined;
    search.ended();
    said.textContent = words;
  }
  function told(step: SeekTold): void {
    switch (step.kind) {
      case 'going': return search.going(step.share, `${step.side} shoe, ${WHAT[step.what]}: ${step.looked} shoes tried`);
      case 'answer': found = { ...found, [step.answer.side]: { answer: step.answer } }; return draw(step.answer.side);
      case 'curve': return addCurve(step.curve);
      case 'failed': return end(`The search failed: ${step.text}`);
      case 'done': end(''); return lay();
    }
  }
  function addCurve(curve: TradeOff): void {
    const { side } = curve, own = found[side];
    if (!own) return;
    found = { ...found, [side]: { ...own, curve } };
    shown[side]?.add(curve);
    lay();
  }
  function forget(): void { found = {}; shown = {}; takings = undefined; for (const { place } of shoes) place.replaceChildren(); }
  /** Puts what was found for a shoe on the page, in the unit shown. */
  function draw(side: Side): void {
    const own = found[side], place = shoes.find((one) => one.side === side)?.place;
    if (!own || !place || !bench) return;
    const { answer, curve, dot: at } = own, made = answerShown(answer, bench.lengths, {
      choose: (dot) => { const now = found[side]; if (now) found = { ...found, [side]: { ...now, dot } }; },
      take: (name, solution) => { if (bench && takings) moves.put(takings.take(bench.sheet, side, name, solution), `values within the limits taken, ${side}`); },
      loosen: (blame) => { if (bench) { moves.put(withLoosened(bench.sheet, side, blame, ownLengths(bench.sheet)) as Sheet, `limits that work, ${side}`); begin(); } },
    });
    if (curve) made.add(curve, at);
    shown = { ...shown, [side]: made };
    drawnIn = bench.lengths;
    place.replaceChildren(made.box);
    lay();
  }
  /** Says what of the answers stands on the sheet, and whether they are still its own. */
  function lay(): void {
    if (!bench) return;
    const taken = takings?.on(bench.sheet), outdated = takings !== undefined && !taken;
    if (outdated && stop) end(CHANGED);
    for (const { side, place } of shoes) {
      shown[side]?.show(taken?.[side], !outdated);
      place.classList.toggle('outdated', outdated);
    }
    const any = Object.keys(found).length > 0;
    if (!stop && any) said.textContent = outdated ? OUTDATED : taken?.left || taken?.right ? 'Taken into the sheet; Undo brings back what was there, and another may be taken in its place.' : 'Nothing of this is on the sheet until you take it.';
  }
  window.matchMedia(ON_A_PHONE).addEventListener('change', () => SIDES.forEach(draw));
  return {
    show: (next) => {
      if (next.job !== bench?.job) { if (stop) end(''); forget(); said.textContent = ''; }
      bench = next;
      for (const one of shoes) one.show(next);
      const rolls = SIDES.filter((side) => valueAt(next.sheet, `${side}.order.kind`) === 'rocker');
      none.hidden = rolls.length > 0;
      ask.disabled = next.faulty || !rolls.some((side) => hasTargets(next.sheet, side));
      if (next.lengths !== drawnIn) SIDES.forEach(draw);
      lay();
    },
  };
}
