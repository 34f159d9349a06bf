import type { Point } from '../../../src/geometry/point.ts';
import type { Mm } from '../../../src/geometry/units.ts';
import { frameAt, laid, PERCENT_SHARES, type WalkOn } from '../../../src/walk/frame.ts';
import type { ShoeWalk, Walking } from '../../../src/walk/walking.ts';

/** A part of the floor, forward from one shoe's zero, and how high a picture of it goes, mm. */
export interface Reach { readonly from: Mm; readonly to: Mm; readonly high: Mm }

/** Room beside the shoes, and above the pivot, where a piece of the leg line is still to be seen. */
const BESIDE: Mm = 14, ABOVE: Mm = 62;

/** What both shoes, and ordinary ones in their place, come over while they roll: so both are drawn at one scale. */
export function reachOf({ shoes }: Walking): Reach {
  const points = shoes.flatMap((shoe) => [shoe.own, shoe.ordinary].flatMap((on) => pointsOver(shoe, on))), pivots = shoes.flatMap((shoe) => [shoe.own, shoe.ordinary].flatMap(pivotsOf));
  const forward = [...points, ...pivots].map(([x]) => x);
  return { from: Math.min(...forward) - BESIDE, to: Math.max(...forward) + BESIDE, high: Math.max(...pivots.map(([, up]) => up)) + ABOVE };
}

/** The rearmost and the foremost corners of a shoe through stance; every tenth percent is near enough. */
const pointsOver = ({ shape: { rear, fore } }: ShoeWalk, on: WalkOn): Point[] =>
  PERCENT_SHARES.filter((_, i) => i % 10 === 0).flatMap((share) => { const { place } = frameAt(on, share); return [...rear, ...fore].map((point) => laid(place, point)); });

const pivotsOf = (on: WalkOn): Point[] => PERCENT_SHARES.filter((_, i) => i % 10 === 0).map((share) => frameAt(on, share).pivot);

/** Round heights under and over all of some values, and lines between them. */
export interface Scale { readonly from: Mm; readonly to: Mm; readonly lines: readonly Mm[] }

/** @param step lines this far apart, mm */
export function scaleOver(values: readonly Mm[], step: Mm): Scale {
  const from = Math.floor(Math.min(...values) / step) * step, to = Math.max(from + step, Math.ceil(Math.max(...values) / step) * step);
  return { from, to, lines: Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step) };
}
