import type { WaysAnswer, WaysAsk, WaysShown } from '../../desk/waysAsk.ts';

/** Asks for other ways, one sheet after the other: while one is looked at, newer ones replace each other. @returns asks for a sheet */
export function waysFinder(tell: (shoes: readonly WaysShown[]) => void, failed: (why: string) => void): (ask: Omit<WaysAsk, 'id'>) => void {
  const worker = new Worker(new URL('../../desk/waysWorker.ts', import.meta.url), { type: 'module' });
  let last = 0, busy = false, next: Omit<WaysAsk, 'id'> | undefined;
  const start = (): void => {
    if (busy || !next) return;
    const ask: WaysAsk = { ...next, id: ++last };
    next = undefined;
    busy = true;
    worker.postMessage(ask);
  };
  worker.onmessage = ({ data }: MessageEvent<WaysAnswer>) => {
    busy = false;
    if (next) return start();
    if (data.kind === 'failed') failed(data.text); else tell(data.shoes);
  };
  worker.onerror = ({ message }) => { busy = false; failed(message || 'its worker could not be loaded'); };
  return (ask) => { next = ask; start(); };
}
