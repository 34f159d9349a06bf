import type { Shown } from '../desk/protocol.ts';
import type { LengthUnit } from '../keep/lengths.ts';
import { besideOrdinary, mindWords, ownSoles, sentence, type Seen } from './clientWords.ts';
import { button, el } from './dom.ts';

/** What a client is shown: the own soles turning, how high, how heavy, beside an ordinary one, and what to mind. No name, no jargon. */
export function clientView({ shoes, findings }: Shown, lengths: LengthUnit): void {
  const before = document.activeElement, still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const stage = el('div', { class: 'stage' }), line = el('p', { class: 'line', role: 'status' });
  const mind = mindWords(findings), mine = ownSoles(shoes, lengths), compared = besideOrdinary(shoes, lengths);
  let seen = mine, turning = !still;
  const manner = { name: (): string => `${seen.name} ${HOW}`, undrawn: 'This screen cannot show the picture.', filled: true };
  const solid = import('./solid/solidView.ts').then(({ solidView }) => solidView(stage, manner));

  const show = (next: Seen): void => {
    seen = next;
    own.setAttribute('aria-pressed', String(next === mine));
    beside.setAttribute('aria-pressed', String(next === compared));
    line.textContent = next.line;
    void solid.then((view) => { view.show(next.shoes, 'fine'); view.allRound(); view.tag(next.tags); view.turn(turning); });
  };
  const go = (on: boolean): void => {
    turning = on;
    motion.textContent = on ? 'Hold still' : 'Turn';
    void solid.then((view) => view.turn(on));
  };
  const own = button('Your soles', () => show(mine)), beside = button('Beside an ordinary sole', () => { if (compared) show(compared); }, { hidden: compared === undefined });
  const motion = button(still ? 'Turn' : 'Hold still', () => { if (still) void solid.then((view) => view.turnOnce()); else go(!turning); });
  // Whoever takes hold of the picture wants to look at it from there.
  stage.addEventListener('pointerdown', () => { if (turning) go(false); });

  const dialog = el('dialog', { class: mind.length > 4 ? 'client much' : 'client', 'aria-labelledby': 'client-title' },
    el('h2', { id: 'client-title' }, 'Your soles'), button('Close', () => dialog.close(), { class: 'close' }),
    el('div', { class: 'said' }, ...shoes.map((shoe) => el('p', {}, sentence(shoe, lengths)))),
    el('div', { class: 'seen' }, stage, line, el('div', { class: 'choose' }, own, beside, motion)),
    el('ul', { class: 'mind' }, ...mind.map((text) => el('li', {}, text))));
  dialog.addEventListener('close', () => {
    sized.disconnect();
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
