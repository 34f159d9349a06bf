import type { Finding } from '../../src/checks/finding.ts';
import { stopsLeft } from '../../src/checks/overrides.ts';
import type { Fault } from '../../src/fitting/readSheet.ts';
import type { FileShown } from '../desk/protocol.ts';
import { kindOf, sizeOf, sizeWords } from '../keep/fileKinds.ts';
import type { Json, Sheet } from '../keep/sheet.ts';
import { button, el } from './dom.ts';
import { fileChoice } from './fileChoice.ts';
import { counted, madeList } from './madeList.ts';
import { ordering, type OrderMoves } from './ordering.ts';
import { thrownWords } from '../keep/thrown.ts';

export interface Files {
  /** Where lists of many columns stand: beside what they are for. */
  readonly wide: HTMLElement;
  /** The sheet says what is ordered. */
  readonly update: () => void;
  readonly show: (findings: readonly Finding[] | undefined, mouldFaults: readonly Fault[]) => void;
}

/** Files with the sheet and the number of the job they were made for: another may be open by the time they are there. */
export interface MadeFiles { readonly reference: string; readonly sheet: Sheet; readonly files: readonly FileShown[] }

export interface FileMoves extends OrderMoves {
  readonly sheet: () => Sheet;
  readonly make: () => Promise<MadeFiles>;
  readonly save: (made: MadeFiles) => void;
  readonly saveOne: (file: FileShown) => void;
  readonly print: (file: FileShown) => void;
  readonly printDrawing: () => void;
}

/** What is ordered, and the files of a job: chosen, made in the browser, saved as one zip. They are the command's, byte for byte. */
export function filesPart(host: HTMLElement, moves: FileMoves): Files {
  const orders = ordering(host, moves), wide = el('div', { class: 'wide' }), choice = fileChoice();
  const told = el('p', { role: 'status' }), papers = el('div', { class: 'tools', role: 'group', 'aria-label': 'papers to print' }), list = el('div', { class: 'made' });
  let why = '', busy = false, made: MadeFiles | undefined, shownOf: { readonly making: Json | undefined } | undefined;
  const say = (words: string): void => { if (told.textContent !== words) told.textContent = words; };
  const setOff = (): void => { for (const one of [save, print, draw]) one.disabled = busy || why !== ''; };
  const isOld = (): boolean => made?.sheet !== moves.sheet();
  const clear = (): void => { list.replaceChildren(); papers.replaceChildren(); };
  /** @param use takes the files there are and tells which of them were asked for */
  const work = async (use: (made: MadeFiles) => readonly FileShown[]): Promise<void> => {
    busy = true;
    setOff();
    try {
      if (isOld() || !made) { say('Making the files.'); clear(); made = await moves.make(); }
      const used = use(made);
      if (!isOld()) list.replaceChildren(...madeList(used, made.reference, moves.saveOne));
      say(`${counted(used.length)} made${isOld() ? ` for ${made.reference}` : ''}, ${sizeWords(sizeOf(used))}.`);
    } catch (error) {
      say(thrownWords(error));
    } finally { busy = false; setOff(); }
  };
  const save = button('Save as one zip', () => void work((all) => { const files = choice.chosen(all.files, all.reference); moves.save({ ...all, files }); return files; }));
  const print = button('Print a paper', () => void work((all) => {
    const pdfs = all.files.filter(({ name }) => name.endsWith('.pdf'));
    if (pdfs.length === 1) moves.print(pdfs[0]!);
    else if (!isOld()) papers.replaceChildren(el('span', { class: 'of' }, 'Print'), ...pdfs.map((file) => button(kindOf(file.name, all.reference).words, () => moves.print(file))));
    return all.files;
  }));
  const draw = button('Print the drawing', moves.printDrawing);
  host.append(wide, el('h3', {}, 'Files to save'), choice.box, el('div', { class: 'tools' }, save, print, draw), told, papers, list);
  return {
    wide,
    // A sheet of which another part was changed has the very same workshop.
    update: () => {
      const { making } = moves.sheet();
      if (shownOf && shownOf.making === making) return;
      shownOf = { making };
      orders.update();
      choice.update(moves.ordered);
    },
    show: (findings, mouldFaults) => {
      const stops = findings ? stopsLeft(findings).length : 0;
      why = !findings ? 'There is no shape to make yet.' : stops ? `${stops} stop${stops === 1 ? ' is' : 's are'} left: nothing is made until ${stops === 1 ? 'it is' : 'they are'} gone or taken on a name.`
        : mouldFaults.length ? mouldFaults.map(({ text }) => text).join(' ') : '';
      setOff();
      // What was made is of the sheet as it was.
      if (busy || !isOld()) return;
      clear();
      say(why);
    },
  };
}
