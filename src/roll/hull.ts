import { lowerHullOf } from '../geometry/hull.ts';
import { vertexAt, type Mesh } from '../geometry/mesh.ts';
import type { Point } from '../geometry/point.ts';
import { atan2 } from '../geometry/trig.ts';
import { rollX, type RollLine } from '../profile/rollLine.ts';
import { UPRIGHT, type RollBody, type RollingEdge, type RollPiece } from './rollBody.ts';

/** A mesh seen along its crest: its vertices in the upright plane of the walking line, [along, height]. */
export const silhouetteOf = (mesh: Mesh, line: RollLine): Point[] => Array.from({ length: mesh.positions.length / 3 }, (_, i): Point => {
  const [x, y, z] = vertexAt(mesh, i);
  return [rollX(line, [x, y]), z];
});

/**
 * How any solid rolls, by a way of its own that knows nothing of arcs: a stiff body stands on the lower hull of its silhouette,
 * corner after corner with an edge laid flat between them. Of a mesh it is as exact as its facets.
 * Where the mesh does not stand on the ground the hull does not either: heights that are given with it count from the same zero.
 */
export function hullBody(points: readonly Point[]): RollBody {
  const hull = lowerHullOf(points), edges = hull.slice(1).map((to, i): RollingEdge => {
    const from = hull[i]!;
    return { kind: 'edge', from, to, angle: atan2(to[1] - from[1], to[0] - from[0]) };
  });
  return { pieces: hull.flatMap((at, i): RollPiece[] => {
    const edge = edges[i];
    return [{ kind: 'corner', at, from: edges[i - 1]?.angle ?? -UPRIGHT, to: edge?.angle ?? UPRIGHT }, ...(edge ? [edge] : [])];
  }) };
}
