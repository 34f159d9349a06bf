import { boundsOf } from '../../geometry/mesh.ts';
import { lengthOf, pointOn, type Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { SAME_POINT } from '../../geometry/tolerances.ts';
import { acos } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder, Tool } from '../../fitting/making.ts';
import type { SoleParts } from '../../pair/shoe.ts';
import { groundLine } from '../../solid/groundLine.ts';
import type { SoleShape, Surface } from '../../solid/soleShape.ts';
import type { Hole } from '../places.ts';
import { setOut } from '../setOut.ts';
import { floorsFor, footRoom, SKIM, type Floors } from './floors.ts';
import { laidPath, type Lie } from './lie.ts';
import { settle, type Footprint } from './size.ts';
import { tabsFor, type Tabs } from './tabs.ts';
import { flareOut, laidWall, wallsRound, type BlockWall } from './walls.ts';

/** What is taken where the sheet names no cutter. Common practice of the trade. */
export const USUAL_TOOL: Tool = { diameter: 12, reach: 75, end: 'ball' };

/** The pocket round the part is wider than the cutter by this, or it would be pinched. */
const CLEAR: Mm = 1;

/** A foam body in its block, LEFT shoe, in the block's frame (see Lie), mm. Numbers only: nothing is meshed. */
export interface BlockPlan {
  readonly order: BlockOrder;
  readonly tool: Tool;
  /** The block that is worked out: the one ordered, or the nearest that takes the part. */
  readonly length: Mm;
  readonly width: Mm;
  readonly sheets: number;
  readonly height: Mm;
  /** Sheets that the part needs. */
  readonly sheetsNeeded: number;
  readonly lie: Lie;
  /** Lowest and highest place of the part. */
  readonly low: Mm;
  readonly high: Mm;
  readonly walls: readonly BlockWall[];
  /** Outer edge of what is cut away round the part, and how wide that is. */
  readonly pocket: Path;
  readonly pocketWidth: Mm;
  readonly floors: Floors;
  readonly tabs: Tabs;
  /** None where only one face is cut. */
  readonly dowels: readonly Hole[];
  /** Heights of the lines of glue between the sheets. */
  readonly glueLines: readonly Mm[];
}

/** Plans the block for one sole. What is ordered too small is replaced by the nearest that works: compare with `order`. */
export function blockPlan(parts: SoleParts, order: BlockOrder, tool: Tool): BlockPlan {
  const { shape, bodies: { foam }, solids } = parts, { least, most } = boundsOf(solids.foam), both = order.faces === 'both faces';
  const standing = wallsRound(foam), pocketWidth = tool.diameter + CLEAR + flareOut(standing), pocket = setOut(shape.edge.filter(isLong), pocketWidth);
  const print: Footprint = { outline: standing.flatMap(({ top, bottom }): Point[] => [[top[0], top[1]], [bottom[0], bottom[1]]]), pocket, around: tool.diameter + CLEAR + order.margin };
  const { length, width, lie: flat, dowels } = settle(print, order);
  const tall = most[2] - least[2], below = both ? SKIM : footRoom(order, tool), sheetsNeeded = Math.ceil((tall + SKIM + below) / order.sheet - 1e-9);
  const sheets = Math.max(sheetsNeeded, order.sheets ?? 0), height = sheets * order.sheet, low = both ? height - SKIM - tall : below;
  const lie: Lie = { turn: flat.turn, shift: [flat.shift[0], flat.shift[1], low - least[2]] };
  const walls = standing.map((wall) => laidWall(lie, wall)), tabs = tabsFor(walls, shape.last.length, order), high = low + tall;
  return {
    order, tool, length, width, sheets, height, sheetsNeeded, lie, low, high, walls, pocketWidth, tabs, dowels,
    pocket: laidPath(lie, pocket),
    floors: floorsFor({ height, low, high, hollow: lowestOf(foam.upper, standing) + lie.shift[2], crown: Math.max(...walls.map(({ bottom }) => bottom[2])), walls, tabs: tabs.tabs }, order, tool),
    glueLines: Array.from({ length: sheets - 1 }, (_, i) => (i + 1) * order.sheet),
  };
}

/** The edge of the part and the line where its walls end below, in the block. */
export const linesInBlock = ({ lie }: BlockPlan, shape: SoleShape): { readonly edge: Path; readonly ground: Path } =>
  ({ edge: laidPath(lie, shape.edge.filter(isLong)), ground: laidPath(lie, groundLine(shape).filter(isLong)) });

/** Shares of the way across at which a face is looked at; the ends are the walls' own. */
const LOOKS = [0, 0.25, 0.5, 0.75];

/** The lowest place of a face inside the walls. */
const lowestOf = (face: Surface, walls: readonly BlockWall[]): Mm => Math.min(...walls.flatMap(({ top: from }, i) => {
  const { top: to } = walls[(walls.length - i) % walls.length]!;
  return LOOKS.map((share) => face(from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share));
}));

const isLong = (piece: Path[number]): boolean => lengthOf(piece) >= SAME_POINT;

/** Corners along a closed path, none further off it than a gap. */
export const cornersOf = (path: Path, gap: Mm): Point[] => path.flatMap((piece) => {
  const steps = piece.kind === 'line' ? 1 : Math.ceil(Math.abs(piece.sweep) / (2 * acos(Math.max(0, 1 - gap / piece.radius))));
  return Array.from({ length: steps }, (_, i) => pointOn(piece, i / steps));
});
