import type { MakingName } from '../../src/fitting/words.ts';
import { kindOf, OFS, type Of } from '../keep/fileKinds.ts';
import type { FileShown } from '../desk/protocol.ts';
import { el } from './dom.ts';
import { MAKING_WORDS } from './makingWords.ts';

const OF_WORDS: Readonly<Partial<Record<Of, string>>> = { sole: 'soles', job: 'drawing, numbers and job sheet' };
export const ofWords = (of: Of): string => OF_WORDS[of] ?? MAKING_WORDS[of as MakingName].title;

const FORMATS: readonly (readonly [words: string, ...formats: readonly string[]])[] = [['solids, STL and 3MF', 'STL', '3MF'], ['outlines, DXF', 'DXF'], ['pictures, SVG', 'SVG'], ['papers, PDF', 'PDF'], ['numbers, JSON', 'JSON']];

export interface FileChoice {
  readonly box: HTMLElement;
  /** Only what is ordered can be chosen. */
  readonly update: (ordered: (name: MakingName) => boolean) => void;
  readonly chosen: (files: readonly FileShown[], reference: string) => readonly FileShown[];
}

/** Things and formats a maker may choose among. A file is taken where both of its ticks are set; a format that has none always is. */
export function fileChoice(): FileChoice {
  const tick = (words: string) => { const box = el('input', { type: 'checkbox', checked: true }); return { box, label: el('label', {}, box, ` ${words}`) }; };
  const things = new Map(OFS.map((of) => [of, tick(ofWords(of))])), formats = FORMATS.map(([words, ...names]) => ({ names, ...tick(words) }));
  const isOff = (one: ReturnType<typeof tick> | undefined): boolean => one !== undefined && !one.label.hidden && !one.box.checked;
  const row = (words: string, all: Iterable<ReturnType<typeof tick>>): HTMLElement => el('div', { class: 'tools', role: 'group', 'aria-label': words }, el('span', { class: 'of' }, words), ...[...all].map(({ label }) => label));
  return {
    box: el('div', {}, row('Files of', things.values()), row('as', formats)),
    update: (ordered) => {
      for (const [of, { label }] of things) label.hidden = of !== 'sole' && of !== 'job' && !ordered(of);
    },
    chosen: (files, reference) => files.filter(({ name }) => { const { of, format } = kindOf(name, reference); return !isOff(things.get(of)) && !isOff(formats.find(({ names }) => names.includes(format))); }),
  };
}
