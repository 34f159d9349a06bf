import type { Kept } from './history.ts';
import type { Sheet } from './sheet.ts';

/** A job as it is kept on this device. */
export interface Job {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970, as the device's clock says. */
  readonly changed: number;
  /** Set while it is removed; it can be brought back. */
  readonly removed?: number;
  readonly work: Kept<Sheet>;
}

/** A place jobs are kept in. */
export interface Store {
  readonly all: () => Promise<readonly Job[]>;
  readonly put: (job: Job) => Promise<void>;
  readonly drop: (id: string) => Promise<void>;
  /** A sentence where nothing outlasts the page. */
  readonly warning?: string;
}

/** Kept only as long as the page is open. */
export function memoryStore(warning?: string): Store {
  const jobs = new Map<string, Job>();
  return {
    all: async () => [...jobs.values()],
    put: async (job) => { jobs.set(job.id, job); },
    drop: async (id) => { jobs.delete(id); },
    ...(warning ? { warning } : {}),
  };
}

const NAME = 'rockerbench', TABLE = 'jobs';

/** Kept in the browser's own database on this device; in memory where that is shut (a private window). */
export async function deviceStore(): Promise<Store> {
  try {
    const base = await opened();
    const table = (mode: IDBTransactionMode): IDBObjectStore => base.transaction(TABLE, mode).objectStore(TABLE);
    return {
      all: () => done(table('readonly').getAll() as IDBRequest<Job[]>),
      put: async (job) => { await done(table('readwrite').put(job)); },
      drop: async (id) => { await done(table('readwrite').delete(id)); },
    };
  } catch {
    return memoryStore('This browser keeps nothing on the device here (a private window?): save the sheet before you close the page.');
  }
}

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => { request.result.createObjectStore(TABLE, { keyPath: 'id' }); };
  return done(request);
}

const done = <Result>(request: IDBRequest<Result>): Promise<Result> => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error ?? new Error('the device did not keep it'));
});
