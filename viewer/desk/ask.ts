import type { Paper } from '../../src/exports/drawing.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { DeskAnswer, Ask, ExtrasAsked, FieldShown, FileShown, Outcome } from './protocol.ts';

/** While a hand is dragging the solids may be this coarse; when it rests they are as fine as the sheet asks. */
export const DRAG_GAP: Mm = 0.6, FINE_GAP: Mm = 0;
/** A hand rests when nothing has changed for so long, ms. */
const RESTS = 180;

/** What is to be seen of the sheet of a job, on what paper, and what its sentences name lengths in. */
export interface Wanted { readonly job: string; readonly sheet: string; readonly paper: Paper; readonly lengths: LengthUnit; readonly extras: ExtrasAsked }

/** `current` is false where the page has gone on meanwhile and a newer answer is on its way. */
export interface Told { readonly outcome: Outcome; readonly fine: boolean; readonly current: boolean; readonly job: string; readonly sheet: string }

/**
 * The page's end of the worker. Only the newest sheet counts: while one is worked out, newer ones replace each other, and
 * an answer that the page has overtaken is told as not current.
 */
export function openDesk(worker: Worker, tell: (told: Told) => void, failed: (text: string) => void): {
  readonly show: (wanted: Wanted) => void;
  readonly files: (sheet: string) => Promise<readonly FileShown[]>;
  readonly fields: () => Promise<readonly FieldShown[]>;
} {
  let last = 0, busy: { readonly id: number; readonly asked: Wanted; readonly fine: boolean } | undefined;
  let wanted: Wanted | undefined, next: { readonly fine: boolean } | undefined, rest: ReturnType<typeof setTimeout> | undefined;
  const ask = (message: Ask): void => worker.postMessage(message);
  const waiting = new Map<number, { readonly done: (answer: DeskAnswer) => void; readonly not: (error: Error) => void }>();
  const asked = (message: (id: number) => Ask): Promise<DeskAnswer> => new Promise((done, not) => { waiting.set(++last, { done, not }); ask(message(last)); });
  const start = (): void => {
    if (busy || !next || !wanted) return;
    const { fine } = next, { job: _, ...look } = wanted;
    next = undefined;
    busy = { id: ++last, asked: wanted, fine };
    ask({ kind: 'design', id: last, ...look, chordGap: fine ? FINE_GAP : DRAG_GAP });
  };
  worker.onmessage = ({ data }: MessageEvent<DeskAnswer>) => {
    const waits = waiting.get(data.id);
    waiting.delete(data.id);
    if (waits && data.kind === 'failed') waits.not(new Error(data.text));
    else if (waits) waits.done(data);
    else {
      const was = busy;
      busy = undefined;
      if (data.kind === 'failed') failed(data.text);
      else if (data.kind === 'design' && was?.id === data.id) tell({ outcome: data.outcome, fine: was.fine, current: was.asked === wanted, job: was.asked.job, sheet: was.asked.sheet });
      start();
    }
  };
  worker.onerror = ({ message }) => failed(message || 'the page\'s worker could not be loaded');
  return {
    show: (asked) => {
      // Only how it is looked at has changed: no hand is dragging.
      const fine = asked.sheet === wanted?.sheet;
      wanted = asked;
      next = { fine };
      clearTimeout(rest);
      if (!fine) rest = setTimeout(() => { next = { fine: true }; start(); }, RESTS);
      start();
    },
    files: async (sheet) => {
      const answer = await asked((id) => ({ kind: 'files', id, sheet }));
      return answer.kind === 'files' ? answer.files : [];
    },
    fields: async () => {
      const answer = await asked((id) => ({ kind: 'fields', id }));
      return answer.kind === 'fields' ? answer.fields : [];
    },
  };
}
