import type { Kept } from './history.ts';
import type { Sheet } from './sheet.ts';

/** A job as it is kept on this device. */
export interface Job {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970, as the device's clock says. */
  readonly changed: number;
  /** When it was removed, while it is; it can be brought back. */
  readonly removed?: number;
  readonly work: Kept<Sheet>;
}

/** A place jobs are kept in. `put` and `drop` reject where the place did not take it. */
export interface Store {
  readonly all: () => Promise<readonly Job[]>;
  readonly put: (job: Job) => Promise<void>;
  readonly drop: (id: string) => Promise<void>;
  /** A sentence while the work does not outlast the page. */
  readonly warning?: string | undefined;
}

/** Kept only as long as the page is open. */
export function memoryStore(warning?: string): Store {
  const jobs = new Map<string, Job>();
  return {
    all: async () => [...jobs.values()],
    put: async (job) => { jobs.set(job.id, job); },
    drop: async (id) => { jobs.delete(id); },
    warning,
  };
}

const NAME = 'rockerbench', TABLE = 'jobs';

const SHUT = 'This browser keeps nothing on the device here (a private window?): save the sheet before you close the page.';
const UNKEPT = 'The device did not take the last change (is it full?): save the sheet before you close the page.';

/** Kept in the browser's own database on this device; in memory where that is shut (a private window). */
export async function deviceStore(): Promise<Store> {
  try {
    const base = await opened(), all = (): Promise<readonly Job[]> => done(base.transaction(TABLE).objectStore(TABLE).getAll() as IDBRequest<Job[]>);
    await all();                                                // what opens may still fail at the first reading
    return writing(base, all);
  } catch {
    return memoryStore(SHUT);
  }
}

function writing(base: IDBDatabase, all: Store['all']): Store {
  let warning: string | undefined;
  const write = async (act: (table: IDBObjectStore) => void): Promise<void> => {
    try {
      await written(base, act);
      warning = undefined;
    } catch (error) {
      warning = UNKEPT;
      throw error;
    }
  };
  return { all, put: (job) => write((table) => table.put(job)), drop: (id) => write((table) => table.delete(id)), get warning() { return warning; } };
}

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => { request.result.createObjectStore(TABLE, { keyPath: 'id' }); };
  return done(request);
}

const done = <Result>(request: IDBRequest<Result>): Promise<Result> => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error ?? new Error('the device gave no answer'));
});

/** Kept is what the whole transaction kept: a full disk shows only at its end. */
const written = (base: IDBDatabase, act: (table: IDBObjectStore) => void): Promise<void> => new Promise((resolve, reject) => {
  const transaction = base.transaction(TABLE, 'readwrite');
  transaction.oncomplete = () => resolve();
  transaction.onabort = () => reject(transaction.error ?? new Error('the device did not keep it'));
  act(transaction.objectStore(TABLE));
});
