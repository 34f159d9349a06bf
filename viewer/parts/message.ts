import type { Fault } from '../../src/fitting/readSheet.ts';
import type { TroubleWords, Works } from '../../src/checks/troubleWords.ts';
import { button, el } from './dom.ts';

export interface Message {
  readonly clear: () => void;
  readonly faults: (faults: readonly Fault[]) => void;
  readonly troubles: (troubles: readonly TroubleWords[]) => void;
  readonly say: (text: string) => void;
}

export interface MessageMoves { readonly goTo: (path: string) => void; readonly apply: (works: Works) => void }

/** What keeps a sheet from becoming a shape, below the last good drawing: the measure, the rule, what came, what works. */
export function message(host: HTMLElement, moves: MessageMoves): Message {
  const box = el('div', { class: 'message', role: 'alert' });
  host.append(box);
  let told = '';
  /** Told again, the same words would be read out again. */
  const tell = (what: unknown, ...lines: readonly (Node | string)[]): void => {
    const next = JSON.stringify(what);
    if (next === told) return;
    told = next;
    box.replaceChildren(...lines);
  };
  const list = (lines: readonly HTMLElement[]): HTMLElement => el('ul', {}, ...lines);
  return {
    clear: () => tell(''),
    faults: (faults) => tell(faults, list(faults.map(({ path, text }) => el('li', {}, `${text} `, button('Go there', () => moves.goTo(path)))))),
    troubles: (troubles) => tell(troubles, list(troubles.map(({ path, text, works }) => el('li', {}, `${text}. `, button('Go there', () => moves.goTo(path)),
      ...works.map((one) => button(`Try ${one.text}`, () => moves.apply(one))))))),
    say: (text) => tell(text, text),
  };
}
