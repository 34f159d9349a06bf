import { chanceAfter } from '../../src/geometry/chance.ts';

/** Random numbers that come out the same each run. */
export interface Chance { readonly between: (least: number, most: number) => number; readonly oneOf: <T>(items: readonly T[]) => T }

export function chanceFrom(seed: number): Chance {
  const next = chanceAfter(seed * 2654435761);
  return { between: (least, most) => least + (most - least) * next(), oneOf: (items) => items[Math.floor(next() * items.length)]! };
}
