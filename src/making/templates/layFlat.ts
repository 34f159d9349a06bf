import { add, cross, scale, subtract, turnLeft, type Point, type Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';

/** A straight line of a wall, from its upper edge down to its foot. */
export interface Ruling { readonly head: Point3; readonly foot: Point3 }
/** The same line laid on paper. */
export interface FlatRuling { readonly head: Point; readonly foot: Point }

/**
 * Lays the lines of a wall on paper one after another, as seen from outside: [along, up], mm, the mean line upright and the
 * first head at zero. Neighbours keep their true distances: along the head, along the foot, and from foot to next head, so
 * what bends one way only comes out exact, the finer the more.
 */
export function laidFlat(rulings: readonly Ruling[]): FlatRuling[] {
  const [first, ...others] = rulings;
  if (!first) return [];
  const laid: FlatRuling[] = [{ head: [0, 0], foot: [0, -apart(first.head, first.foot)] }];
  others.forEach((next, i) => {
    const before = rulings[i]!, { head, foot } = laid[i]!;
    const newHead = toTheRight(foot, head, apart(before.foot, next.head), apart(before.head, next.head));
    laid.push({ head: newHead, foot: toTheRight(foot, newHead, apart(before.foot, next.foot), apart(next.head, next.foot)) });
  });
  return upright(laid);
}

export const apart = ([ax, ay, az]: Point3, [bx, by, bz]: Point3): Mm => Math.hypot(ax - bx, ay - by, az - bz);

/** The corner of a triangle to the right of the way from one corner to another, by its distances from both. */
function toTheRight(from: Point, to: Point, fromFrom: Mm, fromTo: Mm): Point {
  const run = subtract(to, from), size = Math.hypot(...run), along = scale(run, 1 / size);
  const ahead = (fromFrom ** 2 - fromTo ** 2 + size ** 2) / (2 * size), aside = Math.sqrt(Math.max(0, fromFrom ** 2 - ahead ** 2));
  return add(from, add(scale(along, ahead), scale(turnLeft(along), -aside)));
}

/** Turned about the first head until the lines stand upright on the whole. */
function upright(laid: readonly FlatRuling[]): FlatRuling[] {
  const sum = laid.reduce((all, { head, foot }) => add(all, subtract(head, foot)), [0, 0] as Point), up = scale(sum, 1 / Math.hypot(...sum));
  const turned = (point: Point): Point => [cross(point, up), point[0] * up[0] + point[1] * up[1]];
  return laid.map(({ head, foot }) => ({ head: turned(head), foot: turned(foot) }));
}
