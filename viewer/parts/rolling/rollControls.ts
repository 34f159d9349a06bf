import { rounded } from '../../../src/checks/say.ts';
import { MOMENTS, phaseAt, type Phase } from '../../../src/walk/phases.ts';
import { button, el } from '../dom.ts';

/** What can be shown or left away. */
export const SHOWN = ['ordinary shoe', 'paths', 'push'] as const;
export type ShownName = (typeof SHOWN)[number];

export interface RollMoves {
  readonly play: (on: boolean) => void;
  readonly slow: (on: boolean) => void;
  readonly goTo: (share: number) => void;
  readonly shows: (name: ShownName, on: boolean) => void;
}

export interface RollControls {
  readonly box: HTMLElement;
  readonly at: (share: number) => void;
  readonly playing: (on: boolean) => void;
  /** Where both shoes bend there is no ordinary one to compare with. */
  readonly comparing: (can: boolean) => void;
}

/** "37 % of stance, mid-stance". */
export const momentWords = (share: number): string => `${rounded(100 * share, 0)} % of stance, ${phaseAt(share)}`;

/** Runs, holds and scrubs through stance; a button for each phase. */
export function rollControls(moves: RollMoves): RollControls {
  let on = false, phase: Phase | undefined;
  const play = button('Play', () => moves.play(!on), { class: 'play' });
  const slider = el('input', { type: 'range', min: 0, max: 100, step: 1, value: 0, 'aria-label': 'share of stance, in percent', oninput: () => moves.goTo(Number(slider.value) / 100) });
  const said = el('output', {}), steps = MOMENTS.map(([name, share]) => ({ name, press: button(name, () => moves.goTo(share)) }));
  const ticks = SHOWN.map((name) => tick(name, true, (is) => moves.shows(name, is)));
  const box = el('div', { class: 'roll-controls' },
    el('div', { class: 'tools' }, play, tick('slowly', true, moves.slow), ...ticks),
    el('div', { class: 'scrub' }, el('div', { class: 'rail' }, slider, el('div', { class: 'marks', 'aria-hidden': 'true' }, ...MOMENTS.map(([, share]) => el('i', { style: `left: ${100 * share}%` })))), said),
    el('div', { class: 'phases', role: 'group', 'aria-label': 'phases of stance' }, ...steps.map(({ press }) => press)));
  return {
    box,
    at: (share) => {
      const percent = rounded(100 * share, 0), words = momentWords(share);
      if (said.textContent === words) return;
      slider.value = percent;
      slider.setAttribute('aria-valuetext', words);
      said.textContent = words;
      const now = phaseAt(share);
      if (now === phase) return;
      phase = now;
      for (const { name, press } of steps) if (name === now) press.setAttribute('aria-current', 'step'); else press.removeAttribute('aria-current');
    },
    playing: (is) => { on = is; play.textContent = is ? 'Hold' : 'Play'; },
    comparing: (can) => { ticks[0]!.hidden = !can; },
  };
}

function tick(words: string, checked: boolean, change: (is: boolean) => void): HTMLLabelElement {
  const box = el('input', { type: 'checkbox', checked, onchange: () => change(box.checked) });
  return el('label', {}, box, words);
}
