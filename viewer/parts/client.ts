import type { Figure, FigureKey } from '../../src/checks/figures.ts';
import { otherSide } from '../../src/fitting/words.ts';
import { MM_PER_INCH } from '../../src/geometry/units.ts';
import type { Shown, ShoeShown } from '../desk/protocol.ts';
import type { LengthUnit } from '../keep/lengths.ts';
import { button, el } from './dom.ts';
import type { SolidView } from './solid/solidView.ts';

/** What a client is shown: the own soles turning, how high, how heavy, beside an ordinary one, and what to mind. No name, no jargon. */
export function clientView({ shoes }: Shown, lengths: LengthUnit): void {
  const before = document.activeElement, still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const stage = el('div', { class: 'stage' }), told = el('p', { class: 'beside', role: 'status' });
  const solid = import('./solid/solidView.ts').then(({ solidView }) => solidView(stage));
  const own = button('Your soles', () => show(false)), beside = button('Beside an ordinary sole', () => show(true));
  const turn = button('Turn', () => void solid.then(() => turned(stage)));
  const close = button('Back to the bench', () => dialog.close());
  const compared = besideOrdinary(shoes);
  beside.hidden = compared === undefined;
  turn.hidden = !still;
  const dialog = el('dialog', { class: 'client', 'aria-label': 'Your soles' },
    el('h2', {}, 'Your soles'), el('div', { class: 'said' }, ...shoes.map((shoe) => el('p', {}, sentence(shoe, lengths)))),
    el('div', { class: 'choose' }, own, beside, turn, close), told, stage,
    el('ul', { class: 'mind' }, ...MIND.map((text) => el('li', {}, text))));
  const show = (ordinary: boolean): void => {
    own.setAttribute('aria-pressed', String(!ordinary));
    beside.setAttribute('aria-pressed', String(ordinary));
    told.textContent = ordinary && compared ? compared.words : '';
    void solid.then((view) => look(view, ordinary && compared ? compared.shoes : shoes));
  };
  dialog.addEventListener('close', () => {
    void solid.then((view) => view.dispose());
    if (document.fullscreenElement) void document.exitFullscreen();
    dialog.remove();
    if (before instanceof HTMLElement) before.focus();
  });
  document.body.append(dialog);
  dialog.showModal();
  own.focus();
  void dialog.requestFullscreen?.().catch(() => undefined);
  // Leaving the full screen leaves the view: with one press of Escape the client is back.
  dialog.addEventListener('fullscreenchange', () => { if (!document.fullscreenElement) dialog.close(); });
  show(false);
}

function look(view: SolidView, shoes: readonly ShoeShown[]): void {
  view.show(shoes, 'fine');
  view.view('corner');
  view.turn(true);
}

/** One press turns as the arrow keys do on the picture. */
function turned(stage: HTMLElement): void {
  const canvas = stage.querySelector('canvas');
  for (let i = 0; i < 4; i++) canvas?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight' }));
}

/** The sole that rolls, and in the place of the other shoe an ordinary one of the same outline. */
function besideOrdinary(shoes: readonly ShoeShown[]): { readonly shoes: readonly ShoeShown[]; readonly words: string } | undefined {
  const own = shoes.find(({ ordinary }) => ordinary !== undefined);
  if (!own?.ordinary) return undefined;
  const { figures, side, ordinary } = own, other = otherSide(side);
  const plain: ShoeShown = { side: other, kind: 'match', figures, solids: ordinary };
  return { shoes: other === 'left' ? [plain, own] : [own, plain], words: `Your ${side} sole. Where your ${other} shoe would stand: an ordinary sole of the same outline.` };
}

const MIND = [
  'The first steps are made beside a rail, with somebody there.',
  'Stop wearing them when new pain comes, and tell us.',
  'Look at your skin after each of the first walks.',
  'Care on stairs down, slopes and wet floors. Ask before you drive.',
];

const valueOf = (shoe: ShoeShown, key: FigureKey): number | undefined => shoe.figures.find((one: Figure) => one.key === key)?.value;

function sentence(shoe: ShoeShown, lengths: LengthUnit): string {
  const side = shoe.side === 'left' ? 'Left' : 'Right', high = valueOf(shoe, 'seatHeight'), heavy = valueOf(shoe, 'soleWeight');
  if (high === undefined || Math.round(high) === 0) return `${side}: nothing is put under this shoe.`;
  const does = shoe.kind === 'rocker' ? 'rolls for the joint that must not bend' : 'brings this shoe level with the other';
  const tall = lengths === 'in' ? `${(high / MM_PER_INCH).toFixed(1)} inches` : `${Math.round(high)} mm`;
  return `${side}: the sole ${does}. It is ${tall} high under the heel${heavy === undefined ? '' : ` and weighs ${Math.round(heavy)} g`}.`;
}
