import type { Finding } from '../../src/checks/finding.ts';
import { stopsLeft } from '../../src/checks/overrides.ts';
import type { Fault } from '../../src/fitting/readSheet.ts';
import type { FileShown } from '../desk/protocol.ts';
import { button, el } from './dom.ts';

export interface Files { readonly show: (findings: readonly Finding[] | undefined, mouldFaults: readonly Fault[]) => void }

/** Files with the number of the job they were made for: another may be open by the time they are there. */
export interface MadeFiles { readonly reference: string; readonly files: readonly FileShown[] }

export interface FileMoves {
  readonly make: () => Promise<MadeFiles>;
  readonly save: (made: MadeFiles) => void;
  readonly print: (file: FileShown) => void;
  readonly printDrawing: () => void;
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
  let why = '', busy = false;
  const say = (words: string): void => { if (told.textContent !== words) told.textContent = words; };
  const setOff = (): void => { for (const one of [save, print, draw]) one.disabled = busy || why !== ''; };
  /** @param use takes the files there are and tells which of them were asked for */
  const work = async (use: (made: MadeFiles) => readonly FileShown[]): Promise<void> => {
    busy = true;
    setOff();
    say('Making the files.');
    try {
      const used = use(await moves.make());
      list.replaceChildren(...used.map(({ name, bytes }) => el('li', {}, `${name}, ${Math.ceil(bytes.length / 1024)} kB`)));
      say(`${used.length} file${used.length === 1 ? '' : 's'} made.`);
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    } finally { busy = false; setOff(); }
  };
  const save = button('Save as one zip', () => void work((made) => { const files = chosen(made.files); moves.save({ ...made, files }); return files; }));
  const print = button('Print the job sheet', () => void work(({ files }) => { const papers = files.filter(({ name }) => name.endsWith('.pdf')); papers.forEach(moves.print); return papers; }));
  const draw = button('Print the drawing', moves.printDrawing);
  host.append(el('div', { class: 'tools' }, ...ticks.map(({ box, words }) => el('label', {}, box, ` ${words}`))), el('div', { class: 'tools' }, save, print, draw), told, list);
  return {
    show: (findings, mouldFaults) => {
      const stops = findings ? stopsLeft(findings).length : 0;
      why = !findings ? 'There is no shape to make yet.' : stops ? `${stops} stop${stops === 1 ? ' is' : 's are'} left: nothing is made until ${stops === 1 ? 'it is' : 'they are'} gone or taken on a name.`
        : mouldFaults.length ? mouldFaults.map(({ text }) => text).join(' ') : '';
      setOff();
      if (busy) return;
      // What was made is of the sheet as it was.
      list.replaceChildren();
      say(why);
    },
  };
}
