import { distance, type Point } from '../geometry/point.ts';
import { rootBetween } from '../geometry/solve.ts';
import { tan } from '../geometry/trig.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import { leverAbout, type Carried } from './carried.ts';
import { anglesCovered, beginsAt, contactAt, endsAt, placedAt, stretchAt, type RollBody } from './rollBody.ts';

/** Slopes looked at: positive uphill, the toes higher than the heel. */
export const SLOPES: readonly Rad[] = [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5].map(degrees);

/** Standing on a slope. Roll angles are those of the shoe against the slope, tilts against upright; toe down or forward positive. */
export interface OnSlope {
  readonly slope: Rad;
  /** With the leg held as it stands on the level the shoe meets the slope by rolling as much: where, at rest, and how far ahead of the plumb line from the hip. */
  readonly contact: Point;
  readonly ahead: Mm;
  /** Leaning as one stiff body instead, until the hip stands over the contact: how far, and where then; none where the sole ends before. */
  readonly leaning: { readonly roll: Rad; readonly tilt: Rad; readonly contact: Point } | undefined;
}

export const standingOn = (body: RollBody, carried: Carried, slope: Rad): OnSlope =>
  ({ slope, contact: contactAt(body, slope), ahead: aheadOfPlumb(body, carried, slope, slope), leaning: leaningOn(body, carried, slope) });

/** How far along a slope the contact lies ahead of the plumb line from the hip: on the level that is the lever, uphill the plumb line falls further back. */
const aheadOfPlumb = (body: RollBody, { hip }: Carried, roll: Rad, slope: Rad): Mm =>
  leverAbout(body, hip, roll) + placedAt(body, hip, roll)[1] * tan(slope);

/** The first roll angle, forward uphill and back downhill, at which the plumb line from the hip meets what touches the slope. */
function leaningOn(body: RollBody, carried: Carried, slope: Rad): OnSlope['leaning'] {
  const { from, to } = anglesCovered(body), ahead = (roll: Rad): Mm => aheadOfPlumb(body, carried, roll, slope);
  if (Math.abs(ahead(0)) <= distance(...stretchAt(body, 0)) / 2 + NEAR) return { roll: 0, tilt: -slope, contact: contactAt(body, 0) };
  const way = slope > 0 ? 1 : -1, ends = body.pieces.flatMap((piece) => [beginsAt(piece), endsAt(piece)]);
  const stops = ends.map((roll) => way * roll).filter((roll) => roll > 0 && roll <= (way > 0 ? to : -from)).sort((a, b) => a - b);
  let before = BESIDE;
  for (const stop of stops) {
    const low = way * before, high = way * (stop - BESIDE);
    if (stop - BESIDE > before && ahead(low) * ahead(high) <= 0) {
      const roll = rootBetween(ahead, low, high);
      return { roll, tilt: roll - slope, contact: contactAt(body, roll) };
    }
    before = stop + BESIDE;
  }
  return undefined;
}

/** Beside a joint rather than on it, where a straight stretch would count with its middle. */
const BESIDE: Rad = 1e-9;
const NEAR: Mm = 1e-6;
