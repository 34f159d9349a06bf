import { SOLVED } from './tolerances.ts';

/**
 * Where a continuous function crosses zero between two ends of opposite sign, by Brent's method.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4 (from memory).
 * @throws RangeError when both ends have the same sign
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, within = SOLVED): number {
  let a = low, b = high, fa = f(a), fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new RangeError(`a root needs ends of opposite sign, got ${fa} at ${a} and ${fb} at ${b}`);
  let c = a, fc = fa, step = b - a, before = step;
  for (let i = 0; i < 200; i++) {
    if (fb * fc > 0) { c = a; fc = fa; step = before = b - a; }
    if (Math.abs(fc) < Math.abs(fb)) { a = b; b = c; c = a; fa = fb; fb = fc; fc = fa; }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + within / 2, half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || fb === 0) return b;
    if (Math.abs(before) < tolerance || Math.abs(fa) <= Math.abs(fb)) { step = before = half; }
    else {
      const s = fb / fa;
      let p: number, q: number;
      if (a === c) { p = 2 * half * s; q = 1 - s; }
      else {
        const r = fb / fc, t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q; else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(before * q))) { before = step; step = p / q; }
      else { step = before = half; }
    }
    a = b; fa = fb;
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;
}

/** Zero of a nearly straight function by secants, begun at 0 and at a guess near the zero. */
export function zeroNear(f: (x: number) => number, guess: number, within = 1e-12): number {
  let before = 0, valueBefore = f(0), x = guess;
  for (let i = 0; i < 40 && Math.abs(x - before) > within; i++) {
    const value = f(x);
    if (value === valueBefore) break;
    const next = x - (value * (x - before)) / (value - valueBefore);
    before = x; valueBefore = value; x = next;
  }
  return x;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The place of the least value of a function with one valley between two ends: by golden section, and where the floor of
 * the valley is round, by the root of its slope, for a round floor hides its lowest place in the last digits of its height.
 */
export function lowestBetween(f: (x: number) => number, low: number, high: number, within = 1e-7): number {
  let a = low, b = high, c = b - GOLDEN * (b - a), d = a + GOLDEN * (b - a), fc = f(c), fd = f(d);
  while (b - a > within) {
    if (fc < fd) { b = d; d = c; fd = fc; c = b - GOLDEN * (b - a); fc = f(c); }
    else { a = c; c = d; fc = fd; d = a + GOLDEN * (b - a); fd = f(d); }
  }
  const sharp = (a + b) / 2, round = levelNear(f, sharp, (high - low) / 1000);
  return round !== undefined && f(round) <= f(sharp) + SAME_HEIGHT ? round : sharp;
}

const SAME_HEIGHT = 1e-11;

/** Where a function rises as much to one side as to the other, a little way off; undefined where it does not near a place. */
function levelNear(f: (x: number) => number, x: number, step: number): number | undefined {
  const tilt = (at: number): number => f(at + step) - f(at - step), low = x - step, high = x + step;
  return tilt(low) < 0 && tilt(high) > 0 ? rootBetween(tilt, low, high, 1e-14) : undefined;
}

/** Asked again for the same number, it does not work it out again. */
export function remembering<Found>(work: (x: number) => Found): (x: number) => Found {
  const known = new Map<number, Found>();
  return (x) => {
    if (!known.has(x)) known.set(x, work(x));
    return known.get(x)!;
  };
}

export const clamp = (x: number, least: number, most: number): number => Math.min(most, Math.max(least, x));

/** Smooth step from 0 at t = 0 to 1 at t = 1, level at both ends (cubic). */
export function smoothStep(t: number): number {
  const k = clamp(t, 0, 1);
  return k * k * (3 - 2 * k);
}
