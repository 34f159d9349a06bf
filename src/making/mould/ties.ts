import type { Point3 } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Bar } from '../booleans.ts';
import { rimFrom, type MouldRow, type Station } from '../cavity.ts';

/** A dowel that lies along the shoe across a joint of the cavity, half of it in each piece. */
export const TIE_LENGTH: Mm = 30;
/** Least wall left beside it. Common practice. */
const WALL: Mm = 3;

/** Room for a tie in the rim at a joint: the middle of it, and how thick it may be. */
export interface TieRoom { readonly x: Mm; readonly y: Mm; readonly z: Mm; readonly most: Mm }

/** The rooms on the inner and the outer side of each joint, halfway up the block. */
export const tieRooms = (rows: readonly MouldRow[], base: Mm, joints: readonly Mm[]): TieRoom[] =>
  joints.flatMap((x) => (['inner', 'outer'] as const).map((side) => roomAt(x, rows.map((row) => row[side]), base, side === 'inner' ? -1 : 1)));

/** Straight along the shoe, a tie has only as much room as the rim leaves it where that bends away. */
function roomAt(x: Mm, stations: readonly Station[], base: Mm, way: -1 | 1): TieRoom {
  const ends = [x - TIE_LENGTH / 2, x, x + TIE_LENGTH / 2];
  const at = (line: (station: Station) => Point3): Point3[] => ends.map((end) => onLine(stations.map(line), end));
  const near = Math.max(...[rimFrom, ({ bottom }: Station) => bottom].flatMap((line) => at(line).map(([, y]) => way * y))), far = Math.min(...at(({ border }) => border).map(([, y]) => way * y));
  const rim = Math.min(...at(({ open }) => open).map(([, , z]) => z));
  return { x, y: (way * (near + far)) / 2, z: (base + rim) / 2, most: Math.min(far - near, rim - base) - 2 * WALL };
}

/** A line that runs from heel to toe, where it passes a place. */
function onLine(line: readonly Point3[], x: Mm): Point3 {
  const i = line.findIndex((point) => point[0] > x), to = line[i], from = line[i - 1];
  if (!to || !from) return line[i < 0 ? line.length - 1 : 0]!;
  const t = (x - from[0]) / (to[0] - from[0]);
  return [x, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
}

/** The bores of those that have room. */
export const tieBars = (rooms: readonly TieRoom[], dowel: Mm): Bar[] => rooms.filter(({ most }) => most >= dowel)
  .map(({ x, y, z }) => ({ from: [x - TIE_LENGTH / 2, y, z], axis: 'along', length: TIE_LENGTH, diameter: dowel }));
