import type { WaysAnswer, WaysAsk } from './waysAsk.ts';
import { waysShown } from './waysShown.ts';
import { lineToPage } from './line.ts';
import { thrownWords } from '../keep/thrown.ts';

const page = lineToPage<WaysAsk, WaysAnswer>();

/** A worker of its own: each kind of pack is sought anew, which takes longer than a hand that drags would wait. */
page.onmessage = ({ data }) => {
  const { id } = data;
  try { page.postMessage({ kind: 'found', id, shoes: waysShown(data) }); }
  catch (error) { page.postMessage({ kind: 'failed', id, text: thrownWords(error) }); }
};
