import { boundsOf, stretched, volumeOf, type Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import type { Fault } from '../fitting/faults.ts';
import type { MouldOrder } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { partsOf, type Shoe, type SoleParts } from '../pair/shoe.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import type { Bar, Booleans } from './booleans.ts';
import { mouldRows, shell, stripOver, stripUnder, type MouldRow, type Shell, type Station } from './cavity.ts';

/** A mould for one part, LEFT shoe, mm: one cavity or two halves of it, and a lid. */
export interface Mould {
  readonly cavity: readonly { readonly name: 'cavity' | 'cavity-inner' | 'cavity-outer'; readonly mesh: Mesh }[];
  readonly lid: Mesh;
  /** What is poured, mm³: the part stretched for shrink, and the wedge the draft adds round it. */
  readonly fill: number;
  readonly part: number;
  readonly wedge: number;
}

/** The part a mould is for. */
export const mouldPart = ({ bodies, solids }: SoleParts, { part }: MouldOrder): { body: SoleParts['bodies']['foam']; solid: Mesh } =>
  part === 'foam body' ? { body: bodies.foam, solid: solids.foam } : { body: bodies.whole, solid: solids.whole };

/** What keeps a shoe's mould from being made, as corrections to the sheet. */
export function mouldFaults(shoe: Shoe, order: MouldOrder): Fault[] {
  const parts = partsOf(shoe);
  return parts ? [...flareFaults(shoe.side, parts.shape, order), ...rimFaults(shoe.side, parts.shape, order)] : [];
}

/** Walls that flare out towards the ground hold the part in a cavity of one piece. */
function flareFaults(side: Side, { taper }: SoleShape, { split }: MouldOrder): Fault[] {
  const worst = Math.min(...Object.values(taper));
  if (split || worst >= 0) return [];
  return [{
    path: 'making.mould.split', rule: 'walls must lean in towards the ground for a cavity in one piece', value: 'false',
    text: `making.mould.split: the ${side} sole flares out by ${inDegrees(-worst).toFixed(1)}° towards the ground, so it cannot leave a cavity in one piece; put split to true for a cavity in two halves, or take the flare off order.taper`,
  }];
}

/** Left between the rim and the point where a hollow of the outline would close, mm. */
const HOLLOW_SPARE: Mm = 10;

/** A rim wider than the hollow of the waist would fold over itself. */
function rimFaults(side: Side, { edge }: SoleShape, { rim }: MouldOrder): Fault[] {
  const hollows = edge.flatMap((piece) => piece.kind === 'arc' && piece.sweep < 0 ? [piece.radius] : []);
  const widest = Math.floor(Math.min(...hollows) - HOLLOW_SPARE);
  if (rim <= widest) return [];
  return [{
    path: 'making.mould.rim', rule: `at most ${widest} mm`, value: `${rim}`,
    text: `making.mould.rim: at most ${widest} mm, got ${rim}; a wider rim would fold over itself in the hollow of the ${side} waist`,
  }];
}

/**
 * Builds the mould: the cavity is the part upside open, its walls leaning out from the ground line by the draft at
 * least, with a rim level across that follows the feather line; the lid carries the face under the last.
 */
export function mouldOf(parts: SoleParts, order: MouldOrder, chordGap: Mm, booleans: Booleans): Mould {
  const { body, solid } = mouldPart(parts, order), rows = mouldRows(body, chordGap, order);
  const part = volumeOf(stretched(solid, order.shrink)), fill = volumeOf(fillShell(rows));
  const floor = lowestOf(rows) - order.floor, ceiling = highestOf(rows) + order.floor;
  const pins = dowels(rows, order, floor, ceiling);
  const cavity = booleans.drill(cavityShell(rows, floor), pins);
  return {
    cavity: order.split ? halves(cavity, rows, order, booleans) : [{ name: 'cavity', mesh: cavity }],
    lid: booleans.drill(lidShell(rows, ceiling), [...pins, ...holes(rows, order, floor, ceiling)]),
    fill, part, wedge: fill - part,
  };
}

const lowestOf = (rows: readonly MouldRow[]): Mm => Math.min(...rows.flatMap(({ lower }) => lower.map((point) => point[2])));
const highestOf = (rows: readonly MouldRow[]): Mm => Math.max(...rows.flatMap(({ upper }) => upper.map((point) => point[2])));

const at = (point: Point3, z: Mm): Point3 => [point[0], point[1], z];
/** Across a row at the parting level: rim, ledge and face under the last, inner border to outer border. */
const parting = ({ inner, outer, upper }: MouldRow): Point3[] => [inner.border, inner.open, ...upper, outer.open, outer.border];
/** Across a row through the cavity: rim, down the wall, along the floor, up the wall, rim. */
const hollow = ({ inner, outer, lower }: MouldRow): Point3[] => [inner.border, inner.open, ...lower, outer.open, outer.border];
const ends = (line: readonly Point3[]): [Point3, Point3] => [line[0]!, line[line.length - 1]!];

/** What is poured: everything between the cavity and the lid. */
export function fillShell(rows: readonly MouldRow[]): Mesh {
  const made = shell();
  eachPair(rows, (a, b) => {
    stripOver(made, [a.inner.open, ...a.upper, a.outer.open], [b.inner.open, ...b.upper, b.outer.open]);
    stripUnder(made, [a.inner.open, ...a.lower, a.outer.open], [b.inner.open, ...b.lower, b.outer.open]);
  });
  return made.mesh();
}

/** A block open at the top: the hollow above, a level base below, upright sides round the border. */
function cavityShell(rows: readonly MouldRow[], base: Mm): Mesh {
  const made = shell();
  eachPair(rows, (a, b) => {
    stripOver(made, hollow(a), hollow(b));
    const [low, lowNext] = [a, b].map((row) => ends(hollow(row)).map((point) => at(point, base)));
    stripUnder(made, low!, lowNext!);
    sides(made, ends(hollow(a)), ends(hollow(b)), base, 'above');
  });
  return made.mesh();
}

/** The face under the last below, ledge and rim round it, a level top above. */
function lidShell(rows: readonly MouldRow[], top: Mm): Mesh {
  const made = shell();
  eachPair(rows, (a, b) => {
    stripUnder(made, parting(a), parting(b));
    const [high, highNext] = [a, b].map((row) => ends(parting(row)).map((point) => at(point, top)));
    stripOver(made, high!, highNext!);
    sides(made, ends(parting(a)), ends(parting(b)), top, 'below');
  });
  return made.mesh();
}

/** Upright sides between the border and a level face. `shaped` says on which side of the level face the border lies. */
function sides(made: Shell, a: readonly [Point3, Point3], b: readonly [Point3, Point3], level: Mm, shaped: 'above' | 'below'): void {
  const [innerA, outerA] = a, [innerB, outerB] = b;
  const wall = (from: Point3, to: Point3): void => shaped === 'above'
    ? stripOver(made, [at(from, level), from], [at(to, level), to])
    : stripOver(made, [from, at(from, level)], [to, at(to, level)]);
  wall(innerA, innerB);
  wall(outerB, outerA);
}

function eachPair(rows: readonly MouldRow[], work: (a: MouldRow, b: MouldRow) => void): void {
  for (let i = 0; i + 1 < rows.length; i++) work(rows[i]!, rows[i + 1]!);
}

/** Shares of the way from heel to toe where dowels stand on the rim: uneven, so that the lid goes on one way only. */
const PINS = [['inner', 0.2], ['outer', 0.28], ['inner', 0.72], ['outer', 0.62]] as const;

const rowNear = (rows: readonly MouldRow[], share: number): MouldRow => {
  const [from, to] = [rows[0]!.inner.edge[0], rows[rows.length - 1]!.inner.edge[0]], wanted = from + (to - from) * share;
  return rows.reduce((best, row) => (Math.abs(middleOf(row)[0] - wanted) < Math.abs(middleOf(best)[0] - wanted) ? row : best));
};
const middleOf = ({ upper }: MouldRow): Point3 => upper[Math.floor(upper.length / 2)]!;
const onRim = ({ open, border }: Station): Point3 => [(open[0] + border[0]) / 2, (open[1] + border[1]) / 2, open[2]];

/** Dowel holes right through rim and lid. */
function dowels(rows: readonly MouldRow[], { dowel }: MouldOrder, floor: Mm, ceiling: Mm): Bar[] {
  return PINS.map(([side, share]) => {
    const [x, y] = onRim(rowNear(rows, share)[side]);
    return { from: [x, y, floor - 1], axis: 'up', length: ceiling - floor + 2, diameter: dowel };
  });
}

/** Pour hole over the heel, vents over both ends, where the air goes last. */
function holes(rows: readonly MouldRow[], { pourHole, ventHole }: MouldOrder, floor: Mm, ceiling: Mm): Bar[] {
  const hole = (share: number, diameter: Mm): Bar => {
    const [x, y] = middleOf(rowNear(rows, share));
    return { from: [x, y, floor - 1], axis: 'up', length: ceiling - floor + 2, diameter };
  };
  return [hole(0.2, pourHole), hole(0.04, ventHole), hole(0.96, ventHole)];
}

/** Two halves that part sideways, held together by dowels across the joint ahead of the toe and behind the heel. */
function halves(cavity: Mesh, rows: readonly MouldRow[], order: MouldOrder, booleans: Booleans): Mould['cavity'] {
  const { least, most } = boundsOf(cavity), [heel, toe] = [rows[0]!.inner, rows[rows.length - 1]!.inner];
  const across = (station: Station): Bar => {
    const [x, , z] = onRim(station);
    return { from: [x, least[1], (z + least[2]) / 2], axis: 'across', length: most[1] - least[1], diameter: order.dowel };
  };
  const [inner, outer] = booleans.splitAlongAxis(booleans.drill(cavity, [across(heel), across(toe)]));
  return [{ name: 'cavity-inner', mesh: inner }, { name: 'cavity-outer', mesh: outer }];
}
