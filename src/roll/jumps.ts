import type { Mesh } from '../geometry/mesh.ts';
import { between, cross, subtract, unit, type Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { RollLine } from '../profile/rollLine.ts';
import { heightExtreme } from './extremes.ts';
import { silhouetteOf } from './hull.ts';
import { beginsAt, endsAt, lengthOn, placedAt, UPRIGHT, type RollBody, type RollingEdge } from './rollBody.ts';

/** A gap that the hull of a solid bridges: the shoe turns over its rear end, falls flat across it and turns over its front end. */
export interface Jump {
  readonly bridge: RollingEdge;
  /** How far the contact jumps, and how far behind the bridge the solid lies. */
  readonly length: Mm;
  readonly deep: Mm;
  /** Roll angles at which the turn over the rear end begins and that over the front end is done. */
  readonly over: readonly [Rad, Rad];
}

/** Shallower gaps are the facets of a face that is there; shorter ones nobody feels. */
const LEAST_DEEP: Mm = 0.2, LEAST_LONG: Mm = 2;

/** The gaps that a solid is rolled across, heel to toe. @param body the hull of its silhouette */
export function jumpsOf(body: RollBody, mesh: Mesh, line: RollLine): Jump[] {
  const { pieces } = body, points = silhouetteOf(mesh, line);
  return pieces.flatMap((bridge, i): Jump[] => {
    const length = lengthOn(bridge), before = pieces[i - 1], after = pieces[i + 1];
    if (bridge.kind !== 'edge' || length < LEAST_LONG || Math.abs(bridge.angle) > UPRIGHT / 2 || !before || !after) return [];
    const deep = depthBehind(bridge, mesh, points);
    return deep < LEAST_DEEP ? [] : [{ bridge, length, deep, over: [beginsAt(before), endsAt(after)] }];
  });
}

/** Places along a bridge at which it is looked how far behind it the solid lies. */
const LOOKS = [0.1, 0.3, 0.5, 0.7, 0.9];

/** Greatest distance from a bridge to the solid above it. What lies lowest of a silhouette is a side of some facet. */
function depthBehind({ from, to }: RollingEdge, { triangles }: Mesh, points: readonly Point[]): Mm {
  const direction = unit(subtract(to, from)), looks = LOOKS.map((share) => between(from, to, share)), least = looks.map(() => Infinity);
  for (let i = 0; i < triangles.length; i++) {
    const a = points[triangles[i]!]!, b = points[triangles[i % 3 === 2 ? i - 2 : i + 1]!]!;
    looks.forEach((at, k) => {
      if ((a[0] < at[0]) === (b[0] < at[0])) return;
      least[k] = Math.min(least[k]!, cross(direction, subtract(between(a, b, (at[0] - a[0]) / (b[0] - a[0])), at)));
    });
  }
  return Math.max(...least);
}

/** How far a point of the shoe dips as the shoe falls across a gap: from the lower of its heights over both ends down to where the bridge lies flat. */
export function dropAcross(body: RollBody, { bridge: { angle }, over: [from, to] }: Jump, point: Point): Mm {
  const rear = heightExtreme(body, point, [from, angle], 1).value, front = heightExtreme(body, point, [angle, to], 1).value;
  return Math.max(0, Math.min(rear, front) - placedAt(body, point, angle)[1]);
}
