import { button, el } from './dom.ts';

export interface OtherTabMoves { readonly takeTheirs: () => void; readonly keepMine: () => void }

/** Says that this tab is behind. It cannot be closed without an answer, for whatever is done next would go one way or the other. */
export function otherTab(moves: OtherTabMoves): () => void {
  const pressed = (then: () => void) => (): void => { dialog.close(); then(); };
  const dialog = el('dialog', {
    class: 'other-tab', 'aria-labelledby': 'other-tab-words', oncancel: (event: Event) => event.preventDefault(),
    onkeydown: (event: KeyboardEvent) => { if (event.key === 'Escape') event.preventDefault(); },
  },
    el('h2', { id: 'other-tab-words' }, 'This job was changed in another tab'),
    el('p', {}, 'What stands here is older. Nothing is overwritten until you choose.'),
    button('Take the other tab\'s', pressed(moves.takeTheirs)), button('Keep mine as a copy', pressed(moves.keepMine)));
  // A second way back, as of a phone, may close it all the same: it comes back.
  dialog.addEventListener('close', () => { if (asks) dialog.showModal(); });
  let asks = false;
  for (const one of dialog.querySelectorAll('button')) one.addEventListener('click', () => { asks = false; }, { capture: true });
  document.body.append(dialog);
  return () => { if (!dialog.open) { asks = true; dialog.showModal(); } };
}
