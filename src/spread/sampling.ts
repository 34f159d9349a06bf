/** How the spread is sampled. */
export interface Sampling {
  readonly samples: number;
  readonly seed: number;
  /** Variants solved before it is told how far it has come. */
  readonly every: number;
}
export const USUAL_SAMPLING: Sampling = { samples: 2000, seed: 1, every: 50 };
