import type { Mm } from '../geometry/units.ts';
import type { Carried } from './carried.ts';
import { UPRIGHT, type RollBody } from './rollBody.ts';

/** What the comparison is with, in words. */
export const ORDINARY = 'an ordinary shoe of the same heights: flat sole, square heel, bending at the ball';

/**
 * An ordinary shoe under the same foot at the same heights and pitch: a flat sole with a square heel corner at the back, which
 * bends at the ball. Toe down, its forepart stays on the floor and the rest turns over the ball line, so the contact
 * stays there. Carries the same pivot and hip, at the same places.
 * @param back rear end of the sole along the walking line
 */
export const ordinaryBody = ({ ball: [ball] }: Carried, back: Mm): RollBody => ({
  pieces: [
    { kind: 'corner', at: [back, 0], from: -UPRIGHT, to: 0 },
    { kind: 'edge', from: [back, 0], to: [ball, 0], angle: 0 },
    { kind: 'corner', at: [ball, 0], from: 0, to: UPRIGHT },
  ],
});
