/** Random numbers that come out the same each run: xorshift32 (G. Marsaglia, J. Stat. Softw. 8 (2003) 14). */
export interface Chance { readonly between: (least: number, most: number) => number; readonly oneOf: <T>(items: readonly T[]) => T }

export function chanceFrom(seed: number): Chance {
  let state = (seed * 2654435761) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13; state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5; state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i++) next();
  return { between: (least, most) => least + (most - least) * next(), oneOf: (items) => items[Math.floor(next() * items.length)]! };
}
