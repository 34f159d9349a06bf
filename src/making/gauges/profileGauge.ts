import { mirroredLengthwise, pointOn, reversed, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { facePath } from '../../profile/facePath.ts';
import { heightsOf } from '../../profile/groundFace.ts';
import type { FlatPart, PartMark } from '../flatPart.ts';
import { labelsUnder, linesOver } from './lettering.ts';
import { placesOn, radiiOn } from './places.ts';
import { backWall, type Slice } from './slice.ts';

/**
 * @property depth from the ground down to the base
 * @property heelLeft seen from the side of the shoe it is held to, the heel is on the left
 * @property base lines of lettering over the base
 * @property worn lines that tell when the sole is worn
 */
export interface GaugeLook { readonly name: string; readonly depth: Mm; readonly heelLeft: boolean; readonly base: readonly string[]; readonly worn?: readonly PartMark[] }

/** Stop: how far it reaches up the wall, at most so much of the wall, and how wide it is. Shelf ahead of the tip. */
const STOP_UP: Mm = 6, STOP_SHARE = 0.75, STOP_WIDE: Mm = 12, SHELF: Mm = 8;
const TICK: Mm = 5;
/** Clear of the base and of the ends. */
const INSET: Mm = 3;

/**
 * A board whose upper edge is the negative of the ground face in one slice, and whose flat base is level when the shoe
 * stands on it at rest. A stop behind the heel holds it at the same place each time; ahead of the tip the edge runs on level.
 */
export function profileGauge(shoe: Shoe, parts: SoleParts, slice: Slice, look: GaugeLook): FlatPart {
  const { shape, bodies: { whole: { rim } } } = parts, height = heightsOf(shape.face), seen = seenFrom(look.heelLeft);
  const wall = shape.upper(shape.last.seatLength / 2, 0) + shape.build - height(slice.from), up = Math.min(STOP_UP, STOP_SHARE * wall);
  const stop = backWall(rim, slice, up), outline = gaugeOutline(facePath(shape.face, slice.from, slice.to), stop, look.depth);
  const places = placesOn(shoe, parts, slice), tick = (along: Mm, down: Mm): Path => [{ kind: 'line', from: [along, height(along)], to: [along, height(along) - down] }];
  const ceiling = (x: Mm): Mm => height(Math.min(slice.to, Math.max(slice.from, x))) - TICK;
  const labels = [...places.map(({ text, along }) => ({ text, x: along })), ...radiiOn(shape.face, slice), ...endLabels(slice)];
  const left = look.heelLeft ? Math.min(stop[0][0], stop[1][0]) - STOP_WIDE : -slice.to - SHELF;
  return {
    name: look.name, outline: seen.path(outline), holes: [],
    marks: [...places.map(({ of, along }) => ({ of, path: tick(along, TICK) })), ...(look.worn ?? [])].map(({ of, path }) => ({ of, path: seen.path(path) })),
    letters: [
      ...labelsUnder(labels.map(({ text, x }) => ({ text, x: seen.x(x) })), (x) => ceiling(seen.x(x))),
      ...linesOver(look.base, [left + INSET, INSET - look.depth]),
    ],
  };
}

/** The ends are named over the body itself, clear of the stop and the shelf. */
const endLabels = ({ from, to }: Slice): readonly { readonly text: string; readonly x: Mm }[] => [{ text: 'heel', x: from + 4 }, { text: 'tip', x: to - 3 }];

/** Counter-clockwise from the base behind; the stop's face runs from the foot of the end wall up. */
function gaugeOutline(edge: Path, [foot, head]: readonly [Point, Point], depth: Mm): Path {
  const tip = pointOn(edge.at(-1)!, 1), behind = Math.min(foot[0], head[0]) - STOP_WIDE, ahead = tip[0] + SHELF;
  const corners = (points: readonly Point[]): Path => points.slice(1).map((to, i) => ({ kind: 'line', from: points[i]!, to }));
  return [
    ...corners([[behind, -depth], [ahead, -depth], [ahead, tip[1]], tip]), ...reversed(edge),
    ...corners([foot, head, [behind, head[1]], [behind, -depth]]),
  ];
}

/** How a gauge is seen: from the side of the shoe it is held to, heel to the left or to the right. */
function seenFrom(heelLeft: boolean): { readonly x: (along: Mm) => Mm; readonly path: (path: Path) => Path } {
  return heelLeft ? { x: (along) => along, path: (path) => path } : { x: (along) => -along, path: mirroredLengthwise };
}
