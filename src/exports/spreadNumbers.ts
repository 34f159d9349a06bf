import type { Band } from '../spread/band.ts';
import type { ShoeSpread } from '../spread/linear.ts';
import type { ShoeSample } from '../spread/sampled.ts';

/** How sure a shoe is, for design.json: one standard deviation each; angles in degrees, lengths in mm. */
export const spreadNumbers = ({ results, influences, band }: ShoeSpread): object => ({
  results: results.map(({ key, label, unit, value, deviation }) => ({ key, label, unit, value, deviation })),
  measures: influences.map(({ field, side, label, unit, value, accuracy, accuracyFrom, estimated, step, moves, share, noShape }) =>
    ({ field, side, label, unit, value, accuracy, accuracyFrom, estimated, share, perStep: step, moves, noShape: { less: noShape.less, more: noShape.more } })),
  band: band && bandNumbers(band),
});

const bandNumbers = (band: Band): object => band.map(({ x, ground, low, high }) => ({ xMm: x, groundMm: ground, lowMm: low, highMm: high }));

/** What the variants of a shoe came to: nine in ten lie between low and high. */
export const sampleNumbers = ({ side, results, noShape, band }: ShoeSample): object => ({
  side, noShape, results: results.map(({ key, label, unit, value, low, middle, high, deviation }) => ({ key, label, unit, value, low, middle, high, deviation })), band: band && bandNumbers(band),
});
