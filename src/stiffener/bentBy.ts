/** Loads a pack is looked at under. */
export const BENT_BY = ['bench', 'walking', 'stumble'] as const;
export type BentBy = (typeof BENT_BY)[number];
