import { seekOn, type SeekTold } from './seeking.ts';
import { lineToPage } from './line.ts';
import { thrownWords } from '../keep/thrown.ts';

const page = lineToPage<string, SeekTold>();

/** How far it has come is told no more often than this, ms. */
const OFTEN = 80;

/** A worker of its own, so that the bench goes on meanwhile; it is ended to stop it. */
page.onmessage = ({ data }) => {
  let told = -Infinity;
  try {
    for (const step of seekOn(data)) {
      if (step.kind === 'going' && performance.now() - told < OFTEN) continue;
      told = performance.now();
      page.postMessage(step);
    }
  } catch (error) { page.postMessage({ kind: 'failed', text: thrownWords(error) }); }
};
