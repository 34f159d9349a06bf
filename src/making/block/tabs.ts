import { between, distance, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder } from '../../fitting/making.ts';
import { elsewhere, standsWell } from './hold.ts';
import type { BlockWall } from './walls.ts';

/** A bridge of foam from a wall of the part to the frame, in the block's frame, mm. */
export interface Tab {
  readonly place: TabPlace;
  readonly side: 'inner' | 'outer';
  /** Where it leaves the wall, and the way to the frame. */
  readonly at: Point;
  readonly outward: Point;
  readonly width: Mm;
  readonly from: Mm;
  readonly to: Mm;
  /** Place on the shoe, from the heel. */
  readonly x: Mm;
}

/** The first two are where tabs stand by custom; the others are taken where those have no wall. */
export type TabPlace = 'waist' | 'heel back' | 'heel' | 'forepart';

/** A place where no tab of the height ordered can stand, and what stands there instead; 0 where none does. */
export interface LowWall { readonly place: TabPlace; readonly side: Tab['side']; readonly x: Mm; readonly wall: Mm; readonly height: Mm }
/**
 * @property moved those of the tabs that stand elsewhere, because a wall where one belongs is too low
 * @property hold whether the tabs hold the part; where not, it is held down from below
 */
export interface Tabs { readonly tabs: readonly Tab[]; readonly low: readonly LowWall[]; readonly moved: readonly Tab[]; readonly hold: boolean }

/** Left of the wall between a tab and the faces above and below it: tabs touch neither the arcs nor the edge. */
export const TAB_CLEAR: Mm = 1;
/** A tab lower than this tears. */
const LEAST_TAB: Mm = 1;
/** How many places to either side, and how far apart they are, a tab may move for a higher wall. */
const ASIDE = 6, APART: Mm = 4;
/** Where the waist is, as a share of the length of the last. Common practice of the trade. */
const WAIST = 0.45;

const PLACES = [['waist', 'inner'], ['waist', 'outer'], ['heel back', 'inner'], ['heel back', 'outer']] as const;

const ROUNDING: Mm = 1e-6;

type TabOrder = Pick<BlockOrder, 'faces' | 'tab'>;

/**
 * Four tabs at the waist and the heel back, both sides. Cut from both faces they stand in the middle of the wall, and where
 * walls are too low for them others are sought all round; cut from above only they stand on the bed, under the ground line,
 * where the ground face is not yet cut.
 */
export function tabsFor(walls: readonly BlockWall[], length: Mm, order: TabOrder): Tabs {
  const { faces, tab } = order, wanted = PLACES.map(([place, side]) => ({ place, side, at: nearest(walls, place, side, length) }));
  if (faces === 'upper face') return { tabs: wanted.map(({ at, ...named }) => tabOn(walls[at]!, named, tab.width, 0, tab.height)), low: [], moved: [], hold: true };
  const room = (i: number): Room => roomAt(walls, i, tab.width), found = wanted.map((one) => inWall(walls, room, one, tab));
  const tabs = found.flatMap((one) => one.tab ?? []), low = found.flatMap((one) => one.low ?? []);
  if (standsWell(tabs, length)) return { tabs, low, moved: [], hold: true };
  const others = othersOn(walls, room, length, tab), high = elsewhere(tabs, others.filter(({ from, to }) => to - from >= tab.height - ROUNDING), PLACES.length);
  const moved = [...high, ...elsewhere([...tabs, ...high], others, PLACES.length)], all = [...tabs, ...moved];
  return { tabs: all, low, moved, hold: standsWell(all, length) };
}

interface Wanted { readonly place: TabPlace; readonly side: Tab['side']; readonly at: number }

/** The tab near a wanted place, and what is amiss with it. */
function inWall(walls: readonly BlockWall[], room: (i: number) => Room, { at: wanted, ...named }: Wanted, { width, height: asked }: TabOrder['tab']): { readonly tab: Tab | undefined; readonly low: LowWall | undefined } {
  const at = roomiest(room, wanted, walls.length, asked + 2 * TAB_CLEAR), { from, to } = room(at), height = heightIn(room(at), asked), middle = (from + to) / 2;
  return {
    tab: height > 0 ? tabOn(walls[at]!, named, width, middle - height / 2, middle + height / 2) : undefined,
    low: height < asked ? { ...named, x: walls[at]!.on[0], wall: to - from, height } : undefined,
  };
}

/** How high a tab stands in a wall; 0 where it would tear. */
function heightIn({ from, to }: Room, asked: Mm): Mm {
  const height = Math.min(asked, to - from - 2 * TAB_CLEAR);
  return height >= Math.min(LEAST_TAB, asked) ? height : 0;
}

/** A tab in each wall all round that takes one, named by where it is. */
function othersOn(walls: readonly BlockWall[], room: (i: number) => Room, length: Mm, { width, height: asked }: TabOrder['tab']): Tab[] {
  return walls.flatMap((wall, i) => {
    const { from, to } = room(i), height = heightIn(room(i), asked), middle = (from + to) / 2, { on: [x], faces: [, fy] } = wall;
    const place = x < HEEL * length ? 'heel' : x < FOREPART * length ? 'waist' : 'forepart';
    return height > 0 ? [tabOn(wall, { place, side: fy > 0 ? 'outer' : 'inner' }, width, middle - height / 2, middle + height / 2)] : [];
  });
}
/** The waist lies between these shares of the length. Common practice of the trade. */
const HEEL = 0.3, FOREPART = 0.6;

/** The heights between which all of a wall stands behind a tab. */
interface Room { readonly from: Mm; readonly to: Mm }

function roomAt(walls: readonly BlockWall[], i: number, width: Mm): Room {
  const { top: [x, y] } = walls[i]!, behind = walls.filter(({ top }, k) => k === i || distance([top[0], top[1]], [x, y]) <= width / 2 + APART);
  return { from: Math.max(...behind.map(({ bottom }) => bottom[2])), to: Math.min(...behind.map(({ top }) => top[2])) };
}

/** The place on the wall that is wanted: square to the side at the waist, half way round at the heel. */
function nearest(walls: readonly BlockWall[], place: TabPlace, side: Tab['side'], length: Mm): number {
  const sign = side === 'outer' ? 1 : -1;
  const off = ({ on: [x], faces: [fx, fy] }: BlockWall): number => place === 'waist'
    ? (fy * sign > 0 ? Math.abs(x - WAIST * length) : Infinity)
    : Math.hypot(fx + Math.SQRT1_2, fy - sign * Math.SQRT1_2) + (x > length / 2 ? Infinity : 0);
  return walls.reduce((best, wall, i) => (off(wall) < off(walls[best]!) ? i : best), 0);
}

/** The nearest place with so much wall; the one with most where none has. */
function roomiest(room: (i: number) => Room, wanted: number, count: number, needed: Mm): number {
  const aside = Array.from({ length: 2 * ASIDE + 1 }, (_, k) => (k % 2 ? -1 : 1) * Math.ceil(k / 2)).map((k) => (wanted + k + count) % count), high = (i: number): Mm => room(i).to - room(i).from;
  return aside.find((i) => high(i) >= needed) ?? aside.reduce((best, i) => (high(i) > high(best) ? i : best), wanted);
}

function tabOn({ top, bottom, outward, on }: BlockWall, named: Pick<Tab, 'place' | 'side'>, width: Mm, from: Mm, to: Mm): Tab {
  const share = Math.min(1, Math.max(0, ((from + to) / 2 - bottom[2]) / (top[2] - bottom[2])));
  return { ...named, at: between([bottom[0], bottom[1]], [top[0], top[1]], share), outward, width, from, to, x: on[0] };
}
