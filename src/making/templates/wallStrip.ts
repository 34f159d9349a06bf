import { endsOf } from '../../geometry/clip.ts';
import { between, type Point, type Point3 } from '../../geometry/point.ts';
import { pathLength } from '../../geometry/path.ts';
import { OUTLINE_GAP } from '../../geometry/tolerances.ts';
import { rootBetween } from '../../geometry/solve.ts';
import type { Mm } from '../../geometry/units.ts';
import { rollX } from '../../profile/rollLine.ts';
import { foamFace, sweptSurface, upperSurface, type SoleShape, type Surface } from '../../solid/soleShape.ts';
import { meetSurface, wallLine } from '../../solid/wall.ts';
import { apart, laidFlat, type FlatRuling, type Ruling } from './layFlat.ts';
import { jointSurface, type LayerJoint } from './layerJoint.ts';
import { stretches } from './stretches.ts';
import { thinned } from './thinned.ts';

/**
 * One side of the wall laid flat, as seen from outside, LEFT shoe: [along, up], mm, to be wrapped round the sole. The inner
 * one runs from the heel to the tip, the outer one from the tip to the heel.
 */
export interface WallStrip {
  readonly side: 'inner' | 'outer';
  /** True lengths of its upper and its lower edge on the wall. */
  readonly topLength: Mm;
  readonly footLength: Mm;
  /** How much longer the line half way up is on paper than on a wall that leans; nought under an upright wall. */
  readonly stretch: Mm;
  /** The wall lines at both ends of the strip, and the one half way along it. */
  readonly ends: readonly [FlatRuling, FlatRuling];
  readonly middle: FlatRuling;
  /** Lines along the wall, in the order of the strip; a joint of layers may come in several stretches. */
  readonly lines: readonly WallLevel[];
  /** Every 10 mm from the heel on the long axis. */
  readonly stations: readonly WallStation[];
  readonly marks: readonly WallMark[];
}

/** @property of a trade word: upper edge, stiffener, foam, ground, or the name of a layer joint */
export interface WallLevel { readonly of: string; readonly points: readonly Point[] }
export interface WallStation extends FlatRuling { readonly x: Mm }
/** A place of the sole with the wall line above it. */
export interface WallMark extends FlatRuling { readonly name: string }

/** What a mark stands at: a place x of the upper edge, or a way along the walking line of the lower one. */
export interface MarkWanted { readonly name: string; readonly at: 'edge' | 'ground'; readonly value: Mm; readonly side?: WallStrip['side'] }
/** A face that is drawn as a line where it meets the wall. */
interface Level { readonly of: string; readonly surface: Surface }

/** Neighbouring wall lines stand about so far apart: a toe of 25 mm radius keeps its length to a thousandth of a millimetre. */
const FINE: Mm = 0.5;
const STATION: Mm = 10;

/** A wall line with all that is laid on it. */
interface Strand extends Ruling { readonly w: number }

/** Both sides of the wall of a sole. */
export function wallStrips(shape: SoleShape, marks: readonly MarkWanted[], joints: readonly LayerJoint[] = []): readonly [inner: WallStrip, outer: WallStrip] {
  const { rear, fore } = endsOf(shape.edge), turns = shape.edge.length, tip = fore < rear ? fore + turns : fore;
  return [strip(shape, 'inner', rear, tip, marks, joints), strip(shape, 'outer', tip, rear + turns, marks, joints)];
}

function strip(shape: SoleShape, side: WallStrip['side'], from: number, to: number, wanted: readonly MarkWanted[], joints: readonly LayerJoint[]): WallStrip {
  const strand = strandOf(shape), places = placesBetween(shape, from, to), strands = places.map(strand), flat = laidFlat(strands);
  const at = (w: number): FlatRuling => onStrip(places, flat, w), crossings = (measure: (strand: Strand) => Mm): FlatRuling[] => signChanges(strands, strand, measure).map(at);
  const own = (mark: MarkWanted): boolean => mark.side === undefined || mark.side === side;
  return {
    side, topLength: along(strands.map(({ head }) => head)), footLength: along(strands.map(({ foot }) => foot)), stretch: stretchOf(strands, flat),
    ends: [at(from), at(to)], middle: at(places[Math.floor(places.length / 2)]!),
    lines: [
      ...levelsOf(shape).map(({ of, surface }) => ({ of, points: thinned(strands.map((one, i) => onRuling(flat[i]!, shareDown(shape, one, surface))), OUTLINE_GAP / 2) })),
      ...joints.flatMap((joint) => jointLines(shape, strands, flat, joint)),
    ],
    stations: Array.from({ length: Math.floor(shape.last.length / STATION) + 1 }, (_, i) => i * STATION)
      .flatMap((x) => crossings(({ head }) => head[0] - x).map((one) => ({ x, ...one }))),
    marks: wanted.filter(own).flatMap(({ name, at: edge, value }) =>
      crossings(({ head, foot }) => edge === 'edge' ? head[0] - value : rollX(shape.line, [foot[0], foot[1]]) - value).map((one) => ({ name, ...one }))),
  };
}

function strandOf(shape: SoleShape): (w: number) => Strand {
  const ground = sweptSurface(shape.face, shape.line);
  return (w) => { const wall = wallLine(shape, w); return { w, head: wall.top, foot: meetSurface(wall, ground) }; };
}

/** Places along the edge line, evenly within each of its pieces, joints included. */
function placesBetween({ edge }: SoleShape, from: number, to: number): number[] {
  const joints = [from, ...Array.from({ length: Math.floor(to) - Math.floor(from) }, (_, i) => Math.floor(from) + 1 + i).filter((w) => w < to), to];
  return [from, ...joints.slice(1).flatMap((end, i) => {
    const start = joints[i]!, piece = edge[((Math.floor(start) % edge.length) + edge.length) % edge.length]!;
    const steps = Math.max(1, Math.ceil((pathLength([piece]) * (end - start)) / FINE));
    return Array.from({ length: steps }, (_, k) => start + ((end - start) * (k + 1)) / steps);
  })];
}

/** Upper edge, underside of the stiffener, joint of foam and outsole, ground line. */
function levelsOf(shape: SoleShape): Level[] {
  const foam = sweptSurface(foamFace(shape), shape.line);
  return [
    { of: 'upper edge', surface: upperSurface(shape, 0) }, ...(shape.stiffener > 0 ? [{ of: 'stiffener', surface: upperSurface(shape, shape.stiffener) }] : []),
    { of: 'foam', surface: foam }, { of: 'ground', surface: sweptSurface(shape.face, shape.line) },
  ];
}

/** The stretches on which a joint of two layers comes out on the wall: above the outsole, where its layers lie. */
function jointLines(shape: SoleShape, strands: readonly Strand[], flat: readonly FlatRuling[], joint: LayerJoint): WallLevel[] {
  const surface = jointSurface(shape, joint.depth), foam = sweptSurface(foamFace(shape), shape.line);
  const points = strands.map((one, i): Point | undefined => {
    const share = shareDown(shape, one, surface), seen = share < shareDown(shape, one, foam) && one.head[0] >= joint.from && one.head[0] <= joint.to;
    return seen ? onRuling(flat[i]!, share) : undefined;
  });
  return stretches(points).map((run) => ({ of: joint.name, points: thinned(run, OUTLINE_GAP / 2) }));
}

/** How far down a wall line a face meets it, as a share of it. */
function shareDown(shape: SoleShape, { w, head, foot }: Strand, surface: Surface): number {
  const [, , z] = meetSurface(wallLine(shape, w), surface);
  return Math.min(1, Math.max(0, (head[2] - z) / (head[2] - foot[2])));
}

const onRuling = ({ head, foot }: FlatRuling, share: number): Point => between(head, foot, share);

/** The wall line over any place, between its neighbours on the strip. */
function onStrip(places: readonly number[], flat: readonly FlatRuling[], w: number): FlatRuling {
  const next = Math.max(1, places.findIndex((place) => place >= w)), t = (w - places[next - 1]!) / (places[next]! - places[next - 1]!), a = flat[next - 1]!, b = flat[next]!;
  return { head: between(a.head, b.head, t), foot: between(a.foot, b.foot, t) };
}

/** Nearer than this a wall line is at the place asked for. */
const SAME: Mm = 1e-6;

/** Places at which a measure of the wall line changes sign, or is nothing at the very place of a wall line: at an end of the strip, or where the edge has a joint. */
function signChanges(strands: readonly Strand[], strand: (w: number) => Strand, measure: (strand: Strand) => Mm): number[] {
  const values = strands.map(measure), exact = strands.flatMap((_, i) => (Math.abs(values[i]!) < SAME ? [i] : []));
  const within = strands.slice(1).flatMap((next, i) =>
    values[i]! * values[i + 1]! < 0 && !exact.includes(i) && !exact.includes(i + 1) ? [rootBetween((w) => measure(strand(w)), strands[i]!.w, next.w, 1e-9)] : []);
  return [...exact.map((i) => strands[i]!.w), ...within];
}

const along = (points: readonly Point3[]): Mm => points.slice(1).reduce((sum, point, i) => sum + apart(points[i]!, point), 0);

/** Half way up is where a wall that does not bend one way only is furthest off. */
function stretchOf(strands: readonly Ruling[], flat: readonly FlatRuling[]): Mm {
  const middle = ({ head: a, foot: b }: Ruling): Point3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
  const onPaper = ({ head, foot }: FlatRuling): Point3 => [...between(head, foot, 0.5), 0];
  return along(flat.map(onPaper)) - along(strands.map(middle));
}
