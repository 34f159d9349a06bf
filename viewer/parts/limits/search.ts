import type { SeekTold } from '../../desk/seeking.ts';

/** Begins to seek, in a worker of its own. What comes is told until it is done, fails or is stopped. @returns what stops it */
export function beginSearch(sheet: string, tell: (told: SeekTold) => void): () => void {
  const worker = new Worker(new URL('../../desk/seekWorker.ts', import.meta.url), { type: 'module' }), stop = (): void => { worker.onmessage = worker.onerror = null; worker.terminate(); };
  worker.onmessage = ({ data }: MessageEvent<SeekTold>) => {
    if (data.kind === 'done' || data.kind === 'failed') stop();
    tell(data);
  };
  worker.onerror = ({ message }) => { stop(); tell({ kind: 'failed', text: message || 'the worker could not be loaded' }); };
  worker.postMessage(sheet);
  return stop;
}
