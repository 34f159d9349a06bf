import type { Bed, MouldOrder } from '../../fitting/making.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Body } from '../../solid/body.ts';
import { mouldRows, type MouldRow } from '../cavity.ts';
import { baseOf, dowelsIn, holes, jointRooms, midRim, round, type Hole, type JointRoom } from '../places.ts';
import { besideBar, besideBore, boltsRound, washerFor, type KeepOut } from './bolts.ts';
import { cutsInto, goesOn, MOST_PIECES, UNCUT, type Blocks, type Cuts } from './cuts.ts';
import { isPressed } from './groove.ts';
import { TIE_LENGTH, tieRooms, type TieRoom } from './ties.ts';

/** Where everything of a mould stands, before a kernel cuts it. LEFT shoe, mm. */
export interface MouldLayout {
  readonly rows: readonly MouldRow[];
  /** Levels of the base of the cavity and of the top of the lid. */
  readonly base: Mm;
  readonly ceiling: Mm;
  readonly dowels: readonly Hole[];
  readonly bolts: readonly Hole[];
  /** Pour hole, then vents; none where foam is pressed. */
  readonly pour: readonly Hole[];
  readonly vents: readonly Hole[];
  /** Across the joint of a cavity in halves, and of one cut across. */
  readonly joints: readonly JointRoom[];
  readonly ties: readonly TieRoom[];
  readonly blocks: Blocks;
  readonly cuts: Cuts;
  /** False where even cut into the most pieces it does not go on the bed; it is then left whole. */
  readonly fits: boolean;
}

/**
 * Sets out a mould round a body.
 * @param bed of the printer, where the mould is printed: it is cut across until its pieces go on it
 * @throws RangeError when the draft cannot be had
 */
export function layoutOf(body: Body, order: MouldOrder, chordGap: Mm, bed?: Bed): MouldLayout {
  const rows = mouldRows(body, chordGap, order), base = baseOf(rows, order), ceiling = highestOf(rows) + order.floor;
  const [pour, ...vents] = isPressed(order.cast.name) ? [undefined] : holes(rows, order), lidBores = [...(pour ? [pour] : []), ...vents];
  const blocks = blocksOf(rows, base, ceiling, order.split), joints = order.split ? jointRooms(rows, base) : [];
  const tries = Array.from({ length: bed ? MOST_PIECES : 1 }, (_, i) => {
    const dowels = dowelsIn(i + 1, rows, order);
    return { dowels, cuts: i === 0 ? UNCUT : cutsInto(i + 1, blocks, { cavity: dowels, lid: [...dowels, ...lidBores] }) };
  });
  const found = tries.find(({ cuts }) => !bed || goesOn(bed, blocks, cuts)), { dowels, cuts } = found ?? tries[0]!;
  const bolts = order.closing === 'bolts' ? boltsOf(rows, order, dowels, joints, cuts) : [];
  return { rows, base, ceiling, dowels, bolts, pour: pour ? [pour] : [], vents, joints, ties: tieRooms(rows, base, cuts.cavity), blocks, cuts, fits: found !== undefined };
}

const highestOf = (rows: readonly MouldRow[]): Mm => Math.max(...rows.flatMap(({ upper }) => upper.map((point) => point[2])));

function blocksOf(rows: readonly MouldRow[], base: Mm, ceiling: Mm, halves: boolean): Blocks {
  const rim = rows.flatMap(({ inner, outer }) => [inner.border[2], outer.border[2]]), lowest = Math.min(...rows.flatMap(({ upper }) => upper.map(([, , z]) => z)), ...rim);
  return { border: round(rows, ({ border }) => border), cavityHeight: Math.max(...rim) - base, lidHeight: ceiling - lowest, halves };
}

/** Bolts clear of dowels and joints, with one on each side of every joint and at both ends. */
function boltsOf(rows: readonly MouldRow[], { bolt, dowel }: MouldOrder, dowels: readonly Hole[], joints: readonly JointRoom[], { cavity, lid }: Cuts): Hole[] {
  const washer = washerFor(bolt) / 2 + 1, beyondTie = TIE_LENGTH / 2 + bolt / 2 + WALL;
  const away: KeepOut[] = [
    ...dowels.map(({ at, diameter }) => besideBore(at, diameter, bolt)),
    ...joints.map(({ x }) => ({ x, clear: besideBar(dowel, bolt) })), ...(joints.length ? [{ y: 0, clear: washer }] : []),
    ...cavity.map((x) => ({ x, clear: beyondTie })), ...lid.map((x) => ({ x, clear: washer })),
  ];
  const line = round(rows, ({ border }) => border).map((_, i) => midOf(rows, i)), beside = Math.max(beyondTie, washer);
  return boltsRound(line, seedsOn(line, [...cavity, ...lid], beside), away, bolt).map((at) => ({ at, diameter: bolt }));
}
const WALL: Mm = 3;

/** The middle of the rim at a corner of the lines that `round` gives. */
function midOf(rows: readonly MouldRow[], i: number): Point {
  const back = i - rows.length;
  return midRim(back < 0 ? rows[i]!.inner : rows[rows.length - 1 - back]!.outer);
}

/** Both ends, and both sides of each joint on both walls. */
function seedsOn(line: readonly Point[], joints: readonly Mm[], beside: Mm): Point[] {
  const half = line.length / 2, inner = line.slice(0, half), outer = line.slice(half), nearest = (side: readonly Point[], x: Mm): Point =>
    side.reduce((best, point) => (Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best));
  return [...joints.flatMap((x) => [x - beside, x + beside].flatMap((at) => [nearest(inner, at), nearest(outer, at)])), line[0]!, line[half]!];
}

/** A line of the rows as an outline in plan. */
export const outlineOf = ({ rows }: MouldLayout, on: 'bottom' | 'edge' | 'open' | 'border'): Point[] => round(rows, (station) => station[on]);
