import { button, el } from '../dom.ts';

/** What a search is begun, watched and cancelled with. A key that was on the button that goes is on the one that comes. */
export interface SearchTools {
  readonly tools: HTMLElement;
  readonly ask: HTMLButtonElement;
  readonly begun: () => void;
  /** @param share of the search, 0 to 1 */
  readonly going: (share: number, words: string) => void;
  readonly ended: () => void;
}

export function searchTools(begin: () => void, stop: () => void): SearchTools {
  const ask = button('Find the best rocker', begin, { class: 'ask' }), cancel = button('Cancel', stop, { hidden: true });
  const bar = el('progress', { max: 1, value: 0, 'aria-label': 'how far the search has come' }), going = el('span', { class: 'going' });
  const running = el('div', { class: 'running', hidden: true }, bar, going);
  const swap = (on: boolean): void => {
    const [goes, comes] = on ? [ask, cancel] : [cancel, ask], focused = document.activeElement === goes;
    goes.hidden = true;
    comes.hidden = false;
    running.hidden = !on;
    if (focused) comes.focus();
  };
  const tell = (share: number, words: string): void => { bar.value = share; going.textContent = words; };
  return { tools: el('div', { class: 'tools' }, ask, cancel, running), ask, begun: () => { tell(0, ''); swap(true); }, going: tell, ended: () => swap(false) };
}
