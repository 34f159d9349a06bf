import { historyOf, type History, type Kept } from './history.ts';
import { valueAt, type Sheet } from './sheet.ts';
import type { Job, Store } from './store.ts';

/** States of a job's history that are kept on the device. */
const KEPT_STEPS = 200;
/** Removed jobs can be brought back for so long, ms. */
const KEPT_REMOVED = 30 * 24 * 3600 * 1000;
/** At most one write in so long while a hand is working, ms. */
const EVERY = 300;

export interface Jobs {
  readonly list: () => readonly Pick<Job, 'id' | 'name' | 'changed' | 'removed'>[];
  readonly open: (id: string) => History<Sheet> | undefined;
  readonly create: (sheet: Sheet) => string;
  readonly duplicate: (id: string) => string | undefined;
  readonly remove: (id: string) => void;
  readonly restore: (id: string) => void;
  /** Keeps the work on a job, soon; `flush` at once. Answers when it was kept. */
  readonly keep: (id: string, history: History<Sheet>) => void;
  readonly flush: () => Promise<void>;
}

/** The jobs on this device. @param clock milliseconds since 1970; @param newId a name no other job has; @param said called when something was kept */
export async function openJobs(store: Store, clock: () => number, newId: () => string, said: (at: number) => void): Promise<Jobs> {
  const jobs = new Map((await store.all()).map((job) => [job.id, job]));
  for (const { id, removed } of jobs.values()) if (removed !== undefined && clock() - removed > KEPT_REMOVED) { jobs.delete(id); await store.drop(id); }
  const waiting = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    const ids = [...waiting];
    waiting.clear();
    for (const id of ids) { const job = jobs.get(id); if (job) await store.put(job); }
    if (ids.length) said(clock());
  };
  const put = (job: Job): void => {
    jobs.set(job.id, job);
    waiting.add(job.id);
    timer ??= setTimeout(() => void flush(), EVERY);
  };
  const create = (work: Kept<Sheet>): string => {
    const id = newId();
    put({ id, name: nameOf(work), changed: clock(), work });
    return id;
  };
  return {
    list: () => [...jobs.values()].sort((a, b) => b.changed - a.changed).map(({ id, name, changed, removed }) => ({ id, name, changed, ...(removed === undefined ? {} : { removed }) })),
    open: (id) => { const job = jobs.get(id); return job && historyOf<Sheet>(job.work); },
    create: (sheet) => create(historyOf<Sheet>(sheet).kept()),
    duplicate: (id) => { const job = jobs.get(id); return job && create(historyOf<Sheet>(job.work.steps[job.work.at]!.state).kept()); },
    remove: (id) => { const job = jobs.get(id); if (job) put({ ...job, removed: clock() }); },
    restore: (id) => { const job = jobs.get(id); if (job) { const { removed: _, ...back } = job; put(back); } },
    keep: (id, history) => { const job = jobs.get(id); if (job) { const work = shortened(history.kept()); put({ ...job, work, name: nameOf(work), changed: clock() }); } },
    flush,
  };
}

function nameOf({ steps, at }: Kept<Sheet>): string {
  const reference = valueAt(steps[at]!.state, 'job.reference');
  return typeof reference === 'string' && reference !== '' ? reference : 'without a number';
}

function shortened({ steps, at }: Kept<Sheet>): Kept<Sheet> {
  const from = Math.max(0, Math.min(at, steps.length - KEPT_STEPS));
  return { steps: steps.slice(from), at: at - from };
}
