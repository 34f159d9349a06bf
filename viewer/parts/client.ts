import type { Shown } from '../desk/protocol.ts';
import type { LengthUnit } from '../keep/lengths.ts';
import { besideOrdinary, mindWords, ownRolling, ownSoles, sentence, type Seen } from './clientWords.ts';
import { button, el } from './dom.ts';
import type { StrideView } from './rolling/strideView.ts';

/** What a client is shown: the own soles turning, how high, how heavy, beside an ordinary one, how they roll, and what to mind. No name, no jargon. */
export function clientView({ shoes, findings, walking }: Shown, lengths: LengthUnit): void {
  const before = document.activeElement, still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const stage = el('div', { class: 'stage' }), walked = el('div', { class: 'walked', hidden: true }), line = el('p', { class: 'line', role: 'status' });
  const mind = mindWords(findings), mine = ownSoles(shoes, lengths), compared = besideOrdinary(shoes, lengths), rolling = walking && ownRolling(walking);
  let seen = mine, turning = !still, strides: StrideView | undefined;
  const manner = { name: (): string => `${seen.name} ${HOW}`, undrawn: 'This screen cannot show the picture.', filled: true };
  const solid = import('./solid/solidView.ts').then(({ solidView }) => solidView(stage, manner));

  const pressed = (now: HTMLButtonElement, words: string): void => {
    for (const one of [own, beside, roll]) one.setAttribute('aria-pressed', String(one === now));
    line.textContent = words;
    walked.hidden = now !== roll;
    stage.classList.toggle('away', now === roll);
    strides?.dispose();
    strides = undefined;
    tellMotion();
  };
  const show = (next: Seen): void => {
    seen = next;
    pressed(next === mine ? own : beside, next.line);
    void solid.then((view) => { view.show(next.shoes, 'fine'); view.allRound(); view.tag(next.tags); view.turn(turning); });
  };
  const showRolling = async (): Promise<void> => {
    if (!walking || !rolling) return;
    pressed(roll, rolling.line);
    void solid.then((view) => view.turn(false));
    const { strideView } = await import('./rolling/strideView.ts');
    if (walked.hidden || strides) return;
    strides = strideView(walked, walking, rolling.lanes);
    strides.walk(turning);
  };
  const go = (on: boolean): void => {
    turning = on;
    tellMotion();
    if (!walked.hidden) strides?.walk(on);
    else void solid.then((view) => view.turn(on));
  };
  const tellMotion = (): void => { motion.textContent = turning ? 'Hold still' : walked.hidden ? 'Turn' : 'Walk'; };
  const once = (): void => { if (walked.hidden) void solid.then((view) => view.turnOnce()); else strides?.stepOn(); };
  const own = button('Your soles', () => show(mine)), beside = button('Beside an ordinary sole', () => { if (compared) show(compared); }, { hidden: compared === undefined }), roll = button('How they roll', () => void showRolling(), { hidden: rolling === undefined });
  const motion = button('Turn', () => { if (still) once(); else go(!turning); });
  // Whoever takes hold of the picture wants to look at it from there.
  for (const picture of [stage, walked]) picture.addEventListener('pointerdown', () => { if (turning) go(false); });

  const dialog = el('dialog', { class: mind.length > 4 ? 'client much' : 'client', 'aria-labelledby': 'client-title' },
    el('h2', { id: 'client-title' }, 'Your soles'), button('Close', () => dialog.close(), { class: 'close' }),
    el('div', { class: 'said' }, ...shoes.map((shoe) => el('p', {}, sentence(shoe, lengths)))),
    el('div', { class: 'seen' }, el('div', { class: 'shown' }, stage, walked), line, el('div', { class: 'choose' }, own, beside, roll, motion)),
    el('ul', { class: 'mind' }, ...mind.map((text) => el('li', {}, text))));
  dialog.addEventListener('close', () => {
    sized.disconnect();
    strides?.dispose();
    void solid.then((view) => view.dispose());
    dialog.remove();
    if (before instanceof HTMLElement) before.focus();
  });
  document.body.append(dialog);
  dialog.showModal();
  own.focus({ preventScroll: true });
  fillScreen(dialog);
  // A frame later, when the picture has taken its new size.
  const sized = new ResizeObserver(() => requestAnimationFrame(() => void solid.then((view) => view.allRound())));
  sized.observe(stage);
  show(mine);
}

const HOW = 'Drag the picture or press the arrow keys to turn it; plus and minus bring it nearer or farther.';

/** The page asks for the whole screen, for a dialog is not given it. Leaving one leaves the other: with one press of Escape the client is back. */
function fillScreen(dialog: HTMLDialogElement): void {
  const page = document.documentElement, leave = (): void => { if (document.fullscreenElement) void document.exitFullscreen(); };
  const left = (): void => { if (!document.fullscreenElement) dialog.close(); };
  document.addEventListener('fullscreenchange', left);
  dialog.addEventListener('close', () => { document.removeEventListener('fullscreenchange', left); leave(); });
  // Where it is refused the view fills the window. Where it comes late, the view may be closed by then.
  void page.requestFullscreen?.().then(() => { if (!dialog.open) leave(); }, () => undefined);
}
