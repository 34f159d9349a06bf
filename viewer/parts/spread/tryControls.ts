import { counted } from '../../../src/spread/words.ts';
import { USUAL_SAMPLING } from '../../../src/spread/sampling.ts';
import { button, el } from '../dom.ts';

export interface TryControls {
  readonly box: HTMLElement;
  readonly progress: (done: number, of: number) => void;
  readonly done: () => void;
  /** The sheet is another one now. */
  readonly overtaken: () => void;
  readonly say: (text: string) => void;
}

const MANY = counted(USUAL_SAMPLING.samples);

/** Tries many variants where it is asked for, tells how far it is, and stops at a press. */
export function tryControls({ begin, stop }: { readonly begin: () => void; readonly stop: () => void }): TryControls {
  const bar = el('progress', { max: 1, value: 0, 'aria-label': 'variants tried' }), said = el('p', { class: 'waits', role: 'status' });
  const start = button(`Try ${MANY} variants`, () => { running(true); begin(); cancel.focus(); });
  const cancel = button('Cancel', () => { stop(); running(false); say('Cancelled: the quick answer stands.'); start.focus(); });
  const box = el('div', { class: 'tools tries' }, start, cancel, bar, said);
  const say = (text: string): void => { said.textContent = text; };
  /** Whoever holds the button that goes away is given the other one. */
  function running(is: boolean): void {
    const held = document.activeElement === cancel;
    start.hidden = is;
    cancel.hidden = bar.hidden = !is;
    if (is) { bar.value = 0; say(`Trying ${MANY} variants of each rocker, with all its measures off at once…`); }
    else if (held) start.focus();
  }
  running(false);
  return {
    box, say,
    progress: (done, of) => { bar.max = of; bar.value = done; },
    done: () => { running(false); say(''); },
    overtaken: () => { running(false); say('The sheet has changed: what was tried was of the sheet before.'); },
  };
}
