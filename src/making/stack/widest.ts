import { FillRule, union, type Paths64 } from 'clipper2-ts';
import type { Mm } from '../../geometry/units.ts';

/** Outlines at a depth, and all that a stretch of depth needs. */
export type Sections = (depth: Mm) => Paths64;
export type Stretch = (reach: Mm, thickness: Mm) => Paths64;

/**
 * Walls that flare out stand widest where they end on the ground line, and that is anywhere between the two sides of a layer.
 * At the same depths for all layers, so that each is worked out once; blanks are larger by what a wall flares from one to the next.
 */
export const LOOKED_EVERY: Mm = 1;

/** Sections of a whole stretch of depth, laid on each other. */
export function widestOf(sections: Sections): Stretch {
  const over = spansOf((step) => sections(step * LOOKED_EVERY));
  return (reach, thickness) => {
    if (thickness <= 0) return sections(reach);
    const first = Math.floor(reach / LOOKED_EVERY) + 1, count = Math.ceil((reach + thickness) / LOOKED_EVERY) - first;
    return laidOnEachOther([sections(reach), count > 0 ? over(first, count) : [], sections(reach + thickness)]);
  };
}

/** So many steps in a row, laid on each other: two halves that may overlap, so that long rows are made of what short ones left. */
function spansOf(sections: (step: number) => Paths64): (first: number, count: number) => Paths64 {
  const known = new Map<string, Paths64>();
  const over = (first: number, count: number): Paths64 => {
    if (count === 1) return sections(first);
    const key = `${first} ${count}`, half = halfOf(count), found = known.get(key) ?? laidOnEachOther([over(first, half), over(first + count - half, half)]);
    known.set(key, found);
    return found;
  };
  return over;
}

/** The largest of 1, 2, 4, 8 ... that is less than a count: two of it are enough. */
function halfOf(count: number): number {
  let half = 1;
  while (half * 2 < count) half *= 2;
  return half;
}

const laidOnEachOther = (all: readonly Paths64[]): Paths64 => union(all.flat(), FillRule.NonZero);
