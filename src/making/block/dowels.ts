import { distance, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder } from '../../fitting/making.ts';
import type { Hole } from '../places.ts';

/** Least foam left round a dowel, however small the margin; less breaks out. Common practice of the trade. */
const LEAST_FOAM: Mm = 3;
/** Places across the block are tried in steps. */
const STEP: Mm = 1;

type Room = Pick<BlockOrder, 'margin' | 'dowel'>;

/**
 * Holes for the dowels the block is turned over on, at both ends, each with its twin across the middle line, so that they
 * come down on the same dowels again. The pair at the heel stands nearer the middle or further from it than the pair at the
 * toe, so that the block does not go on end for end. Undefined where there is no room.
 * @param pocket points along the outer edge of what is cut away
 */
export function flipDowels(pocket: readonly Point[], { length, width }: { readonly length: Mm; readonly width: Mm }, { margin, dowel }: Room): Hole[] | undefined {
  const foam = Math.max(margin, LEAST_FOAM), inset = foam + dowel / 2, uneven = Math.max(dowel, 8), apart = dowel + LEAST_FOAM;
  const clearAt = (x: Mm): ((y: Mm) => boolean) => {
    const near = pocket.filter(([px]) => Math.abs(px - x) < inset);
    return (y) => near.every((point) => distance(point, [x, y]) >= inset && distance(point, [x, -y]) >= inset);
  };
  const places = (x: Mm): Mm[] => { const clear = clearAt(x); return acrossFrom(width / 2 - inset).filter((y) => (y === 0 || 2 * y >= apart) && clear(y)); };
  const [heel, toe] = [inset, length - inset], atHeel = places(heel), atToe = places(toe);
  const widest = widestPair(atHeel, atToe, uneven);
  if (!widest) return undefined;
  const twins = (x: Mm, y: Mm): Hole[] => (y === 0 ? [0] : [y, -y]).map((across) => ({ at: [x, across], diameter: dowel }));
  return [...twins(heel, widest.h), ...twins(toe, widest.t)];
}

/** The pair whose nearer place stands furthest out: at one end the furthest place of all, at the other the furthest that differs enough. Places come furthest first. */
function widestPair(atHeel: readonly Mm[], atToe: readonly Mm[], uneven: Mm): { readonly h: Mm; readonly t: Mm } | undefined {
  const [far, farToe] = [atHeel[0], atToe[0]], near = farToe === undefined ? undefined : atHeel.find((h) => farToe - h >= uneven), nearToe = far === undefined ? undefined : atToe.find((t) => far - t >= uneven);
  const wideToe = near === undefined ? undefined : { h: near, t: farToe! }, wideHeel = nearToe === undefined ? undefined : { h: far!, t: nearToe };
  return wideToe && wideHeel ? (wideHeel.t > wideToe.h ? wideHeel : wideToe) : wideToe ?? wideHeel;
}

/** From the edge of the block to its middle line. */
const acrossFrom = (most: Mm): Mm[] => most < 0 ? [] : [...Array.from({ length: Math.floor(most / STEP) }, (_, i) => most - i * STEP), 0];
