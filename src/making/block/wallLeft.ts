import { isTooTight, lengthOf, pointOn, type Path } from '../../geometry/path.ts';
import { distance } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Tool } from '../../fitting/making.ts';
import { setOut } from '../setOut.ts';
import { footOf } from './floors.ts';
import { NOTHING_LEFT, type Left } from './hollows.ts';
import type { BlockPlan } from './plan.ts';
import type { BlockWall } from './walls.ts';

/** What stays on a wall, mm square to it in plan, and which wall it is. */
export interface WallLeft { readonly left: Mm; readonly wall: BlockWall | undefined }

/** Places looked at up each wall. */
const UP = 24;

/** The most that stays on the walls after the set-ups: in the shadow of an undercut, and in the fillet at the foot of a ball end. */
export function leftOnWalls({ walls, floors, tool }: Pick<BlockPlan, 'walls' | 'floors' | 'tool'>): WallLeft {
  let worst: WallLeft = { left: 0, wall: undefined };
  for (const wall of walls) {
    for (let i = 0; i <= UP; i++) {
      const z = wall.bottom[2] + ((wall.top[2] - wall.bottom[2]) * i) / UP;
      const above = fromAbove(wall, z, floors.fromAbove, tool), below = floors.fromBelow === undefined ? Infinity : fromBelow(wall, z, floors.fromBelow, tool);
      const left = Math.min(above, below);
      if (left > worst.left) worst = { left, wall };
    }
  }
  return worst;
}

/** Cut from above to a floor: a wall that leans in lies in the shadow of its own upper edge. */
const fromAbove = ({ run, top }: BlockWall, z: Mm, floor: Mm, tool: Tool): Mm => leftBy(-run, top[2] - z, z - floor, tool);
const fromBelow = ({ run, bottom }: BlockWall, z: Mm, floor: Mm, tool: Tool): Mm => leftBy(run, z - bottom[2], floor - z, tool);

/**
 * @param widens mm by which the wall widens for each mm down into the cut; negative for an undercut
 * @param under how far the place lies under where the wall begins
 * @param over how far the place lies over the floor of the cut
 */
function leftBy(widens: number, under: Mm, over: Mm, tool: Tool): Mm {
  if (over < 0) return Infinity;
  return widens >= 0 ? fillet(widens, over, footOf(tool)) : -widens * under + fillet(0, over, footOf(tool));
}

/** Between a wall and a round end that touches both it and the floor: the circle's centre stands a radius over the floor. */
function fillet(widens: number, over: Mm, radius: Mm): Mm {
  const below = radius - over, slant = Math.hypot(1, widens);
  if (below <= (radius * widens) / slant) return 0;
  return radius * slant - Math.sqrt(radius * radius - below * below) - widens * below;
}

/** The most that a cutter leaves in the hollows of an outline, mm in plan, and where on the outline. */
export function leftInOutline(outline: Path, radius: Mm): Left {
  if (!outline.some((piece) => isTooTight(piece, radius))) return NOTHING_LEFT;
  const ways = points(setOut(outline, radius)), places = outline.filter((piece) => isTooTight(piece, radius)).flatMap((piece) => points([piece]));
  return places.reduce<Left>((worst, at) => {
    const left = Math.min(...ways.map((way) => distance(way, at))) - radius;
    return left > worst.left ? { left, at } : worst;
  }, NOTHING_LEFT);
}

const points = (path: Path): ReturnType<typeof pointOn>[] => path.flatMap((piece) => {
  const steps = Math.max(2, Math.ceil(lengthOf(piece)));
  return Array.from({ length: steps + 1 }, (_, i) => pointOn(piece, i / steps));
});
