import type { Mm } from '../../../src/geometry/units.ts';
import { STANCE_PART } from '../../../src/walk/phases.ts';
import { stridesAt } from '../../../src/walk/step.ts';
import type { WalkShown } from '../../desk/protocol.ts';
import { el, svgEl } from '../dom.ts';
import { SLOWLY, STANCE_TIME } from './clock.ts';
import { legDrawn } from './legDrawn.ts';
import { floorMarks } from './shoePicture.ts';

/** The pair walking past, slowly. */
export interface StrideView { readonly walk: (on: boolean) => void; readonly stepOn: () => void; readonly dispose: () => void }

/** A picture of it: with which shoes, and what is written on it. */
export interface Lane { readonly which: 'own' | 'ordinary'; readonly words: string }

/** Seen before and behind the walker, above the floor and below, mm; two pictures make do with less. */
const SIDE: Mm = 700, UNDER: Mm = 40, HIGH: Mm = 1080;
const MARK: Mm = 250;
/** A cycle of two steps, s. */
const CYCLE = (STANCE_TIME / STANCE_PART) * SLOWLY;
/** Where it is begun: the left foot stands, the right one passes. */
const BEGINS = 0.3, STEP_ON = 0.1, AWAY = 0.1;

export function strideView(host: HTMLElement, shown: WalkShown, lanes: readonly Lane[]): StrideView {
  const drawn = lanes.map((lane) => laneDrawn(shown, lane));
  let cycle = BEGINS, walking = 0, then = 0;
  host.replaceChildren(...drawn.map(({ box }) => box));
  const lay = (): void => { for (const lane of drawn) lane.lay(cycle); host.dataset.cycle = cycle.toFixed(3); };
  const next = (time: number): void => {
    cycle += Math.min(AWAY, Math.max(0, time - then) / 1000) / CYCLE;
    then = time;
    lay();
    walking = requestAnimationFrame(next);
  };
  lay();
  return {
    walk: (on) => {
      cancelAnimationFrame(walking);
      if (!on) return;
      then = performance.now();
      walking = requestAnimationFrame(next);
    },
    stepOn: () => { cycle += STEP_ON; lay(); },
    dispose: () => cancelAnimationFrame(walking),
  };
}

function laneDrawn({ walking, shoes }: WalkShown, { which, words }: Lane): { readonly box: HTMLElement; readonly lay: (cycle: number) => void } {
  const svg = svgEl('svg', { viewBox: `${-SIDE} ${-HIGH} ${2 * SIDE} ${HIGH + UNDER}`, role: 'img', 'aria-label': `${words}: two legs walk past, the right one in front.` });
  // Nothing moves to the walker: the floor does.
  const floor = svgEl('g'), pair = svgEl('g'), marks = floorMarks(-SIDE - MARK, SIDE + MARK, MARK);
  floor.append(marks);
  const legs = walking.shoes.map((walk) => legDrawn(walk, which === 'own' ? shoes.find(({ side }) => side === walk.side)?.cut : undefined, walk.side === 'left' ? 'far' : 'near'));
  pair.append(...legs.map(({ group }) => group));
  svg.append(floor, pair);
  return {
    box: el('div', { class: 'pair' }, el('p', { class: 'tag' }, words), svg),
    lay: (cycle) => {
      const come = cycle * walking.stride;
      marks.setAttribute('transform', `translate(${(-(come % MARK)).toFixed(2)})`);
      pair.setAttribute('transform', `translate(${(-come).toFixed(2)})`);
      stridesAt(walking, cycle, which).forEach((stride, i) => legs[i]!.lay(stride));
    },
  };
}
