import type { Design } from '../../src/checks/design.ts';
import { spreadSteps, type Progress, type ShoeSample } from '../../src/spread/sampled.ts';
import { USUAL_SAMPLING, type Sampling } from '../../src/spread/sampling.ts';

/** As many as the command tries, told of often enough to be stopped at once. */
export const TRIED: Sampling = { ...USUAL_SAMPLING, every: 20 };

/** So long it works before it listens again, ms. */
const SLICE = 80;

export interface Trying {
  readonly tell: (progress: Progress) => void;
  readonly stopped: () => boolean;
  /** Lets what was said meanwhile be heard. */
  readonly pause: () => Promise<void>;
  readonly now: () => number;
}

/** All variants, a slice after the other; undefined where it was stopped. */
export async function tryVariants(design: Design, { tell, stopped, pause, now }: Trying, sampling = TRIED): Promise<readonly ShoeSample[] | undefined> {
  const steps = spreadSteps(design, sampling);
  for (let since = now(); ;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (now() - since < SLICE) continue;
    tell(step.value);
    await pause();
    if (stopped()) return undefined;
    since = now();
  }
}
