import { stretched, volumeOf, type Mesh } from '../geometry/mesh.ts';
import type { Point3 } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Bed, MouldOrder } from '../fitting/making.ts';
import type { SoleParts } from '../pair/shoe.ts';
import type { Bar, Booleans } from './booleans.ts';
import type { MouldRow } from './cavity.ts';
import { draftFound, type DraftFound } from './mould/draft.ts';
import { layoutOf, type MouldLayout } from './mould/layout.ts';
import { spans } from './mould/outline.ts';
import { tieBars } from './mould/ties.ts';
import type { Hole } from './places.ts';
import { shell, stripOver, stripUnder, type Shell } from './shell.ts';

/** A piece of a mould by the name its file ends with, LEFT shoe, mm. */
export interface MouldPiece { readonly name: string; readonly mesh: Mesh }

/** A mould for one part, LEFT shoe, mm: one cavity or two halves of it, and a lid; either may be cut across for a small bed. */
export interface Mould {
  readonly cavity: readonly MouldPiece[];
  readonly lid: readonly MouldPiece[];
  /** What is poured, mm³: the part stretched for shrink, and the wedge the draft adds round it. */
  readonly fill: number;
  readonly part: number;
  readonly wedge: number;
  readonly layout: MouldLayout;
  readonly draft: DraftFound;
}

/** The part a mould is for. */
export const mouldPart = ({ bodies, solids }: SoleParts, { part }: MouldOrder): { body: SoleParts['bodies']['foam']; solid: Mesh } =>
  part === 'foam body' ? { body: bodies.foam, solid: solids.foam } : { body: bodies.whole, solid: solids.whole };

/** The bed that pieces of a mould must go on, where it is printed. */
export const bedFor = ({ by }: MouldOrder, bed: Bed | undefined): Bed | undefined => (by === 'printed' ? bed : undefined);

/**
 * Builds the mould: the cavity is the part upside open, its walls leaning out from the ground line by the draft at
 * least, with a rim level across that follows the feather line; the lid carries the face under the last.
 * @param bed of the printer; a printed mould is cut across until its pieces go on it
 */
export function mouldOf(parts: SoleParts, order: MouldOrder, chordGap: Mm, booleans: Booleans, bed?: Bed): Mould {
  const { body, solid } = mouldPart(parts, order), layout = layoutOf(body, order, chordGap, bedFor(order, bed)), { rows, base, ceiling, cuts } = layout;
  const part = volumeOf(stretched(solid, order.shrink)), fill = volumeOf(fillShell(rows));
  const upright = ({ at: [x, y], diameter }: Hole): Bar => ({ from: [x, y, base - 1], axis: 'up', length: ceiling - base + 2, diameter });
  const through = [...layout.dowels, ...layout.bolts].map(upright), poured = [...layout.pour, ...layout.vents].map(upright);
  const cavity = booleans.drill(cavityShell(rows, base), [...through, ...jointBars(layout, order), ...tieBars(layout.ties, order.dowel)]);
  const sides = order.split ? named('cavity', ['inner', 'outer'], booleans.splitAlongAxis(cavity)) : [{ name: 'cavity', mesh: cavity }];
  const across = ({ name, mesh }: MouldPiece, at: readonly Mm[]): MouldPiece[] =>
    at.length === 0 ? [{ name, mesh }] : named(name, spans(at).map((_, i) => String(i + 1)), booleans.cutAcross(mesh, at));
  return {
    cavity: sides.flatMap((side) => across(side, cuts.cavity)),
    lid: across({ name: 'lid', mesh: booleans.drill(lidShell(rows, ceiling), [...through, ...poured]) }, cuts.lid),
    fill, part, wedge: fill - part, layout, draft: draftFound(cavity, layout),
  };
}

const named = (stem: string, ends: readonly string[], meshes: readonly Mesh[]): MouldPiece[] => meshes.map((mesh, i) => ({ name: `${stem}-${ends[i]!}`, mesh }));

const at = (point: Point3, z: Mm): Point3 => [point[0], point[1], z];
/** Across a row at the parting level: rim, ledge and face under the last, inner border to outer border. */
const parting = ({ inner, outer, upper }: MouldRow): Point3[] => [inner.border, inner.open, ...upper, outer.open, outer.border];
/** Across a row through the cavity: rim with its groove, down the wall, along the floor, up the wall, rim. */
const hollow = ({ inner, outer, lower }: MouldRow): Point3[] =>
  [inner.border, ...inner.groove.toReversed(), inner.open, ...lower, outer.open, ...outer.groove, outer.border];
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
export function cavityShell(rows: readonly MouldRow[], base: Mm): Mesh {
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

/** Dowels across the joint of two halves, ahead of the toe and behind the heel. */
function jointBars({ joints, blocks: { border } }: MouldLayout, { dowel }: MouldOrder): Bar[] {
  const ys = border.map(([, y]) => y), from = Math.min(...ys), length = Math.max(...ys) - from;
  return joints.map(({ x, z }) => ({ from: [x, from, z], axis: 'across', length, diameter: dowel }));
}
