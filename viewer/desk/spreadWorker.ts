import type { Design } from '../../src/checks/design.ts';
import { designWith } from '../../src/designWith.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { readText } from '../keep/sheet.ts';
import type { SpreadAnswer, SpreadAsk } from './spreadAsk.ts';
import { spreadShown, triedShown } from './spreadShown.ts';
import { TRIED, tryVariants } from './tryVariants.ts';
import { lineToPage } from './line.ts';
import { thrownWords } from '../keep/thrown.ts';

const page = lineToPage<SpreadAsk, SpreadAnswer>();

/** The design looked at last, and the number of what is being tried. */
let looked: Design | undefined, trying: number | undefined;

page.onmessage = ({ data }) => {
  if (data.kind === 'stop') trying = undefined;
  else void answerTo(data).catch((error: unknown) => page.postMessage({ kind: 'failed', id: data.id, text: thrownWords(error) }));
};

async function answerTo(ask: Exclude<SpreadAsk, { kind: 'stop' }>): Promise<void> {
  const { id } = ask;
  if (ask.kind === 'look') {
    trying = undefined;
    const sheet = readText(ask.sheet);
    looked = designOf(ask.sheet);
    return page.postMessage({ kind: 'looked', id, shoes: looked && sheet.ok ? spreadShown(looked, sheet.sheet) : [] });
  }
  if (!looked) return;
  const design = looked;
  trying = id;
  const samples = await tryVariants(design, {
    tell: (progress) => page.postMessage({ kind: 'progress', id, ...progress }), stopped: () => trying !== id,
    pause: () => new Promise((go) => setTimeout(go)), now: () => performance.now(),
  });
  if (samples) page.postMessage({ kind: 'tried', id, shoes: triedShown(design, samples, TRIED.samples) });
}

/** Only its shape counts here, not what is made besides. */
function designOf(sheet: string): Design | undefined {
  const reading = readSheet(sheet), designing = reading.ok ? designWith(() => [], reading.fitting, 'quick') : undefined;
  return designing?.ok ? designing.design : undefined;
}
