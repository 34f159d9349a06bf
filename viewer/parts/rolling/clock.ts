/** A foot is on the floor for about so long at an easy pace, s: six tenths of a cycle of 1.1 s. Common practice of gait tables, from memory. */
export const STANCE_TIME = 0.7;
/** Shown slowly, everything takes so many times as long. */
export const SLOWLY = 4;
/** At toe-off the picture stands still for so long before it begins anew, s. */
const STANDS = 0.6;

/** Where in stance the picture is, and how long it has stood at its end. */
export interface Moment { readonly share: number; readonly stood: number }

/** The moment so many seconds later; after the end it begins anew, unless it is to run once. */
export function later({ share, stood }: Moment, seconds: number, { slow, once }: { readonly slow: boolean; readonly once: boolean }): Moment {
  if (share < 1) return { share: Math.min(1, share + seconds / (slow ? SLOWLY : 1) / STANCE_TIME), stood: 0 };
  return once || stood + seconds < STANDS ? { share, stood: stood + seconds } : { share: 0, stood: 0 };
}
