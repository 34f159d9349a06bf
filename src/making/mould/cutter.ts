import type { Tool } from '../../fitting/making.ts';
import { distance, subtract, cross, type Point } from '../../geometry/point.ts';
import { sin } from '../../geometry/trig.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { outlineOf, type MouldLayout } from './layout.ts';
import type { Outline } from './outline.ts';

/** A cavity as a cutter finds it, mm. */
export interface Cutting {
  /** The tightest corner of the cavity in plan, and where it lies. */
  readonly corner: { readonly radius: Mm; readonly at: Point };
  /** What a ball end leaves standing where floor and wall meet, along the line that halves their angle; none for a flat end. */
  readonly fillet: Mm;
  /** From the rim down to the deepest place, and from the lid's rim to its highest. */
  readonly depth: Mm;
}

export function cuttingOf(layout: MouldLayout, tool: Tool, draft: Rad): Cutting {
  const { rows, blocks: { cavityHeight } } = layout, deepest = Math.min(...rows.flatMap(({ lower }) => lower.map(([, , z]) => z)));
  return { corner: tightest(outlineOf(layout, 'bottom')), fillet: tool.end === 'ball' ? leftInCorner(tool.diameter / 2, Math.PI / 2 + draft) : 0, depth: cavityHeight - (deepest - layout.base) };
}

/** Between a corner and a circle that touches both its sides. */
const leftInCorner = (radius: Mm, angle: Rad): Mm => radius / sin(angle / 2) - radius;

/** Corners are judged over this much of the line on either side: less, and the facets are measured instead of the shape. */
const REACH: Mm = 4;

/** The least radius of a closed line, counter-clockwise, where it turns left: by the circle through three of its points. */
export function tightest(line: Outline): Cutting['corner'] {
  return line.reduce<Cutting['corner']>((best, at, i) => {
    const [before, after] = [-1, 1].map((way) => stepped(line, i, way)) as [Point, Point];
    const radius = circleThrough(before, at, after);
    return radius < best.radius ? { radius, at } : best;
  }, { radius: Infinity, at: [0, 0] });
}

/** The nearest corner of the line that is a reach away. */
function stepped(line: Outline, from: number, way: number): Point {
  for (let i = 1; i < line.length; i++) {
    const point = line.at((from + way * i) % line.length)!;
    if (distance(point, line[from]!) >= REACH) return point;
  }
  return line[from]!;
}

/** Infinite where the three turn right or run straight on. */
function circleThrough(a: Point, b: Point, c: Point): Mm {
  const twice = cross(subtract(b, a), subtract(c, b));
  return twice > 1e-9 ? (distance(a, b) * distance(b, c) * distance(a, c)) / (2 * twice) : Infinity;
}
