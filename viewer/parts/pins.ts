import type { Paper } from '../../src/exports/drawing.ts';
import type { Handle } from '../desk/protocol.ts';
import { svgEl } from './dom.ts';
import { isLengthUnit, shownLength, typedLength, type LengthUnit } from '../keep/lengths.ts';
import { stepped } from './numbers.ts';
import { holding, pinNumber, pinWords, spokenWords } from './holding.ts';

export interface PinMoves {
  readonly move: (handle: Handle, value: number) => void;
  readonly settle: () => void;
  /** Takes back what was moved since the hand last rested. */
  readonly back: () => void;
  /** Where the same value can be typed. */
  readonly type: (path: string) => void;
  /** What lengths are shown in. */
  readonly lengths: () => LengthUnit;
}

/** A pin answers within this many pixels of its head: half of the least size of a target. */
const REACH = 21;
/** A hand that moves less than this only taps, px. */
const TAP = 4;
const KEYS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/** `from` is where the hand took hold, on the screen. */
interface Held { readonly handle: Handle; readonly pointer: number; readonly from: DOMPoint; readonly focusedBefore: boolean; asked?: number }

/** Pins on a drawing, each the handle of a value: dragged, moved with the arrow keys, typed after Enter. */
export function pins(svg: SVGSVGElement, moves: PinMoves): { readonly show: (handles: readonly Handle[], paper: Paper, current: boolean) => void } {
  const layer = svgEl('g'), hold = holding();
  svg.append(hold.layer, layer);
  let now: readonly Handle[] = [], paper: Paper = { width: 1, height: 1 }, held: Held | undefined;
  /** Where keys have brought a pin that is not shown there yet: the next press goes on from it. */
  let ahead: { readonly id: string; readonly value: number } | undefined;
  const made = new Map<string, SVGGElement>();

  const latest = (id: string): Handle | undefined => now.find((handle) => handle.id === id);
  const reached = ({ id, value }: Handle): number => (ahead?.id === id ? ahead.value : value);
  const onPaper = ({ clientX, clientY }: PointerEvent): DOMPoint => new DOMPoint(clientX, clientY).matrixTransform(svg.getScreenCTM()!.inverse());
  // Asked for only where the layout is done anyway: in the middle of a step it would be laid out for that alone.
  let pixel = 1;
  const focused = (): string | undefined => [...made].find(([, pin]) => pin === document.activeElement)?.[0];
  const hold_on = (handle: Handle, value = handle.value, stopped = false): void => {
    hold.show(handle, value, stopped, moves.lengths(), paper, pixel);
    readOut(handle, value, stopped);
  };
  const within = ({ least, most }: Handle, value: number): number => Math.min(most, Math.max(least, value));

  /** The pins under a pointer, the nearest first; the one held last goes first where it lies about as near. */
  function under(point: DOMPoint): Handle[] {
    const last = focused();
    const far = ({ id, at: [x, y] }: Handle): number => Math.hypot(x - point.x, y - point.y) / pixel - (id === last ? REACH / 3 : 0);
    return now.filter(({ at: [x, y] }) => Math.hypot(x - point.x, y - point.y) <= REACH * pixel).sort((a, b) => far(a) - far(b));
  }
  const grab = (event: PointerEvent): void => {
    if (held || event.button !== 0 || !event.isPrimary) return;
    const handle = under(onPaper(event))[0], pin = handle && made.get(handle.id);
    if (!handle || !pin) return;
    event.preventDefault();
    held = { handle, pointer: event.pointerId, from: new DOMPoint(event.clientX, event.clientY), focusedBefore: pin === document.activeElement };
    pin.setPointerCapture(event.pointerId);
    pin.focus({ preventScroll: true });
    hold_on(handle);
  };
  const drag = (event: PointerEvent): void => {
    if (held?.pointer !== event.pointerId) return;
    const { handle, from } = held, aside = event.clientX - from.x, up = from.y - event.clientY;
    if (held.asked === undefined && Math.hypot(aside, up) < TAP) return;
    const wanted = handle.value + (handle.moves === 'along' ? aside : up) * pixel * handle.perPaper, value = within(handle, inSteps(handle, within(handle, wanted)));
    held.asked = value;
    moves.move(handle, value);
    hold_on(latest(handle.id) ?? handle, value, wanted !== within(handle, wanted));
  };
  /** In steps of the unit the maker sees, in the unit of the sheet. */
  function inSteps({ unit }: Handle, value: number): number {
    const lengths = moves.lengths();
    return isLengthUnit(unit) ? typedLength(stepped(shownLength(value, unit, lengths), lengths), lengths, unit) : stepped(value, unit);
  }
  const let_go = (event: PointerEvent): void => {
    if (held?.pointer !== event.pointerId) return;
    const { handle, asked, focusedBefore } = held, others = under(onPaper(event)).filter(({ id }) => id !== handle.id);
    held = undefined;
    // What was read while it was held no longer covers the drawing.
    if (asked !== undefined) { moves.settle(); hold.hide(); }
    // A second tap goes on to the pin that lies under this one.
    else if (focusedBefore && event.type === 'pointerup' && others[0]) made.get(nextOf(handle, others).id)?.focus({ preventScroll: true });
  };
  const nextOf = ({ id }: Handle, others: readonly Handle[]): Handle => {
    const order = now.map((handle) => handle.id), after = ({ id: other }: Handle): number => (order.indexOf(other) - order.indexOf(id) + order.length) % order.length;
    return [...others].sort((a, b) => after(a) - after(b))[0]!;
  };
  function escape(): void {
    const { handle, asked } = held!;
    held = undefined;
    if (asked !== undefined) moves.back();
    hold_on(handle);
  }
  const key = (id: string) => (event: KeyboardEvent): void => {
    const handle = latest(id), way = KEYS[event.key];
    if (event.key === 'Escape' && held) { event.preventDefault(); return escape(); }
    if (handle && event.key === 'Enter') { event.preventDefault(); moves.type(handle.path); }
    if (way === undefined) ahead = undefined;
    if (!handle || way === undefined || held) return;
    event.preventDefault();
    const along = handle.moves === 'along' && (event.key === 'ArrowUp' || event.key === 'ArrowDown') ? Math.sign(handle.perMm) : 1;
    const wanted = reached(handle) + way * along * handle.perMm * (event.shiftKey ? 0.1 : 1), value = Number(within(handle, wanted).toFixed(handle.unit === 'in' ? 4 : 2));
    ahead = { id, value };
    moves.move(handle, value);
    hold_on(handle, value, wanted !== within(handle, wanted));
  };

  const pinFor = ({ id }: Handle): SVGGElement => {
    const known = made.get(id);
    if (known) return known;
    const pin = svgEl('g', { class: 'pin', tabindex: 0, role: 'slider' });
    pin.append(svgEl('circle', { class: 'reach' }), svgEl('circle', { r: 1.7, class: 'head' }), svgEl('title'));
    pin.addEventListener('pointerdown', grab);
    pin.addEventListener('pointermove', drag);
    pin.addEventListener('pointerup', let_go);
    pin.addEventListener('pointercancel', let_go);
    pin.addEventListener('lostpointercapture', let_go);
    pin.addEventListener('keydown', key(id));
    pin.addEventListener('keyup', (event) => { if (event.key in KEYS && !held) moves.settle(); });
    pin.addEventListener('focus', () => { const handle = latest(id); if (handle) hold_on(handle); });
    pin.addEventListener('blur', () => { const handle = latest(id); ahead = undefined; hold.hide(); if (handle) readOut(handle); });
    reach(pin);
    made.set(id, pin);
    layer.append(pin);
    return pin;
  };
  const reach = (pin: SVGGElement): void => pin.querySelector('.reach')!.setAttribute('r', (REACH * pixel).toFixed(2));
  const measured = (): void => { pixel = 1 / (svg.getScreenCTM()?.a || 1); made.forEach(reach); };
  new ResizeObserver(measured).observe(svg);

  /** What a pin says of its value to who does not see it; a pin that was stopped says why. */
  function readOut(handle: Handle, value = handle.value, stopped = false): void {
    const pin = made.get(handle.id), lengths = moves.lengths(), said = spokenWords(handle, value, stopped, lengths);
    if (pin && pin.getAttribute('aria-valuetext') !== said) pin.setAttribute('aria-valuetext', said);
  }
  function place(handle: Handle): void {
    const pin = pinFor(handle), lengths = moves.lengths(), words = pinWords(handle, handle.value, lengths), number = (value: number): number => (isLengthUnit(handle.unit) && handle.unit !== lengths ? pinNumber(handle, value, lengths)[0] : value);
    const told = {
      transform: `translate(${handle.at[0]} ${handle.at[1]})`, 'aria-label': handle.label, 'aria-valuenow': number(handle.value), 'aria-valuemin': number(handle.least),
      'aria-valuemax': number(handle.most), 'aria-orientation': handle.moves === 'along' ? 'horizontal' : 'vertical',
    };
    for (const [name, value] of Object.entries(told)) pin.setAttribute(name, String(value));
    if (hold.shown() !== handle.id) readOut(handle);
    pin.querySelector('title')!.textContent = `${handle.label}: ${words}. Drag, or arrow keys (with shift: a tenth); Enter to type it.`;
  }
  return {
    show: (handles, on, current) => {
      now = handles;
      if (current) ahead = undefined;
      const resized = on.width !== paper.width || on.height !== paper.height;
      paper = on;
      for (const [id, pin] of made) if (!latest(id)) { pin.remove(); made.delete(id); if (held?.handle.id === id) { held = undefined; moves.settle(); } }
      handles.forEach(place);
      if (resized) measured();
      const id = held?.handle.id ?? focused(), handle = id === undefined ? undefined : latest(id);
      if (handle && hold.shown() === id) hold_on(handle, held?.asked ?? reached(handle), hold.stopped());
    },
  };
}
