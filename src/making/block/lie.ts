import { layOn } from '../../checks/bedFit.ts';
import type { Mesh } from '../../geometry/mesh.ts';
import { moved, type Path, type PathPiece } from '../../geometry/path.ts';
import type { Point, Point3 } from '../../geometry/point.ts';
import { cos, sin } from '../../geometry/trig.ts';
import type { Mm, Rad } from '../../geometry/units.ts';

/**
 * How a body lies in its block. The block's own frame, mm: x from its heel end towards the toe, y = 0 on its middle line,
 * about which it is turned over, y to the wearer's left, z = 0 on the bed. The body stands in it upright, as the shoe does
 * at rest: a tip would save a few millimetres of foam, but every wall at heel and toe would be undercut by it, and no
 * height would read as on the other papers. It is turned about the upright only where it would not go in straight.
 */
export interface Lie { readonly turn: Rad; readonly shift: Point3 }

/** A direction in plan, from the shoe to the block. */
export const laidWay = ({ turn }: Lie, [x, y]: Point): Point => {
  const cosine = cos(turn), sine = sin(turn);
  return [x * cosine - y * sine, x * sine + y * cosine];
};
/** A point from the shoe's frame to the block's. */
export function laid(lie: Lie, [x, y, z]: Point3): Point3 {
  const [along, across] = laidWay(lie, [x, y]), [dx, dy, dz] = lie.shift;
  return [along + dx, across + dy, z + dz];
}

/** A place in plan from the block's frame back to the shoe's. */
export const shoePlace = ({ turn, shift: [dx, dy] }: Lie, [x, y]: Point): Point => laidWay({ turn: -turn, shift: [0, 0, 0] }, [x - dx, y - dy]);

/** A path in plan from the shoe's frame to the block's. */
export function laidPath(lie: Lie, path: Path): Path {
  const turned = path.map((piece): PathPiece => piece.kind === 'line'
    ? { ...piece, from: laidWay(lie, piece.from), to: laidWay(lie, piece.to) }
    : { ...piece, centre: laidWay(lie, piece.centre), start: piece.start + lie.turn });
  return moved(turned, [lie.shift[0], lie.shift[1]]);
}

export function laidMesh(lie: Lie, { positions, triangles }: Mesh): Mesh {
  const moved = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) moved.set(laid(lie, [positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  return { positions: moved, triangles };
}

/** A solid from the block's frame back to the shoe's. */
export function backInShoe(lie: Lie, { positions, triangles }: Mesh): Mesh {
  const moved = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) moved.set([...shoePlace(lie, [positions[i]!, positions[i + 1]!]), positions[i + 2]! - lie.shift[2]], i);
  return { positions: moved, triangles };
}

/** The same solid after the block is turned over about its middle line onto the bed again. */
export const turnedOver = ({ positions, triangles }: Mesh, height: Mm): Mesh =>
  ({ positions: positions.map((value, i) => (i % 3 === 0 ? value : i % 3 === 1 ? -value : height - value)), triangles });

interface Extent { readonly least: Point; readonly most: Point }
export function extentOf(points: readonly Point[]): Extent {
  let [left, near, right, far] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) { left = Math.min(left, x); right = Math.max(right, x); near = Math.min(near, y); far = Math.max(far, y); }
  return { least: [left, near], most: [right, far] };
}

/** Room for the rounding of sums. */
const EPSILON: Mm = 1e-6;

/**
 * Lays an outline in the middle of a block, straight where it goes in, else turned; undefined where it does not go in.
 * @param around kept free all round
 */
export function lieIn(outline: readonly Point[], { length, width }: { readonly length: Mm; readonly width: Mm }, around: Mm): Lie | undefined {
  const { fits, turn } = layOn(outline, { x: length, y: width }, around);
  if (!fits) return undefined;
  for (const way of [turn, -turn]) {
    const { least, most } = extentOf(outline.map((point) => laidWay({ turn: way, shift: [0, 0, 0] }, point)));
    if (most[0] - least[0] + 2 * around > length + EPSILON || most[1] - least[1] + 2 * around > width + EPSILON) continue;
    return { turn: way, shift: [length / 2 - (least[0] + most[0]) / 2, -(least[1] + most[1]) / 2, 0] };
  }
  return undefined;
}
