import type { WaysAnswer, WaysAsk } from './waysAsk.ts';
import { waysShown } from './waysShown.ts';

const page = self as unknown as { postMessage: (answer: WaysAnswer) => void; onmessage: ((event: MessageEvent<WaysAsk>) => void) | null };

/** A worker of its own: each kind of pack is sought anew, which takes longer than a hand that drags would wait. */
page.onmessage = ({ data }) => {
  const { id } = data;
  try { page.postMessage({ kind: 'found', id, shoes: waysShown(data) }); }
  catch (error) { page.postMessage({ kind: 'failed', id, text: error instanceof Error ? error.message : String(error) }); }
};
