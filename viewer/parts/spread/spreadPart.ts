import type { Shown } from '../../desk/protocol.ts';
import type { SpreadAnswer, SpreadAsk } from '../../desk/spreadAsk.ts';
import type { SpreadShown, TriedShown } from '../../desk/spreadShown.ts';
import type { LengthUnit } from '../../keep/lengths.ts';
import { el } from '../dom.ts';
import type { DrawnBand } from '../sideView.ts';
import { bandDrawn } from './bandDrawn.ts';
import { shoeSureness } from './shoeSureness.ts';
import './spread.css';
import { tryControls } from './tryControls.ts';

/** A sheet that is shown, fine: what lengths are told in, where its shoes stand on the side drawing, whether the band is wanted there. */
export interface SpreadLook { readonly sheet: string; readonly lengths: LengthUnit; readonly places: Shown['places']; readonly band: boolean }

export interface SpreadPart {
  /** Undefined where there is no shape. */
  readonly show: (look: SpreadLook | undefined) => void;
}

export interface SpreadMoves {
  readonly goTo: (path: string) => void;
  /** Lays the band into the side drawing, or takes it out. */
  readonly band: (drawn: DrawnBand | undefined) => void;
  /** Where it is said what the band means. */
  readonly besideBand: HTMLElement;
}

const ABOUT = 'How far off each measure may be, by how it was taken or as told beside it, and what that does to the shoes. ± is one standard deviation: two of three lie within it.';

const BAND_MEANS = ' Where the ground face may lie under the last, nine times in ten, if every measure is off as it may be.';

/** Which measure matters, worked out in a worker of its own: nobody who drags waits for it. */
export function spreadPart(host: HTMLElement, moves: SpreadMoves): SpreadPart {
  const worker = new Worker(new URL('../../desk/spreadWorker.ts', import.meta.url), { type: 'module' }), ask = (message: SpreadAsk): void => worker.postMessage(message);
  let look: SpreadLook | undefined, asked = 0, trying: number | undefined, last = 0, shoes: readonly SpreadShown[] = [], tried: readonly TriedShown[] | undefined;
  const controls = tryControls({
    begin: () => { tried = undefined; trying = ++last; ask({ kind: 'try', id: trying }); draw(); },
    stop: () => { trying = undefined; ask({ kind: 'stop' }); },
  });
  const list = el('div', { class: 'sureness' }), none = el('p', { hidden: true }, 'There is no shape yet whose measures could be weighed.');
  const legend = el('p', { class: 'band-legend', hidden: true }, el('i', { 'aria-hidden': 'true' }), BAND_MEANS);
  moves.besideBand.append(legend);
  host.append(el('p', { class: 'about' }, ABOUT), controls.box, none, list);

  worker.onmessage = ({ data }: MessageEvent<SpreadAnswer>) => {
    if (data.kind === 'failed') failed(data.text);
    if (data.kind === 'looked' && data.id === asked) { ({ shoes } = data); draw(); band(); host.dataset.looked = 'true'; }
    if (data.kind === 'progress' && data.id === trying) controls.progress(data.done, data.of);
    if (data.kind === 'tried' && data.id === trying) { trying = undefined; tried = data.shoes; controls.done(); draw(); }
  };
  worker.onerror = ({ message }) => failed(message || 'its worker could not be loaded');

  function failed(why: string): void { trying = undefined; controls.done(); controls.box.hidden = false; controls.say(`This could not be worked out: ${why}`); }

  /** What a finger is on stays there, in whatever it is drawn anew. */
  function draw(): void {
    const focused = list.contains(document.activeElement) ? document.activeElement?.getAttribute('data-path') : undefined;
    none.hidden = shoes.length > 0;
    controls.box.hidden = shoes.length === 0;
    list.replaceChildren(...shoes.map((shoe) => shoeSureness(shoe, tried?.find(({ side }) => side === shoe.side), look?.lengths ?? 'mm', moves.goTo)));
    if (focused) list.querySelector<HTMLElement>(`[data-path="${CSS.escape(focused)}"]`)?.focus();
  }
  function band(): void { legend.hidden = !look?.band; moves.band(look?.band ? bandDrawn(shoes, look.places) : undefined); }
  /** Another sheet: what was tried was of the one before. */
  function begin(sheet: string): void {
    if (trying !== undefined || tried) controls.overtaken();
    trying = tried = undefined;
    asked = ++last;
    host.dataset.looked = 'false';
    ask({ kind: 'look', id: asked, sheet });
  }
  return {
    show: (now) => {
      const before = look;
      look = now;
      if (!now) { asked = ++last; trying = tried = undefined; ask({ kind: 'stop' }); controls.done(); shoes = []; draw(); band(); return; }
      if (now.sheet !== before?.sheet) return begin(now.sheet);
      if (host.dataset.looked !== 'true') return;
      if (now.lengths !== before.lengths) draw();
      band();
    },
  };
}
