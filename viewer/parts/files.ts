import type { Finding } from '../../src/checks/finding.ts';
import { stopsLeft } from '../../src/checks/overrides.ts';
import type { Fault } from '../../src/fitting/readSheet.ts';
import type { FileShown } from '../desk/protocol.ts';
import { button, el } from './dom.ts';

export interface Files { readonly show: (findings: readonly Finding[] | undefined, mouldFaults: readonly Fault[]) => void }

export interface FileMoves {
  readonly make: () => Promise<readonly FileShown[]>;
  readonly save: (files: readonly FileShown[]) => void;
  readonly print: (file: FileShown) => void;
}

/** Parts and formats a maker may choose among, told by the ends of file names. */
const KINDS = [
  ['solids, STL', /^(?!.*mould).*\.stl$/], ['mould, STL', /mould.*\.stl$/], ['outlines and profile, DXF', /\.dxf$/],
  ['drawing, SVG', /\.svg$/], ['job sheet, PDF', /\.pdf$/], ['every number, JSON', /\.json$/],
] as const;

/** The files of a job: chosen, made in the browser, saved as one zip. They are the command's, byte for byte. */
export function filesPart(host: HTMLElement, moves: FileMoves): Files {
  const ticks = KINDS.map(([words, ends]) => ({ ends, box: el('input', { type: 'checkbox', checked: true }), words }));
  const told = el('p', { role: 'status' }), list = el('ul', { class: 'made' });
  const chosen = (files: readonly FileShown[]): readonly FileShown[] => files.filter(({ name }) => ticks.some(({ ends, box }) => box.checked && ends.test(name)));
  const work = async (then: (files: readonly FileShown[]) => void): Promise<void> => {
    told.textContent = 'Making the files.';
    setOff(true);
    try {
      const files = await moves.make();
      then(files);
      told.textContent = `${files.length} files made.`;
      list.replaceChildren(...files.map(({ name, bytes }) => el('li', {}, `${name}, ${Math.ceil(bytes.length / 1024)} kB`)));
    } catch (error) {
      told.textContent = error instanceof Error ? error.message : String(error);
    } finally { setOff(false); }
  };
  const save = button('Save as one zip', () => void work((files) => moves.save(chosen(files))));
  const print = button('Print the job sheet', () => void work((files) => { const sheet = files.find(({ name }) => name.endsWith('.pdf')); if (sheet) moves.print(sheet); }));
  const draw = button('Print the drawing', () => window.print());
  const setOff = (off: boolean): void => { save.disabled = off; print.disabled = off; };
  host.append(el('div', { class: 'tools' }, ...ticks.map(({ box, words }) => el('label', {}, box, ` ${words}`))), el('div', { class: 'tools' }, save, print, draw), told, list);
  return {
    show: (findings, mouldFaults) => {
      const stops = findings ? stopsLeft(findings).length : 0;
      const why = !findings ? 'There is no shape to make yet.' : stops ? `${stops} stop${stops === 1 ? ' is' : 's are'} left: nothing is made until ${stops === 1 ? 'it is' : 'they are'} gone or taken on a name.`
        : mouldFaults.length ? mouldFaults.map(({ text }) => text).join(' ') : '';
      setOff(why !== '');
      if (why || !told.textContent?.endsWith('made.')) told.textContent = why;
    },
  };
}
