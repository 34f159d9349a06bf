import type { Mm } from '../geometry/units.ts';
import { heightsOf, type GroundFace } from './groundFace.ts';
import { LEAST_FOAM, leastAt, zoneAt, type Asked, type Place, type Plan, type Thinnest } from './thinnest.ts';

/**
 * The place round the edge where a sole with a bottom flat across is nearest to its minimum: like `thinnest`, but the floor of
 * a valley between places is read off a parabola through three of them, which lies within a hundredth of a millimetre of it.
 * For many soles that differ little, under a crest that is turned.
 */
export function thinnestRound({ last, places, borders }: Plan, face: GroundFace, { minima, stiffener, inner }: Asked, build: Mm, strikeX: Mm): Thinnest {
  const height = heightsOf(face), innerHeight = heightsOf(inner);
  const minimumAt = ({ at: [x], along }: Place): Mm => Math.max(leastAt(last, minima, x, along < strikeX), stiffener + innerHeight(along) - height(along) + LEAST_FOAM);
  const spareAt = (place: Place): Mm => place.upper + build - height(place.along) - minimumAt(place);
  const spares = places.map(spareAt), zones = places.map(({ at: [x], along }) => zoneAt(last, x, along < strikeX));
  let best = 0, spare = Infinity;
  for (let i = 0; i < places.length; i++) {
    const before = (i + places.length - 1) % places.length, after = (i + 1) % places.length, alike = zones[before] === zones[i] && zones[after] === zones[i];
    const floor = alike ? spares[i]! - depthBelow(spares[before]! - spares[i]!, spares[after]! - spares[i]!, apart(places, before, i), apart(places, i, after)) : spares[i]!;
    if (floor < spare) { best = i; spare = floor; }
  }
  let place = places[best]!;
  for (const border of borders) { const at = spareAt(border); if (at < spare) { place = border; spare = at; } }
  const minimum = minimumAt(place);
  return { at: place.at, zone: zoneAt(last, place.at[0], place.along < strikeX), thickness: spare + minimum, minimum, by: 'thickness asked', spare };
}

/** From one place to the next, which may lie beyond the beginning of the edge, about as the step between the others. */
const apart = (places: readonly Place[], from: number, to: number): number => (to > from ? places[to]!.w - places[from]!.w : places[1]!.w - places[0]!.w);

/** How far the parabola through three values, given as what the outer two lie above the middle one, goes below that. */
function depthBelow(before: Mm, after: Mm, back: number, ahead: number): Mm {
  if (!(before > 0 && after > 0)) return 0;
  const bend = (before / back + after / ahead) / (back + ahead), slope = (after * back) / (ahead * (back + ahead)) - (before * ahead) / (back * (back + ahead));
  return (slope * slope) / (4 * bend);
}
