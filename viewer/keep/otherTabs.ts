import type { Store } from './store.ts';

/** What tabs of one device tell each other: which job was written. */
export interface Wire { readonly postMessage: (id: string) => void; onmessage: ((event: MessageEvent<string>) => void) | null }

/** The store, telling other tabs of every job once it is written. @param wrote called with a job another tab has written */
export function toldToOthers(store: Store, wire: Wire, wrote: (id: string) => void): Store {
  wire.onmessage = ({ data }) => wrote(data);
  return {
    all: store.all,
    put: async (job) => { await store.put(job); wire.postMessage(job.id); },
    drop: store.drop,
    get warning() { return store.warning; },
  };
}
