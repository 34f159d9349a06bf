import type { Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { heightAt } from '../profile/groundFace.ts';
import { rollX } from '../profile/rollLine.ts';
import { STRETCHES } from './watched.ts';

/**
 * Where the ground face may lie under the last, every so far along the long axis: in nine cases of ten between low and high.
 * Heights above the ground as the shoe is drawn, so that the last stays where it is.
 */
export type Band = readonly BandPlace[];
export interface BandPlace { readonly x: Mm; readonly ground: Mm; readonly low: Mm; readonly high: Mm }

/** Nine in ten of a bell curve lie within so many standard deviations. */
const NINE_IN_TEN = 1.6449;

const placed = ({ last, rocker: { face, line } }: RockerShoe, around: (ground: Mm, i: number) => readonly [Mm, Mm]): Band =>
  Array.from({ length: STRETCHES + 1 }, (_, i) => {
    const x = (last.length * i) / STRETCHES, ground = heightAt(face, rollX(line, [x, 0])), [low, high] = around(ground, i);
    return { x, ground, low, high };
  });

/** From a standard deviation at each place. */
export const bandFrom = (shoe: RockerShoe, deviations: readonly Mm[]): Band =>
  placed(shoe, (ground, i) => { const half = NINE_IN_TEN * (deviations[i] ?? 0); return [ground - half, ground + half]; });

/** From how far low and high lie off at each place. */
export const bandBetween = (shoe: RockerShoe, low: readonly Mm[], high: readonly Mm[]): Band =>
  placed(shoe, (ground, i) => [ground + (low[i] ?? 0), ground + (high[i] ?? 0)]);
