import { historyAgain, historyOf, type History, type Kept } from './history.ts';
import { valueAt, type Sheet } from './sheet.ts';
import type { Job, Store } from './store.ts';

/** States of a job's history that are kept on the device. */
const KEPT_STEPS = 200;
/** Removed jobs can be brought back for so long, ms. */
const KEPT_REMOVED = 30 * 24 * 3600 * 1000;
/** At most one write in so long while a hand is working, ms. */
const EVERY = 300;

export interface Jobs {
  /** Newest first; a removed job counts from its removal. */
  readonly list: () => readonly Pick<Job, 'id' | 'name' | 'changed' | 'removed'>[];
  readonly open: (id: string) => History<Sheet> | undefined;
  readonly create: (sheet: Sheet) => string;
  /** A job of its own from work that was done, its undo with it. */
  readonly adopt: (work: Kept<Sheet>) => string;
  readonly duplicate: (id: string) => string | undefined;
  readonly remove: (id: string) => void;
  readonly restore: (id: string) => void;
  /** Keeps the work on a job, soon; `flush` at once. A job that did not change is not written. */
  readonly keep: (id: string, history: History<Sheet>) => void;
  /** Another tab has written this job: what this one would have written is left, and the job is as the store has it. */
  readonly reread: (id: string) => Promise<void>;
  /** What waits of this job is not written: another tab's is newer. */
  readonly leave: (id: string) => void;
  /** Writes what waits. What the store did not take waits for the next time; the store's warning tells. */
  readonly flush: () => Promise<void>;
}

/** The jobs on this device. @param clock milliseconds since 1970; @param newId a name no other job has; @param said called when a write ended */
export async function openJobs(store: Store, clock: () => number, newId: () => string, said: (at: number) => void): Promise<Jobs> {
  const jobs = new Map((await store.all()).map((job) => [job.id, job]));
  await dropOld(jobs, store, clock());
  const waiting = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    const due = [...waiting].map((id) => jobs.get(id)!);
    waiting.clear();
    // All begin before the first ends: a page that is being closed has no second turn.
    const ends = await Promise.allSettled(due.map((job) => store.put({ ...job, work: shortened(job.work) })));
    ends.forEach(({ status }, i) => { if (status === 'rejected') waiting.add(due[i]!.id); });
    if (due.length) said(clock());
  };
  const put = (job: Job): void => {
    jobs.set(job.id, job);
    waiting.add(job.id);
    timer ??= setTimeout(() => void flush(), EVERY);
  };
  const adopt = (work: Kept<Sheet>): string => {
    const id = newId();
    put({ id, name: nameOf(work), changed: clock(), work });
    return id;
  };
  const create = (sheet: Sheet): string => adopt(historyOf(sheet).kept());
  return {
    list: () => [...jobs.values()].sort((a, b) => lastTouched(b) - lastTouched(a)).map(({ work: _, ...line }) => line),
    open: (id) => { const job = jobs.get(id); return job && historyAgain(job.work); },
    create, adopt,
    duplicate: (id) => { const job = jobs.get(id); return job && create(nowOf(job.work)); },
    remove: (id) => { const job = jobs.get(id); if (job) put({ ...job, removed: clock() }); },
    restore: (id) => { const job = jobs.get(id); if (job) { const { removed: _, ...back } = job; put(back); } },
    keep: (id, history) => {
      const job = jobs.get(id), work = history.kept();
      if (!job || (work.steps === job.work.steps && work.at === job.work.at)) return;
      // Whoever works on a job wants it, though it was removed elsewhere.
      const { removed: _, ...wanted } = job;
      put({ ...wanted, work, name: nameOf(work), changed: clock() });
    },
    leave: (id) => { waiting.delete(id); },
    reread: async (id) => {
      waiting.delete(id);
      const job = (await store.all()).find((one) => one.id === id);
      if (job) jobs.set(id, job); else jobs.delete(id);
    },
    flush,
  };
}

/** Jobs whose time to be brought back is over go; one the store holds on to goes the next time. */
async function dropOld(jobs: Map<string, Job>, store: Store, now: number): Promise<void> {
  const old = [...jobs.values()].filter(({ removed }) => removed !== undefined && now - removed > KEPT_REMOVED);
  for (const { id } of old) jobs.delete(id);
  await Promise.allSettled(old.map(({ id }) => store.drop(id)));
}

const lastTouched = ({ changed, removed }: Job): number => removed ?? changed;

const nowOf = ({ steps, at }: Kept<Sheet>): Sheet => steps[at]!.state;

function nameOf(work: Kept<Sheet>): string {
  const reference = valueAt(nowOf(work), 'job.reference');
  return typeof reference === 'string' && reference !== '' ? reference : 'without a number';
}

/** The newest steps, and among them the one that is now. */
function shortened({ steps, at }: Kept<Sheet>): Kept<Sheet> {
  const from = Math.max(0, Math.min(at, steps.length - KEPT_STEPS));
  return { steps: steps.slice(from, from + KEPT_STEPS), at: at - from };
}
