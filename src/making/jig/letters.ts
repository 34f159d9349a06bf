import type { Mm } from '../../geometry/units.ts';

/** Ribs are lettered from the heel: A, B, ... Z, then AA, AB, ... */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26)), before = Math.floor(index / 26);
  return before === 0 ? last : letterOf(before - 1) + last;
}

/** How wide a line of lettering runs, about: each program letters with a face of its own. */
export const wide = (text: string, size: Mm): Mm => text.length * size * 0.8;
