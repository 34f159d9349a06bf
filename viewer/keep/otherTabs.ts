import type { Store } from './store.ts';

/** What tabs of one device tell each other: which job was written. */
export interface Wire { readonly postMessage: (id: string) => void; onmessage: ((event: MessageEvent<string>) => void) | null }

export interface OtherTabs {
  /** The store, telling other tabs of every job once it is written. */
  readonly store: Store;
  /** @param wrote called with each job another tab has written, those told before somebody listened too */
  readonly listen: (wrote: (id: string) => void) => void;
}

export function heardFromOthers(store: Store, wire: Wire): OtherTabs {
  const early: string[] = [];
  wire.onmessage = ({ data }) => { early.push(data); };
  return {
    store: {
      all: store.all,
      put: async (job) => { await store.put(job); wire.postMessage(job.id); },
      drop: store.drop,
      get warning() { return store.warning; },
    },
    listen: (wrote) => { wire.onmessage = ({ data }) => wrote(data); early.splice(0).forEach(wrote); },
  };
}
