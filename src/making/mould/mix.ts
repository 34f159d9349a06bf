import type { MouldOrder } from '../../fitting/making.ts';
import type { Grams, Mm } from '../../geometry/units.ts';
import type { Hole } from '../places.ts';
import { isPressed } from './groove.ts';
import type { MouldLayout } from './layout.ts';

/** What is weighed out for one cast: for the part itself, for the holes it rises in, and what is lost. */
export interface Mix { readonly cast: Grams; readonly holes: Grams; readonly lost: Grams; readonly total: Grams }

/** What stays in the cup, or is squeezed into the flash groove: a share of all, and for a cup this at least. Common practice. */
const LOST_SHARE = 0.05, LOST_LEAST: Grams = 10;

/**
 * The part weighs its volume once shrunk by the density once set; foam that rises into the holes is as dense.
 * @param fill volume of the cavity, mm³, stretched for shrink
 */
export function mixFor(fill: number, layout: MouldLayout, { cast: { name, density }, shrink: [length, width, height] }: MouldOrder): Mix {
  const weight = (mm3: number): Grams => (mm3 / 1000) * density, cast = weight(fill / (length * width * height));
  const holes = weight([...layout.pour, ...layout.vents].reduce((sum, hole) => sum + columnOf(hole, layout), 0));
  const lost = Math.max(isPressed(name) ? 0 : LOST_LEAST, ((cast + holes) * LOST_SHARE) / (1 - LOST_SHARE));
  return { cast, holes, lost, total: cast + holes + lost };
}

/** The same as a scale is read, in whole grams that add up; rounded up, for short of a gram there is too little. */
export function onScale(mix: Mix): Mix {
  const [cast, holes, lost] = [mix.cast, mix.holes, mix.lost].map(Math.ceil) as [Grams, Grams, Grams];
  return { cast, holes, lost, total: cast + holes + lost };
}

/** Volume of a hole through the lid, mm³. */
function columnOf({ at: [x, y], diameter }: Hole, { rows, ceiling }: MouldLayout): number {
  const nearest = rows.flatMap(({ upper }) => upper).reduce<{ readonly away: Mm; readonly z: Mm }>((best, [px, py, z]) => {
    const away = Math.hypot(px - x, py - y);
    return away < best.away ? { away, z } : best;
  }, { away: Infinity, z: ceiling });
  return (Math.PI / 4) * diameter ** 2 * (ceiling - nearest.z);
}
