import { capital } from '../../src/checks/say.ts';
import { grouped, sizeWords } from '../keep/fileKinds.ts';
import type { FileShown } from '../desk/protocol.ts';
import { button, el } from './dom.ts';
import { ofWords } from './fileChoice.ts';

/** So many files are told at once; of more only how many there are, until a group is opened. */
const AT_ONCE = 12;

/** The files that were made, by shoe and thing, with their sizes; one pressed is saved by itself. */
export function madeList(files: readonly FileShown[], reference: string, save: (file: FileShown) => void): readonly HTMLElement[] {
  return grouped(files, reference).map(({ side, of, files: own, bytes }) =>
    el('details', { class: 'group', open: files.length <= AT_ONCE },
      el('summary', {}, `${side ? `${capital(side)} shoe, ${of === 'sole' ? 'sole' : ofWords(of)}` : capital(ofWords(of))}: ${counted(own.length)}, ${sizeWords(bytes)}`),
      el('ul', {}, ...own.map((file) => el('li', {}, button(`${file.name}, ${sizeWords(file.bytes.length)}`, () => save(file), { title: 'Save this one by itself' }))))));
}

export const counted = (files: number): string => `${files} file${files === 1 ? '' : 's'}`;
