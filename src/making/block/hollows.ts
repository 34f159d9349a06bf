import type { Point } from '../../geometry/point.ts';
import { clamp } from '../../geometry/solve.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Tool } from '../../fitting/making.ts';
import type { Surface } from '../../solid/soleShape.ts';

/** The most that a cutter leaves standing somewhere, mm, and the place on the shoe. */
export interface Left { readonly left: Mm; readonly at: Point }
export const NOTHING_LEFT: Left = { left: 0, at: [0, 0] };

/** A face looked at on a square grid with a rim round it as wide as the cutter; minus infinity where there is no face. */
interface Grid { readonly heights: Float64Array; readonly columns: number; readonly rows: number; readonly rim: number; readonly step: Mm; readonly from: Point }

/** Steps of the grid to a cutter's radius. A cutter set down on the grid only misses its best place by up to half a step, so a coarse look tells a little too much, never too little. */
const STEPS_TO_RADIUS = { coarse: 5, fine: 15 } as const;
const COARSEST = { coarse: 4, fine: 2 } as const satisfies Record<string, Mm>;
/** No sole is cut so finely that more would be seen. */
const FINEST: Mm = 0.5;

/**
 * What an upright cutter leaves in the hollows of a face however close its passes lie, measured upright: it is let down
 * over every place until it touches, then every place is asked how near the lowest cutter comes. It may hang over the edge,
 * for the pocket beside it is as wide as the cutter.
 * @param edge corners along the edge of the face, closed
 */
export function leftInHollows(face: Surface, edge: readonly Point[], tool: Tool, look: keyof typeof STEPS_TO_RADIUS): Left {
  const step = clamp(tool.diameter / 2 / STEPS_TO_RADIUS[look], FINEST, COARSEST[look]), rim = Math.floor(tool.diameter / 2 / step + 1e-9);
  const grid = gridOf(face, edge, step, rim), { heights, columns, from } = grid, end = endOf(tool, step, rim, columns), tips = tipsOver(grid, end);
  let worst = 0, place = 0;
  eachInside(grid, (i) => {
    const height = heights[i]!;
    if (height === -Infinity) return;
    let low = Infinity;
    for (let k = 0; k < end.aside.length; k++) { const near = tips[i - end.aside[k]!]! + end.up[k]!; if (near < low) low = near; }
    if (low - height > worst) { worst = low - height; place = i; }
  });
  return worst === 0 ? NOTHING_LEFT : { left: worst, at: [from[0] + (place % columns) * step, from[1] + Math.floor(place / columns) * step] };
}

/** The same, looked at closely only where a coarse look finds more than so much. */
export function leftBeyond(most: Mm, face: Surface, edge: readonly Point[], tool: Tool): Left {
  const coarse = leftInHollows(face, edge, tool, 'coarse');
  return coarse.left <= most ? coarse : leftInHollows(face, edge, tool, 'fine');
}

/** Where the tip of the cutter comes to rest over every place; minus infinity where it meets nothing. */
function tipsOver(grid: Grid, { aside, up }: CutterEnd): Float64Array {
  const { heights } = grid, tips = new Float64Array(heights.length).fill(-Infinity);
  // Raised by each place of the face in turn, so that places off the face cost nothing.
  eachInside(grid, (i) => {
    const height = heights[i]!;
    if (height === -Infinity) return;
    for (let k = 0; k < aside.length; k++) { const at = i - aside[k]!, tip = height - up[k]!; if (tip > tips[at]!) tips[at] = tip; }
  });
  return tips;
}

function eachInside({ columns, rows, rim }: Grid, look: (i: number) => void): void {
  for (let j = rim; j < rows - rim; j++) for (let i = rim; i < columns - rim; i++) look(j * columns + i);
}

/** The end of a cutter on the grid: places under it, and how far its surface stands over its tip there. */
interface CutterEnd { readonly aside: Int32Array; readonly up: Float64Array }

function endOf({ diameter, end }: Tool, step: Mm, rim: number, columns: number): CutterEnd {
  const radius = diameter / 2, all = Array.from({ length: 2 * rim + 1 }, (_, i) => i - rim);
  const under = all.flatMap((dx) => all.flatMap((dy) => {
    const square = radius * radius - (dx * dx + dy * dy) * step * step;
    return square < -1e-9 ? [] : [{ aside: dy * columns + dx, up: end === 'ball' ? radius - Math.sqrt(Math.max(0, square)) : 0 }];
  }));
  return { aside: Int32Array.from(under, ({ aside }) => aside), up: Float64Array.from(under, ({ up }) => up) };
}

function gridOf(face: Surface, edge: readonly Point[], step: Mm, rim: number): Grid {
  const xs = edge.map(([x]) => x), ys = edge.map(([, y]) => y), from: Point = [Math.min(...xs) - rim * step, Math.min(...ys) - rim * step];
  const columns = Math.floor((Math.max(...xs) - from[0]) / step) + 1 + rim, rows = Math.floor((Math.max(...ys) - from[1]) / step) + 1 + rim;
  const heights = new Float64Array(columns * rows).fill(-Infinity);
  for (let i = rim; i < columns - rim; i++) {
    const x = from[0] + i * step, cuts = crossings(edge, x);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const last = Math.floor((cuts[k + 1]! - from[1]) / step);
      for (let j = Math.ceil((cuts[k]! - from[1]) / step); j <= last; j++) heights[j * columns + i] = face(x, from[1] + j * step);
    }
  }
  return { heights, columns, rows, rim, step, from };
}

/** Where the line at x crosses a closed line of corners, rising. */
const crossings = (edge: readonly Point[], x: Mm): Mm[] => edge.flatMap(([x0, y0], i) => {
  const [x1, y1] = edge[(i + 1) % edge.length]!;
  return x0 < x !== x1 < x ? [y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)] : [];
}).sort((a, b) => a - b);
