import { GRAVITY, inDegrees, type Rad } from '../geometry/units.ts';
import type { FoamName } from '../materials/materials.ts';
import { layersOf, type Softness, type Stood } from './layer.ts';
import type { RollBody } from './rollBody.ts';
import { squashUnder, type Squash } from './squash.ts';

/** How many feet carry the body; on two each carries half. */
export type Feet = 1 | 2;

/** Standing still on a sole that squashes, its foam and outsole the softest or the hardest of what is sold under their names. */
export interface Stand extends Squash {
  /** How hard all feet on the floor resist a small turn, N·mm for each radian, and what a stiff body of this weight needs to stay up. */
  readonly holdsAll: number;
  readonly needs: number;
}

/** N·mm for each radian in N·m for each degree. */
export const perDegree = (stiffness: number): number => stiffness / (1000 * inDegrees(1 as Rad));

/**
 * Works out how a shoe stands under a body at rest. The body counts as one stiff piece with its mass at the hip, turning over
 * the soles: to stay up by them alone, they must resist a turn by more than mass × gravity × hip height.
 * @param mass kg, greater than 0; @param foam another foam than the one ordered
 */
export function standingUnder(shoe: Stood, body: RollBody, mass: number): (softness: Softness, feet: Feet, foam?: FoamName) => Stand {
  const layers = layersOf(shoe), { rocker: { hip: [, up] } } = shoe;
  return (softness, feet, foam) => {
    const squash = squashUnder(body, layers(softness, foam), (mass * GRAVITY) / feet);
    return { ...squash, holdsAll: squash.holds * feet, needs: mass * GRAVITY * (up - squash.depth) };
  };
}
