import { SAMPLES } from '../samples.ts';
import { isLengthUnit, type LengthUnit } from '../keep/lengths.ts';
import { button, el } from './dom.ts';

export interface StripMoves {
  readonly fromSample: (text: string) => void;
  readonly blank: () => void;
  readonly openFile: (text: string) => void;
  readonly saveFile: () => void;
  readonly openJob: (id: string) => void;
  readonly duplicate: () => void;
  readonly remove: () => void;
  readonly restore: (id: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly mirror: () => void;
  readonly copy: (from: 'left' | 'right') => void;
  readonly layUnder: () => void;
  readonly client: () => void;
  readonly lengths: (unit: LengthUnit) => void;
}

interface JobLine { readonly id: string; readonly name: string; readonly changed: number; readonly removed?: number }

export interface Strip {
  readonly jobs: (jobs: readonly JobLine[], open: string) => void;
  readonly steps: (undo: string | undefined, redo: string | undefined) => void;
  readonly kept: (words: string) => void;
  readonly lengths: (unit: LengthUnit) => void;
  /** Whether a version is laid under. */
  readonly laid: (is: boolean) => void;
}

/** Tells two jobs of one number apart. */
const dayAndTime = (at: number): string => new Date(at).toLocaleString([], { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', second: '2-digit' });

/** Jobs on this device, where a sheet comes from and goes to, and what was done and can be undone. */
export function strip(host: HTMLElement, moves: StripMoves): Strip {
  const jobs = el('select', { 'aria-label': 'job', onchange: () => moves.openJob(jobs.value) });
  const begin = el('select', { 'aria-label': 'begin a new sheet', onchange: () => void start() }, el('option', { value: '' }, 'New sheet…'), el('option', { value: 'blank' }, 'empty'),
    ...SAMPLES.map(({ name }) => el('option', { value: name }, `sample: ${name}`)));
  const start = async (): Promise<void> => {
    const from = begin.value;
    begin.value = '';
    if (from === 'blank') moves.blank();
    const sample = SAMPLES.find(({ name }) => name === from);
    if (sample) moves.fromSample(await sample.load());
  };
  const file = el('input', { type: 'file', accept: '.json,application/json', hidden: true, onchange: async () => { const [one] = file.files ?? []; if (one) moves.openFile(await one.text()); file.value = ''; } });
  const undo = button('Undo', moves.undo), redo = button('Redo', moves.redo), kept = el('span', { class: 'kept', role: 'status' });
  const removed = el('span'), laid = button('Lay this under', moves.layUnder, { 'aria-pressed': 'false', title: 'Keeps this version as a thin line under what you change next, and lists what has changed' });
  const lengths = el('select', { 'aria-label': 'lengths shown in', title: 'Numbers on this page; the sheet keeps its own unit. The drawings stay in mm, as they print.', onchange: () => { if (isLengthUnit(lengths.value)) moves.lengths(lengths.value); } },
    el('option', { value: 'mm' }, 'shown in millimetres'), el('option', { value: 'in' }, 'shown in inches'));
  const drawn = el('span', { class: 'drawn', hidden: true }, 'Drawings stay in mm, as they print.');
  host.append(jobs, begin, button('Open…', () => file.click()), file, button('Save the sheet', moves.saveFile), undo, redo,
    button('Duplicate', moves.duplicate), button('Remove', moves.remove), removed, button('Swap left and right', moves.mirror), button('Copy left to right', () => moves.copy('left')), button('Copy right to left', () => moves.copy('right')), laid,
    button('Show the client', moves.client), lengths, drawn, kept);
  return {
    jobs: (lines, open) => {
      const shown = lines.filter((line) => line.removed === undefined), [last] = lines.filter((line) => line.removed !== undefined);
      jobs.replaceChildren(...shown.map(({ id, name, changed }) => el('option', { value: id, selected: id === open }, shown.filter((one) => one.name === name).length > 1 ? `${name}, changed ${dayAndTime(changed)}` : name)));
      removed.replaceChildren(...(last ? [button(`Bring back ${last.name}`, () => moves.restore(last.id))] : []));
    },
    steps: (back, again) => {
      undo.disabled = back === undefined;
      redo.disabled = again === undefined;
      undo.title = back ? `undo: ${back}` : '';
      redo.title = again ? `redo: ${again}` : '';
    },
    kept: (words) => { if (kept.textContent !== words) kept.textContent = words; },
    lengths: (unit) => { lengths.value = unit; drawn.hidden = unit === 'mm'; },
    laid: (is) => laid.setAttribute('aria-pressed', String(is)),
  };
}
