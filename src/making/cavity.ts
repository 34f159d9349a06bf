import type { Point, Point3 } from '../geometry/point.ts';
import { degrees, inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { asin, tan } from '../geometry/trig.ts';
import type { MouldOrder } from '../fitting/making.ts';
import { columnsFor, pointsAcross, rowsOf, type Body, type Cut, type Row } from '../solid/body.ts';
import { grooveOf } from './mould/groove.ts';

/**
 * One wall line of a mould, stretched for shrink: from the ground line of the part up to the parting level, where the
 * cavity opens `open` (the part's own edge, or further out by the draft), and out over the rim to `border`. The rim of a
 * mould for pressed foam has a groove on its way, `groove`, four points outwards; else there are none.
 */
export interface Station { readonly bottom: Point3; readonly edge: Point3; readonly open: Point3; readonly groove: readonly Point3[]; readonly border: Point3 }

/** Where what is left free of the rim begins: at the cavity, or beyond the groove. */
export const rimFrom = ({ groove, open }: Station): Point3 => groove.at(-1) ?? open;

/** A row of the mould across the part. */
export interface MouldRow {
  readonly inner: Station;
  readonly outer: Station;
  /** Points of the part's upper and lower face between the walls, inner to outer, ends included. */
  readonly upper: readonly Point3[];
  readonly lower: readonly Point3[];
}

/** A wall line of the part, stretched for shrink. */
interface Wall { readonly bottom: Point3; readonly edge: Point3; readonly outward: Point }
interface WallPair { readonly inner: Wall; readonly outer: Wall }

/** How far the walls of a cavity lean out on their way up at least, mm a mm; or they are taken as they are. */
type Lean = number | 'as they are';

/**
 * The part's rows as rows of a mould round it. Walls taken as they are belong to a split cavity.
 * @throws RangeError when the draft cannot be had, see largestDraft
 */
export function mouldRows(body: Body, chordGap: Mm, order: MouldOrder): MouldRow[] {
  const rows = rowsOf(body, chordGap), columns = columnsFor(body, rows, chordGap), walls = wallsOf(rows, order.shrink);
  const lean = order.split ? 'as they are' : leanFor(order.draft, walls);
  if (lean === undefined) throw new RangeError(`a draft of ${inDegrees(order.draft)}° cannot be had on so steep a ground line`);
  const station = (wall: Wall): Station => stationAt(wall, lean, order);
  return rows.map((row, i) => {
    const { upper, lower } = pointsAcross(body, row, columns), { inner, outer } = walls[i]!;
    return { inner: station(inner), outer: station(outer), upper: upper.map(grownBy(order.shrink)), lower: lower.map(grownBy(order.shrink)) };
  });
}

const grownBy = ([fx, fy, fz]: MouldOrder['shrink']) => ([x, y, z]: Point3): Point3 => [x * fx, y * fy, z * fz];

function wallsOf(rows: readonly Row[], shrink: MouldOrder['shrink']): WallPair[] {
  const grown = grownBy(shrink), wall = ({ bottom, top, outward }: Cut): Wall => ({ bottom: grown(bottom), edge: grown(top), outward });
  return rows.map(({ inner, outer }) => ({ inner: wall(inner), outer: wall(outer) }));
}

/** How far a wall of the part leans out from its foot to its edge; less than 0 where it flares. */
const ownRun = ({ bottom, edge, outward }: Wall): Mm => (edge[0] - bottom[0]) * outward[0] + (edge[1] - bottom[1]) * outward[1];
/** How far the cavity opens beyond the part's edge. */
const outFor = (wall: Wall, lean: Lean): Mm => lean === 'as they are' ? 0 : Math.max(0, lean * (wall.edge[2] - wall.bottom[2]) - ownRun(wall));

/**
 * The cavity keeps the part's ground line and leans out above it at least by the lean; the part's own taper may be more.
 */
function stationAt(wall: Wall, lean: Lean, { rim, cast }: MouldOrder): Station {
  const { bottom, edge, outward } = wall, out = outFor(wall, lean), flare = Math.max(0, -ownRun(wall));
  const setOut = (by: Mm, down = 0): Point3 => [edge[0] + by * outward[0], edge[1] + by * outward[1], edge[2] - down];
  return { bottom, edge, open: setOut(out), groove: grooveOf(cast.name).map(([by, down]) => setOut(out + by, down)), border: setOut(out + flare + rim) };
}

/** Where a wall opens at the parting level. */
const openOf = (wall: Wall, lean: number): Point3 => {
  const { edge, outward } = wall, out = outFor(wall, lean);
  return [edge[0] + out * outward[0], edge[1] + out * outward[1], edge[2]];
};

/** Where the ground line climbs, walls lean out by more than the draft; past this many times as much a maker would not cut them. */
const LEAN_MOST = 1.5;
/** Each try goes this much further than the last one missed, so that the tries come to an end. */
const FURTHER = 1.0005, TRIES = 60;

/** The lean that gives every facet of the walls the draft, found by trying; undefined where it would be too much. */
function leanFor(draft: Rad, walls: readonly WallPair[]): number | undefined {
  if (draft === 0) return 0;
  const wanted = tan(draft);
  let lean = wanted;
  for (let i = 0; i < TRIES && lean <= LEAN_MOST * wanted; i++) {
    const got = tan(leastDraft(walls, lean));
    if (got >= wanted - 1e-12) return lean;
    if (got <= 0) return undefined;
    lean *= (wanted / got) * FURTHER;
  }
  return undefined;
}

/** Steepest facet of the walls, as the angle it leans out from upright. */
function leastDraft(walls: readonly WallPair[], lean: number): Rad {
  const lines = walls.map(({ inner, outer }) => [inner, outer].map((wall): readonly [Point3, Point3] => [openOf(wall, lean), wall.bottom]));
  const ofWall = ([open, low]: readonly [Point3, Point3], [openNext, lowNext]: readonly [Point3, Point3], outer: boolean): Rad[] =>
    (outer ? [[low, open, openNext], [low, openNext, lowNext]] as const : [[open, low, lowNext], [open, lowNext, openNext]] as const).map((corners) => leanOf(...corners));
  return Math.min(...lines.slice(1).flatMap((line, i) => [0, 1].flatMap((k) => ofWall(lines[i]![k]!, line[k]!, k === 1))));
}

/** Angle from upright of a facet whose corners run counter-clockwise seen from outside the part; a right angle for a facet without area. */
function leanOf(a: Point3, b: Point3, c: Point3): Rad {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const, size = Math.hypot(...n);
  return size > 1e-9 ? asin(-n[2] / size) : Math.PI / 2;
}

/** Drafts are tried in steps of a tenth of a degree. */
const TENTH: Rad = degrees(0.1);

/** The largest draft up to the one ordered that the walls can be given, found by trying; 0 where none can. */
export function largestDraft(body: Body, chordGap: Mm, { draft, shrink }: MouldOrder): Rad {
  const walls = wallsOf(rowsOf(body, chordGap), shrink);
  if (leanFor(draft, walls) !== undefined) return draft;
  for (let tenths = Math.ceil(draft / TENTH) - 1; tenths > 0; tenths--) if (leanFor(tenths * TENTH, walls) !== undefined) return tenths * TENTH;
  return 0;
}
