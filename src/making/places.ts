import { between, type Point, type Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { MouldOrder } from '../fitting/making.ts';
import { fromOutline } from './mould/outline.ts';
import { rimFrom, type MouldRow, type Station } from './cavity.ts';

/** Where the holes of a mould stand, and how much room they have there. Plan and heights are those of a LEFT shoe, mm. */

/** An upright hole. */
export interface Hole { readonly at: Point; readonly diameter: Mm }

/** The level base of the cavity block. */
export const baseOf = (rows: readonly MouldRow[], { floor }: MouldOrder): Mm =>
  Math.min(...rows.flatMap(({ lower }) => lower.map(([, , z]) => z))) - floor;

/** Shares of the way from heel to toe where dowels stand on the rim: uneven, so that the lid goes on one way only. */
const PINS = [['inner', 0.2], ['outer', 0.28], ['inner', 0.72], ['outer', 0.62]] as const;

export const plan = ([x, y]: Point3): Point => [x, y];
/** Halfway across: the walking line of a turned crest runs out of the middle towards toe and heel. */
const middleOf = ({ inner, outer }: MouldRow): Point => between(plan(inner.edge), plan(outer.edge), 0.5);
const rowNear = (rows: readonly MouldRow[], share: number): MouldRow => {
  const [from, to] = [rows[0]!.inner.edge[0], rows[rows.length - 1]!.inner.edge[0]], wanted = from + (to - from) * share;
  return rows.reduce((best, row) => (Math.abs(middleOf(row)[0] - wanted) < Math.abs(middleOf(best)[0] - wanted) ? row : best));
};

/** Dowel holes right through rim and lid, in the middle of the rim. */
export const dowels = (rows: readonly MouldRow[], order: MouldOrder): Hole[] => dowelsIn(1, rows, order);

/** The same for a mould cut across: two dowels find each piece, on either side. */
export const dowelsIn = (pieces: number, rows: readonly MouldRow[], { dowel }: MouldOrder): Hole[] => {
  const pins = pieces <= 2 ? PINS : Array.from({ length: pieces }, (_, i) => IN_PIECE.map(([side, share]) => [side, (i + share) / pieces] as const)).flat();
  return pins.map(([side, share]) => ({ at: midRim(rowNear(rows, share)[side]), diameter: dowel }));
};
/** Shares of a piece's own length; the wider apart, the better they hold its direction. */
const IN_PIECE = [['inner', 0.3], ['outer', 0.6]] as const;

/** The middle of what is free of the rim. */
export const midRim = (station: Station): Point => between(plan(rimFrom(station)), plan(station.border), 0.5);

/** Pour hole over the heel, vents over both ends, where the air goes last. */
export function holes(rows: readonly MouldRow[], { pourHole, ventHole }: MouldOrder): readonly [pour: Hole, heelVent: Hole, toeVent: Hole] {
  const hole = (share: number, diameter: Mm): Hole => ({ at: middleOf(rowNear(rows, share)), diameter });
  return [hole(0.2, pourHole), hole(0.04, ventHole), hole(0.96, ventHole)];
}

/** A closed line round all rows, counter-clockwise seen from above. */
export const round = (rows: readonly MouldRow[], on: (station: Station) => Point3): Point[] =>
  [...rows.map(({ inner }) => plan(on(inner))), ...rows.map(({ outer }) => plan(on(outer))).reverse()];

/** How far a place inside the face under the last is from its edge. */
export function roomInFace(rows: readonly MouldRow[], at: Point): Mm {
  return fromOutline(round(rows, (station) => station.edge), at);
}

/** Room for a dowel across the joint of a split cavity: its middle, how long it is along the shoe and how high. */
export interface JointRoom { readonly end: 'heel' | 'toe'; readonly x: Mm; readonly z: Mm; readonly long: Mm; readonly high: Mm }

/** The rooms behind the heel and ahead of the toe: from the cavity to the border on the long axis, and from the base to the rim. */
export const jointRooms = (rows: readonly MouldRow[], base: Mm): readonly JointRoom[] => [roomAt('heel', rows, base), roomAt('toe', rows, base)];

function roomAt(end: JointRoom['end'], rows: readonly MouldRow[], base: Mm): JointRoom {
  const way = end === 'heel' ? -1 : 1, stations = rows.flatMap(({ inner, outer }) => [inner, outer]);
  const from = Math.max(...stations.map((station) => way * rimFrom(station)[0])), to = Math.max(...onAxis(round(rows, ({ border }) => border)).map((x) => way * x));
  const rim = Math.min(...stations.flatMap(({ border, open }) => (way * border[0] >= from ? [open[2]] : [])));
  return { end, x: (way * (from + to)) / 2, z: (base + rim) / 2, long: to - from, high: rim - base };
}

/** Where a closed line crosses the long axis. */
export const onAxis = (line: readonly Point[]): Mm[] => line.flatMap((to, i) => {
  const from = line.at(i - 1)!;
  return from[1] > 0 === to[1] > 0 ? [] : [between(from, to, from[1] / (from[1] - to[1]))[0]];
});
