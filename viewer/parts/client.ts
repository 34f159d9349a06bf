import type { Figure, FigureKey } from '../../src/checks/figures.ts';
import type { Shown, ShoeShown } from '../desk/protocol.ts';
import { button, el } from './dom.ts';

/** What a client is shown: the own soles turning, how high, how heavy, and what to mind. No name, no jargon. */
export function clientView(shown: Shown): void {
  const stage = el('div', { class: 'stage' }), close = button('Back to the bench', () => dialog.close());
  const dialog = el('dialog', { class: 'client', 'aria-label': 'Your soles' },
    el('h2', {}, 'Your soles'), stage,
    el('div', { class: 'said' }, ...shown.shoes.map((shoe) => el('p', {}, sentence(shoe)))),
    el('ul', { class: 'mind' }, ...MIND.map((text) => el('li', {}, text))), close);
  document.body.append(dialog);
  dialog.showModal();
  void dialog.requestFullscreen?.().catch(() => undefined);
  const solid = import('./solid/solidView.ts').then(({ solidView }) => {
    const view = solidView(stage);
    view.show(shown.shoes, 'fine');
    view.turn(true);
    return view;
  });
  dialog.addEventListener('close', () => {
    void solid.then((view) => view.dispose());
    if (document.fullscreenElement) void document.exitFullscreen();
    dialog.remove();
  });
}

const MIND = [
  'The first steps are made beside a rail, with somebody there.',
  'Stop wearing them when new pain comes, and tell us.',
  'Look at your skin after each of the first walks.',
  'Care on stairs down, slopes and wet floors. Ask before you drive.',
];

const whole = (shoe: ShoeShown, key: FigureKey): string | undefined => {
  const figure = shoe.figures.find((one: Figure) => one.key === key);
  return figure && Math.round(figure.value).toString();
};

function sentence(shoe: ShoeShown): string {
  const side = shoe.side === 'left' ? 'Left' : 'Right', high = whole(shoe, 'seatHeight'), heavy = whole(shoe, 'soleWeight');
  if (!high) return `${side}: nothing is put under this shoe.`;
  const does = shoe.kind === 'rocker' ? 'rolls for the joint that must not bend' : 'brings this shoe level with the other';
  return `${side}: the sole ${does}. It is ${high} mm high under the heel${heavy ? ` and weighs ${heavy} g` : ''}.`;
}
