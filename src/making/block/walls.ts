import type { Point, Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Body } from '../../solid/body.ts';
import { sweptSurface } from '../../solid/soleShape.ts';
import { meetSurface, wallLine } from '../../solid/wall.ts';
import { laid, laidWay, type Lie } from './lie.ts';

/** One wall line of a body as it lies in a block. */
export interface BlockWall {
  /** From the face under the last to the ground line; the outward way in plan. In the block, mm. */
  readonly top: Point3;
  readonly bottom: Point3;
  readonly outward: Point;
  /** How far it leans in for each mm on the way to the ground; out where negative. */
  readonly run: number;
  /** Where it stands on the shoe: its upper end, and the way it faces. */
  readonly on: Point;
  readonly faces: Point;
}

/** Places looked at all round, about 4 mm apart on a common sole. */
const ROUND = 192;

/** The walls of a body all round, in the order of its edge line, as the shoe stands. */
export function wallsRound({ shape, upper, lower }: Body): BlockWall[] {
  const under = sweptSurface(lower, shape.line), step = shape.edge.length / ROUND;
  return Array.from({ length: ROUND }, (_, i) => {
    const wall = wallLine(shape, i * step), top = meetSurface(wall, upper), bottom = meetSurface(wall, under);
    return { top, bottom, outward: wall.outward, run: wall.run, on: [top[0], top[1]], faces: wall.outward };
  });
}

export const laidWall = (lie: Lie, wall: BlockWall): BlockWall =>
  ({ ...wall, top: laid(lie, wall.top), bottom: laid(lie, wall.bottom), outward: laidWay(lie, wall.outward) });

/** Less than this (a tenth of a degree) a wall counts as upright. */
const UPRIGHT = 0.0017;
export const leansIn = ({ run }: Pick<BlockWall, 'run'>): boolean => run > UPRIGHT;
export const flares = ({ run }: Pick<BlockWall, 'run'>): boolean => run < -UPRIGHT;

/** How far the ground line stands out beyond the edge at most. */
export const flareOut = (walls: readonly Pick<BlockWall, 'top' | 'bottom' | 'outward'>[]): Mm =>
  Math.max(0, ...walls.map(({ top, bottom, outward: [ox, oy] }) => (bottom[0] - top[0]) * ox + (bottom[1] - top[1]) * oy));
