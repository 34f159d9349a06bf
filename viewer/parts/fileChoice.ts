import type { MakingName } from '../../src/fitting/words.ts';
import { kindOf, OFS, type Of } from '../keep/fileKinds.ts';
import type { FileShown } from '../desk/protocol.ts';
import { el } from './dom.ts';
import { MAKING_WORDS } from './makingWords.ts';

const OF_WORDS: Readonly<Partial<Record<Of, string>>> = { sole: 'soles', board: 'cut from the board', job: 'drawing, numbers and job sheet' };
export const ofWords = (of: Of): string => OF_WORDS[of] ?? MAKING_WORDS[of as MakingName].title;

const FORMATS = [['STL', 'solids, STL'], ['DXF', 'outlines, DXF'], ['SVG', 'pictures, SVG'], ['PDF', 'papers, PDF'], ['JSON', 'numbers, JSON']] as const;

export interface FileChoice {
  readonly box: HTMLElement;
  /** Only what is ordered can be chosen. */
  readonly update: (ordered: (name: MakingName) => boolean) => void;
  readonly chosen: (files: readonly FileShown[], reference: string) => readonly FileShown[];
}

/** Things and formats a maker may choose among. A file is taken where both of its ticks are set; a format that has none always is. */
export function fileChoice(): FileChoice {
  const tick = (words: string) => { const box = el('input', { type: 'checkbox', checked: true }); return { box, label: el('label', {}, box, ` ${words}`) }; };
  const things = new Map(OFS.map((of) => [of, tick(ofWords(of))])), formats = new Map<string, ReturnType<typeof tick>>(FORMATS.map(([format, words]) => [format, tick(words)]));
  const isOff = (one: ReturnType<typeof tick> | undefined): boolean => one !== undefined && !one.label.hidden && !one.box.checked;
  const row = (words: string, all: Iterable<ReturnType<typeof tick>>): HTMLElement => el('div', { class: 'tools', role: 'group', 'aria-label': words }, el('span', { class: 'of' }, words), ...[...all].map(({ label }) => label));
  return {
    box: el('div', {}, row('Files of', things.values()), row('as', formats.values())),
    update: (ordered) => {
      for (const [of, { label }] of things) label.hidden = of !== 'sole' && of !== 'job' && (of === 'board' ? !(['jig', 'gauges', 'wedges'] as const).some(ordered) : !ordered(of));
    },
    chosen: (files, reference) => files.filter(({ name }) => { const { of, format } = kindOf(name, reference); return !isOff(things.get(of)) && !isOff(formats.get(format)); }),
  };
}
