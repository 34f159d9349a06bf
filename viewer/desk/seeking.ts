import { packsCounted } from '../../src/designWith.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { SIDES, type Side } from '../../src/fitting/words.ts';
import { seek, type Answer, type Progress, type Seeking } from '../../src/targets/seek.ts';
import { tradeOff, type TradeOff } from '../../src/targets/tradeOff.ts';

/** What is told while a sheet's limits are worked back from: how far it has come (share of all there is to do), answers as they are found. */
export type SeekTold =
  | { readonly kind: 'going'; readonly side: Side; readonly what: 'rocker' | 'curve'; readonly share: number; readonly looked: number }
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'curve'; readonly curve: TradeOff }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed'; readonly text: string };

/** The answer takes about so much of a shoe's time, and looks at about so many shoes; the curve takes the rest. */
const ANSWER = 0.2, USUAL = 150;

/** The same answers as the command's, step by step. @param text the sheet as the command reads it */
export function* seekOn(text: string): Generator<SeekTold> {
  const reading = readSheet(text);
  if (!reading.ok) return yield { kind: 'failed', text: reading.faults.map((fault) => fault.text).join(' ') };
  const fitting = packsCounted(reading.fitting), sides = SIDES.filter((side) => { const order = fitting.shoes[side]?.order; return order?.kind === 'rocker' && order.targets; });
  for (const [i, side] of sides.entries()) {
    const shareOf = (share: number): number => (i + share) / sides.length;
    const answer = yield* steps(seek(fitting, side), ({ looked }) => ({ kind: 'going', side, what: 'rocker', looked, share: shareOf((ANSWER * looked) / (looked + USUAL)) }));
    if (answer) yield { kind: 'answer', answer };
    const curve = yield* steps(tradeOff(fitting, side), ({ looked, share = 0 }) => ({ kind: 'going', side, what: 'curve', looked, share: shareOf(ANSWER + (1 - ANSWER) * share) }));
    if (curve) yield { kind: 'curve', curve };
  }
  yield { kind: 'done' };
}

function* steps<Result>(seeking: Seeking<Result>, told: (progress: Progress) => SeekTold): Generator<SeekTold, Result> {
  for (;;) {
    const { done, value } = seeking.next();
    if (done) return value;
    yield told(value);
  }
}
