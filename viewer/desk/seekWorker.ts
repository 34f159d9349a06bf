import { seekOn, type SeekTold } from './seeking.ts';

const page = self as unknown as { postMessage: (told: SeekTold) => void; onmessage: ((event: MessageEvent<string>) => void) | null };

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
  } catch (error) { page.postMessage({ kind: 'failed', text: error instanceof Error ? error.message : String(error) }); }
};
