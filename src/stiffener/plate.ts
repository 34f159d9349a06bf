import { add, scale, turnLeft, type Point } from '../geometry/point.ts';
import { directionAlong, pointAlong, type Path } from '../geometry/path.ts';
import { tableOf } from '../geometry/table.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import type { UpperFace } from '../last/upperFace.ts';
import type { Plate } from './stiffener.ts';

/** How far the plate stays inside the feather line, so that the edge can be trimmed without opening carbon. Common practice, 5 to 8 mm. */
export const SET_IN: Mm = 6;
/** Where it is narrower than this the plate ends. */
export const NARROWEST: Mm = 15;
/** Looks in each piece of the feather line, and places along the shoe at which the width is kept. */
const LOOKS = 24, EVERY: Mm = 1;

/** Points of the feather line set in, round the plate. */
function setIn(feather: Path, by: Mm): Point[] {
  return Array.from({ length: feather.length * LOOKS }, (_, i) => i / LOOKS).map((w) => add(pointAlong(feather, w), scale(turnLeft(directionAlong(feather, w)), by)));
}

/** Widths of a closed row of points at places EVERY apart, from 0 on; 0 where it does not reach. Each edge is asked only for the places it crosses: a hand that drags waits for this. */
function widthsIn(points: readonly Point[], count: number): Mm[] {
  const low = new Float64Array(count).fill(Infinity), high = new Float64Array(count).fill(-Infinity);
  points.forEach(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!, end = Math.max(ax, bx);
    for (let k = Math.max(Math.ceil(Math.min(ax, bx) / EVERY), 0); k < count && k * EVERY < end; k++) {
      const y = ay + ((by - ay) * (k * EVERY - ax)) / (bx - ax);
      low[k] = Math.min(low[k]!, y); high[k] = Math.max(high[k]!, y);
    }
  });
  return Array.from(low, (least, k) => Math.max(high[k]! - least, 0));
}

/**
 * The plate that lies under a last: its feather line set in all round, on the curve of its bottom.
 * @param from where it begins, mm from the heel; as far back as it is wide enough where left out
 */
export function plateUnder(last: Last, feather: Path, upper: UpperFace, from?: Mm, by = SET_IN): Plate {
  const points = setIn(feather, by), places = Array.from({ length: Math.ceil(last.length / EVERY) + 1 }, (_, i) => i * EVERY), widths = widthsIn(points, places.length);
  const wide = places.filter((_, i) => widths[i]! >= NARROWEST), begins = Math.max(from ?? 0, wide[0]!);
  return { from: begins, to: wide.at(-1)!, width: tableOf(places, widths), rise: (x) => upper(x, 0), ball: last.tread, heel: Math.max(last.seatLength / 2, begins) };
}

/** How much lower the middle of a plate lies than its edges, on a last that is dished across on one parabola. */
export const camberUnder = ({ camber, ballWidth }: Last, { width }: Plate): ((x: Mm) => Mm) => (x) => camber * (width(x) / ballWidth) ** 2;

/** Over this length to either side a sheet that is bent evens out what the last does, mm. */
const EVENED: Mm = 10;
const tightest = new WeakMap<Plate, Mm>();

/** The tightest radius the plate is bent to along the shoe, mm; infinite where it is flat. */
export function tightestRadius(plate: Plate): Mm {
  const { from, to, rise = () => 0 } = plate, places = Array.from({ length: Math.max(Math.floor(to - from - 2 * EVENED), 0) + 1 }, (_, i) => from + EVENED + i);
  const bent = ([a, b, c]: readonly [Mm, Mm, Mm]): number => Math.abs(c - 2 * b + a) / EVENED ** 2 / (1 + ((c - a) / (2 * EVENED)) ** 2) ** 1.5;
  const radius = tightest.get(plate) ?? 1 / Math.max(...places.map((x) => bent([rise(x - EVENED), rise(x), rise(x + EVENED)])));
  tightest.set(plate, radius);
  return radius;
}
