import type { WaysAnswer, WaysAsk, WaysShown } from '../../desk/waysAsk.ts';

export interface WaysFinder {
  /** Another sheet takes the place of the one that is looked at. */
  readonly ask: (ask: Omit<WaysAsk, 'id'>) => void;
  /** The sheet is being changed: whatever is being sought is given up, so that nothing else has to wait for it. */
  readonly stop: () => void;
}

/** Asks for other ways to the stiffeners of one sheet at a time, in a worker of their own. */
export function waysFinder(tell: (shoes: readonly WaysShown[]) => void, failed: (why: string) => void): WaysFinder {
  let worker: Worker | undefined, busy = false, last = 0;
  function begun(): Worker {
    const made = new Worker(new URL('../../desk/waysWorker.ts', import.meta.url), { type: 'module' });
    made.onmessage = ({ data }: MessageEvent<WaysAnswer>) => {
      busy = false;
      if (data.kind === 'failed') failed(data.text); else tell(data.shoes);
    };
    made.onerror = ({ message }) => { stop(); failed(message || 'its worker could not be loaded'); };
    return made;
  }
  /** One that has answered waits for the next sheet. */
  function stop(): void {
    if (!busy) return;
    worker?.terminate();
    worker = undefined;
    busy = false;
  }
  return {
    stop,
    ask: (asked) => {
      stop();
      worker ??= begun();
      busy = true;
      worker.postMessage({ ...asked, id: ++last } satisfies WaysAsk);
    },
  };
}
