import type { Minima } from '../fitting/fitting.ts';
import type { Mm } from '../geometry/units.ts';
import { heightsOf } from './groundFace.ts';
import type { Judged } from './rocker.ts';
import { bordersOver, LEAST_FOAM, leastAt, rimOf, zoneAt, type BarePlan, type Lying, type Zone } from './thinnest.ts';

/**
 * The place round the edge where a sole with a bottom flat across is nearest to its minimum: like `thinnest`, but the floor of
 * a valley between places is read off a parabola through three of them, which lies within a hundredth of a millimetre of it.
 * For many soles that differ little, under a crest that is turned: what hangs on neither face nor build is worked out once for
 * each last, and where the places lie once for each outline.
 */
export function thinnestRound(plan: BarePlan, minima: Minima): Judged {
  const { last, upper, edge, line } = plan, rim = rimOf(edge, line), n = rim.length, borders = bordersOver(plan, rim);
  const uppers = new Float64Array(n), least = new Float64Array(n), spares = new Float64Array(n), ahead: Zone[] = [], zones: Zone[] = [];
  for (let i = 0; i < n; i++) {
    const { at: [x, y] } = rim[i]!;
    uppers[i] = upper(x, y); least[i] = leastAt(last, minima, x, false); ahead.push(zoneAt(last, x, false));
  }
  const behind = zoneAt(last, 0, true), leastBehind = leastAt(last, minima, 0, true);
  const judge: Judged['judge'] = (face, { stiffener, inner }, build, strikeX) => {
    const height = heightsOf(face), innerHeight = heightsOf(inner), leastFor = ({ at: [x], along }: Lying): Mm => leastAt(last, minima, x, along < strikeX);
    const minimumOver = (along: Mm, ground: Mm, asked: Mm): Mm => Math.max(asked, stiffener + innerHeight(along) - ground + LEAST_FOAM);
    const spareAt = (along: Mm, high: Mm, asked: Mm): Mm => { const ground = height(along); return high + build - ground - minimumOver(along, ground, asked); };
    for (let i = 0; i < n; i++) {
      const { along } = rim[i]!, isBehind = along < strikeX;
      spares[i] = spareAt(along, uppers[i]!, isBehind ? leastBehind : least[i]!);
      zones[i] = isBehind ? behind : ahead[i]!;
    }
    const floor = lowestFloor(rim, spares, zones);
    let place: Lying = rim[floor.best]!, { spare } = floor;
    for (const border of borders) { const at = spareAt(border.along, border.upper, leastFor(border)); if (at < spare) { place = border; spare = at; } }
    const { at, along } = place, minimum = minimumOver(along, height(along), leastFor(place));
    return { at, zone: zoneAt(last, at[0], along < strikeX), thickness: spare + minimum, minimum, by: 'thickness asked', spare };
  };
  return { judge, furthest: rim.reduce((most, { along }) => Math.max(most, along), last.length) };
}

/** The lowest valley round the edge; across the end of a zone, where the minimum jumps, nothing is read between places. */
function lowestFloor(rim: readonly Lying[], spares: Float64Array, zones: readonly Zone[]): { readonly best: number; readonly spare: Mm } {
  let best = 0, spare = Infinity;
  for (let i = 0; i < rim.length; i++) {
    const before = i === 0 ? rim.length - 1 : i - 1, after = i === rim.length - 1 ? 0 : i + 1, alike = zones[before] === zones[i] && zones[after] === zones[i];
    const floor = alike ? spares[i]! - depthBelow(spares[before]! - spares[i]!, spares[after]! - spares[i]!, apart(rim, before, i), apart(rim, i, after)) : spares[i]!;
    if (floor < spare) { best = i; spare = floor; }
  }
  return { best, spare };
}

/** From one place to the next, which may lie beyond the beginning of the edge, about as the step between the others. */
const apart = (places: readonly Lying[], from: number, to: number): number => (to > from ? places[to]!.w - places[from]!.w : places[1]!.w - places[0]!.w);

/** How far the parabola through three values, given as what the outer two lie above the middle one, goes below that. */
function depthBelow(before: Mm, after: Mm, back: number, ahead: number): Mm {
  if (!(before > 0 && after > 0)) return 0;
  const bend = (before / back + after / ahead) / (back + ahead), slope = (after * back) / (ahead * (back + ahead)) - (before * ahead) / (back * (back + ahead));
  return (slope * slope) / (4 * bend);
}
