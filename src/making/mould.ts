import { boundsOf, stretched, volumeOf, type Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { MouldOrder } from '../fitting/making.ts';
import type { SoleParts } from '../pair/shoe.ts';
import type { Bar, Booleans } from './booleans.ts';
import { mouldRows, shell, stripOver, stripUnder, type MouldRow, type Shell } from './cavity.ts';
import { baseOf, dowels, holes, jointRooms, type Hole, type JointRoom } from './places.ts';

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

/**
 * Builds the mould: the cavity is the part upside open, its walls leaning out from the ground line by the draft at
 * least, with a rim level across that follows the feather line; the lid carries the face under the last.
 */
export function mouldOf(parts: SoleParts, order: MouldOrder, chordGap: Mm, booleans: Booleans): Mould {
  const { body, solid } = mouldPart(parts, order), rows = mouldRows(body, chordGap, order);
  const part = volumeOf(stretched(solid, order.shrink)), fill = volumeOf(fillShell(rows));
  const floor = baseOf(rows, order), ceiling = highestOf(rows) + order.floor;
  const upright = ({ at: [x, y], diameter }: Hole): Bar => ({ from: [x, y, floor - 1], axis: 'up', length: ceiling - floor + 2, diameter });
  const pins = dowels(rows, order).map(upright);
  const cavity = booleans.drill(cavityShell(rows, floor), pins);
  return {
    cavity: order.split ? halves(cavity, rows, order, booleans) : [{ name: 'cavity', mesh: cavity }],
    lid: booleans.drill(lidShell(rows, ceiling), [...pins, ...holes(rows, order).map(upright)]),
    fill, part, wedge: fill - part,
  };
}

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

/** Two halves that part sideways, held together by dowels across the joint ahead of the toe and behind the heel. */
function halves(cavity: Mesh, rows: readonly MouldRow[], order: MouldOrder, booleans: Booleans): Mould['cavity'] {
  const { least, most } = boundsOf(cavity);
  const across = ({ x, z }: JointRoom): Bar => ({ from: [x, least[1], z], axis: 'across', length: most[1] - least[1], diameter: order.dowel });
  const [inner, outer] = booleans.splitAlongAxis(booleans.drill(cavity, jointRooms(rows, least[2]).map(across)));
  return [{ name: 'cavity-inner', mesh: inner }, { name: 'cavity-outer', mesh: outer }];
}
