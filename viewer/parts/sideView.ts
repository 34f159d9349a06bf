import { element } from '../../src/exports/svg.ts';
import type { Drawing, Mark } from '../../src/exports/drawing.ts';
import type { Handle, Shown, SvgShown } from '../desk/protocol.ts';
import { el, svgEl } from './dom.ts';
import { stepped } from './numbers.ts';

export interface SideView {
  readonly show: (shown: Shown) => void;
  /** Greys the drawing that is no longer true of the sheet. */
  readonly stale: (is: boolean) => void;
  readonly light: (of: string | undefined) => void;
  /** Points at a place of a shoe, mm from the heel. */
  readonly pointAt: (side: string, x: number) => void;
  /** An older drawing, laid under this one. */
  readonly ghost: (drawing: SvgShown | undefined) => void;
}

export interface Moves {
  readonly move: (handle: Handle, value: number) => void;
  readonly settle: () => void;
  /** Where the same value can be typed. */
  readonly type: (path: string) => void;
  readonly light: (of: string | undefined) => void;
}

const markUp = (mark: Mark): string => (mark.of === undefined ? element(mark) : `<g data-of="${mark.of}">${element(mark)}</g>`);
const layer = (): SVGGElement => svgEl('g');

/** The side drawing of both shoes, alive: the same marks as on paper, with pins to drag. */
export function sideView(host: HTMLElement, moves: Moves): SideView {
  const svg = svgEl('svg', { class: 'side-drawing', role: 'group', 'aria-label': 'Side drawing of the shoes' });
  const under = layer(), marks = layer(), place = layer(), pins = layer();
  marks.setAttribute('aria-hidden', 'true');
  under.setAttribute('class', 'ghost');
  svg.append(under, marks, place, pins);
  host.append(svg);
  let now: Shown | undefined, held: { readonly handle: Handle; readonly from: DOMPoint } | undefined;
  const made = new Map<string, SVGGElement>();

  const onPaper = (event: PointerEvent): DOMPoint => new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM()!.inverse());
  const latest = (id: string): Handle | undefined => now?.handles.find((handle) => handle.id === id);
  const clamped = (handle: Handle, value: number): number => stepped(Math.min(handle.most, Math.max(handle.least, value)), handle.unit);

  const grab = (id: string) => (event: PointerEvent): void => {
    const handle = latest(id);
    if (!handle) return;
    (event.currentTarget as SVGGElement).setPointerCapture(event.pointerId);
    held = { handle, from: onPaper(event) };
    event.preventDefault();
    (event.currentTarget as SVGGElement).focus();
  };
  const drag = (event: PointerEvent): void => {
    if (!held) return;
    const { handle, from } = held, to = onPaper(event), by = handle.moves === 'along' ? to.x - from.x : from.y - to.y;
    moves.move(handle, clamped(handle, handle.value + by * handle.perPaper));
  };
  const let_go = (): void => { if (held) { held = undefined; moves.settle(); } };

  const KEYS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
  const key = (id: string) => (event: KeyboardEvent): void => {
    const handle = latest(id), way = KEYS[event.key];
    if (handle && event.key === 'Enter') moves.type(handle.path);
    if (!handle || way === undefined) return;
    event.preventDefault();
    const along = handle.moves === 'along' && (event.key === 'ArrowUp' || event.key === 'ArrowDown') ? Math.sign(handle.perMm) : 1;
    const value = handle.value + way * along * handle.perMm * (event.shiftKey ? 0.1 : 1);
    moves.move(handle, Number(Math.min(handle.most, Math.max(handle.least, value)).toFixed(2)));
  };

  const pinFor = ({ id }: Handle): SVGGElement => {
    const known = made.get(id);
    if (known) return known;
    const pin = svgEl('g', { class: 'pin', tabindex: 0, role: 'slider' });
    pin.append(svgEl('circle', { r: 5, class: 'reach' }), svgEl('circle', { r: 1.7, class: 'head' }), svgEl('title'));
    pin.addEventListener('pointerdown', grab(id));
    pin.addEventListener('pointermove', drag);
    pin.addEventListener('pointerup', let_go);
    pin.addEventListener('pointercancel', let_go);
    pin.addEventListener('keydown', key(id));
    pin.addEventListener('keyup', (event) => { if (event.key in KEYS) moves.settle(); });
    made.set(id, pin);
    pins.append(pin);
    return pin;
  };
  const place_pins = (handles: readonly Handle[]): void => {
    for (const [id, pin] of made) if (!handles.some((handle) => handle.id === id)) { pin.remove(); made.delete(id); }
    for (const handle of handles) {
      const pin = pinFor(handle), words = `${handle.value.toFixed(handle.unit === 'in' ? 3 : 1)} ${handle.unit}`;
      pin.setAttribute('transform', `translate(${handle.at[0]} ${handle.at[1]})`);
      pin.setAttribute('aria-label', handle.label);
      pin.setAttribute('aria-valuenow', String(handle.value));
      pin.setAttribute('aria-valuemin', String(handle.least));
      pin.setAttribute('aria-valuemax', String(handle.most));
      pin.setAttribute('aria-valuetext', words);
      pin.setAttribute('aria-orientation', handle.moves === 'along' ? 'horizontal' : 'vertical');
      pin.querySelector('title')!.textContent = `${handle.label}: ${words}. Drag, or arrow keys (with shift: a tenth); Enter to type it.`;
    }
  };

  const light = (of: string | undefined): void => {
    for (const lit of marks.querySelectorAll('.lit')) lit.classList.remove('lit');
    if (of) for (const mark of marks.querySelectorAll(`[data-of="${CSS.escape(of)}"]`)) mark.classList.add('lit');
  };
  const over = (event: Event): void => moves.light((event.target as Element).closest('[data-of]')?.getAttribute('data-of') ?? undefined);
  marks.addEventListener('pointerover', over);
  marks.addEventListener('pointerleave', () => moves.light(undefined));

  return {
    show: (shown) => {
      now = shown;
      const { paper, marks: drawn, title } = shown.side;
      svg.setAttribute('viewBox', `0 0 ${paper.width} ${paper.height}`);
      svg.setAttribute('aria-label', `${title}. The numbers are in the list of figures.`);
      marks.innerHTML = drawn;
      place.replaceChildren();
      place_pins(shown.handles);
    },
    stale: (is) => svg.classList.toggle('stale', is),
    light,
    pointAt: (side, x) => {
      const view = now?.places.find((one) => one.side === side)?.view;
      if (!view || !now) return;
      const at = view.zero[0] + x * view.scale, top = 20, bottom = view.zero[1] + 3;
      place.replaceChildren(svgEl('line', { x1: at, x2: at, y1: top, y2: bottom, class: 'place' }));
    },
    ghost: (drawing) => { under.innerHTML = drawing?.outlines ?? ''; },
  };
}

/** A drawing that is only looked at, like the plan. */
export function stillDrawing(host: HTMLElement): (drawing: Drawing) => void {
  const picture = el('div', { class: 'still' });
  host.append(picture);
  return ({ paper, marks, title }) => {
    picture.innerHTML = `<svg viewBox="0 0 ${paper.width} ${paper.height}" role="img" aria-label="${title.replace(/"/g, '')}">${marks.map(markUp).join('')}</svg>`;
  };
}
