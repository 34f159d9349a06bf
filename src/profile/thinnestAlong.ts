import { lowestBetween } from '../geometry/solve.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import type { UpperFace } from '../last/upperFace.ts';
import { heightsOf, type GroundFace } from './groundFace.ts';
import { LEAST_FOAM, leastAt, zoneAt, type Asked, type Thinnest } from './thinnest.ts';

/** What thickness is judged along: from the rearmost to the foremost place of the edge, and how far aside. */
export interface Axis { readonly last: Last; readonly upper: UpperFace; readonly back: Mm; readonly fore: Mm; readonly asideAt: (x: Mm) => Mm }

/** Places looked at stand no further apart, and a valley between two of them is no deeper than this below them (see `thinnest`). */
const APART: Mm = 5, DEEPER: Mm = 1.5;
/** A zone is judged up to this near its end: its own minimum holds there. */
const NEAR: Mm = 1e-9;

/**
 * The place along the axis where the sole is nearest to its minimum: what `thinnest` finds over the whole plan of a sole
 * whose crest is square across, for there thickness at an x is the same all across, or least on the axis.
 */
export function thinnestAlong({ last, upper, back, fore, asideAt }: Axis, face: GroundFace, { minima, stiffener, inner }: Asked, build: Mm, strikeX: Mm): Thinnest {
  const height = heightsOf(face), innerHeight = heightsOf(inner);
  const stackAt = (x: Mm): Mm => stiffener + innerHeight(x) - height(x) + LEAST_FOAM;
  const spareAt = (x: Mm): Mm => upper(x, asideAt(x)) + build - height(x) - Math.max(leastAt(last, minima, x, x < strikeX), stackAt(x));
  const x = lowestWithin(stretches([back, strikeX, last.seatLength, last.tread, ...(last.heights ?? []).map(([at]) => at), fore]), spareAt);
  const asked = leastAt(last, minima, x, x < strikeX), minimum = Math.max(asked, stackAt(x)), spare = spareAt(x), at: Point = [x, asideAt(x)];
  return { at, zone: zoneAt(last, x, x < strikeX), thickness: spare + minimum, minimum, by: minimum > asked ? 'foam that must stay' : 'thickness asked', spare };
}

type Stretch = readonly [from: Mm, to: Mm];

/** From the first place to the last, cut at all between them: within a stretch nothing jumps. */
function stretches([back, ...others]: readonly Mm[]): Stretch[] {
  const fore = others.at(-1)!, cuts = [back!, ...others.slice(0, -1).filter((x) => x > back! && x < fore).sort((a, b) => a - b), fore];
  return cuts.slice(1).flatMap((to, i): Stretch[] => (to - cuts[i]! > 2 * NEAR ? [[cuts[i]! + NEAR, to - NEAR]] : []));
}

function lowestWithin(all: readonly Stretch[], of: (x: Mm) => Mm): Mm {
  const looked = all.map(([from, to]) => {
    const n = Math.ceil((to - from) / APART), places = Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
    return { places, heights: places.map(of) };
  });
  let best = NaN, least = Infinity;
  const take = (x: Mm, height: Mm): void => { if (height < least) { best = x; least = height; } };
  for (const { places, heights } of looked) heights.forEach((height, i) => take(places[i]!, height));
  const reach = least + DEEPER;
  for (const { places, heights } of looked) for (let i = 0; i < places.length; i++) {
    const height = heights[i]!, before = heights[i - 1] ?? Infinity, after = heights[i + 1] ?? Infinity;
    if (height > reach || before < height || after < height) continue;
    const x = lowestBetween(of, places[Math.max(0, i - 1)]!, places[Math.min(places.length - 1, i + 1)]!, 1e-5);
    take(x, of(x));
  }
  return best;
}
