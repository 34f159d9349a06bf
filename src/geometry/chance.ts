import { cos } from './trig.ts';

/** Even numbers between 0 and 1, both left out; the same seed gives the same row. */
export const chance = (seed: number): (() => number) => chanceAfter(Math.imul(seed, 0x9e3779b1) ^ 0x5bd1e995);

/** The same, begun at any whole number. Source: xorshift32, G. Marsaglia, J. Stat. Softw. 8 (2003) 14. */
export function chanceAfter(begin: number): () => number {
  let state = begin >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13; state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5; state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}

/** Errors of a bell curve with mean 0 and standard deviation 1. Source: Box and Muller, Ann. Math. Stat. 29 (1958) 610 (from memory). */
export const bellCurve = (even: () => number): (() => number) => () => {
  const far = Math.sqrt(-2 * logarithm(even()));
  return far * cos(2 * Math.PI * even());
};

const TERMS = 12;

/**
 * Natural logarithm from additions, multiplications and divisions alone, for the last digits of the language's own are left
 * to each engine: ln x = 2 (t + t³/3 + …) with t = (x − 1) / (x + 1), x brought near 1 by doubling.
 */
export function logarithm(x: number): number {
  let m = x, doubled = 0;
  while (m < 0.7) { m *= 2; doubled++; }
  while (m > 1.4) { m /= 2; doubled--; }
  const t = (m - 1) / (m + 1), square = t * t;
  let sum = 0;
  for (let k = TERMS; k >= 0; k--) sum = sum * square + 1 / (2 * k + 1);
  return 2 * t * sum - doubled * Math.LN2;
}
