import type { MakingName } from '../../../src/fitting/words.ts';
import type { NamesBeside } from '../../../src/making/shownNames.ts';
import type { PartName } from '../../desk/protocol.ts';
import { el } from '../dom.ts';
import { MAKING_WORDS } from '../makingWords.ts';

export interface BesideMenu {
  readonly box: HTMLElement;
  /** What the sheet orders now. A tick that goes with its thing is as it was when the thing is ordered again. */
  readonly show: (things: readonly NamesBeside[]) => void;
  /** Things of which a part is to be seen. */
  readonly asked: () => readonly MakingName[];
}

/** What is made besides the sole and can be looked at with it. @param changed which parts are on, and which are not */
export function besideMenu(changed: (on: Partial<Record<PartName, boolean>>) => void): BesideMenu {
  const lines = el('div', { class: 'beside' }), box = el('details', { class: 'group', open: true, hidden: true }, el('summary', {}, 'Beside the sole'), lines);
  const ticks = new Map<PartName, HTMLInputElement>();
  let shown: readonly NamesBeside[] = [], told = '[]';
  const tick = (part: PartName): HTMLInputElement => {
    const there = ticks.get(part) ?? el('input', { type: 'checkbox', onchange: () => changed({ [part]: there.checked }) });
    ticks.set(part, there);
    return there;
  };
  const partsOf = ({ of, names }: NamesBeside): readonly (readonly [PartName, string])[] => names.map((name) => [`${of}: ${name}`, name] as const);
  return {
    box,
    show: (things) => {
      const next = JSON.stringify(things);
      if (next === told) return;
      told = next;
      shown = things;
      box.hidden = things.length === 0;
      lines.replaceChildren(...things.map((thing) => el('div', { class: 'tools', role: 'group', 'aria-label': MAKING_WORDS[thing.of].title },
        ...partsOf(thing).map(([part, name]) => el('label', {}, tick(part), ` ${name}`)))));
      const there = new Set(things.flatMap(partsOf).map(([part]) => part));
      changed(Object.fromEntries([...ticks].map(([part, { checked }]) => [part, checked && there.has(part)])));
    },
    asked: () => shown.filter((thing) => partsOf(thing).some(([part]) => ticks.get(part)?.checked)).map(({ of }) => of),
  };
}
