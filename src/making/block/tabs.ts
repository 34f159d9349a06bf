import { between, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { BlockOrder } from '../../fitting/making.ts';
import type { BlockWall } from './walls.ts';

/** A bridge of foam from a wall of the part to the frame, in the block's frame, mm. */
export interface Tab {
  readonly place: 'waist' | 'heel back';
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

/** A place where no tab of the height ordered can stand, and what stands there instead; 0 where none does. */
export interface LowWall { readonly place: Tab['place']; readonly side: Tab['side']; readonly x: Mm; readonly wall: Mm; readonly height: Mm }
export interface Tabs { readonly tabs: readonly Tab[]; readonly low: readonly LowWall[] }

/** Left of the wall between a tab and the faces above and below it: tabs touch neither the arcs nor the edge. */
export const TAB_CLEAR: Mm = 1;
/** A tab lower than this tears. */
const LEAST_TAB: Mm = 1;
/** How many places to either side, and how far apart they are, a tab may move for a higher wall. */
const ASIDE = 6, APART: Mm = 4;
/** Where the waist is, as a share of the length of the last. Common practice of the trade. */
const WAIST = 0.45;

const PLACES = [['waist', 'inner'], ['waist', 'outer'], ['heel back', 'inner'], ['heel back', 'outer']] as const;

/**
 * Four tabs at the waist and the heel back, both sides. Cut from both faces they stand in the middle of the wall; cut from
 * above only they stand on the bed, under the ground line, where the ground face is not yet cut.
 */
export function tabsFor(walls: readonly BlockWall[], length: Mm, { faces, tab }: Pick<BlockOrder, 'faces' | 'tab'>): Tabs {
  const room = (i: number): Room => roomAt(walls, i, tab.width);
  const found = PLACES.map(([place, side]) => {
    const wanted = nearest(walls, place, side, length);
    if (faces === 'upper face') return { tab: tabOn(walls[wanted]!, { place, side }, tab.width, 0, tab.height), low: undefined };
    const at = roomiest(room, wanted, walls.length, tab.height + 2 * TAB_CLEAR), { from, to } = room(at), wall = to - from;
    const height = Math.min(tab.height, wall - 2 * TAB_CLEAR), stands = height >= Math.min(LEAST_TAB, tab.height), middle = (from + to) / 2;
    const low = height < tab.height ? { place, side, x: walls[at]!.on[0], wall, height: stands ? height : 0 } : undefined;
    return { tab: stands ? tabOn(walls[at]!, { place, side }, tab.width, middle - height / 2, middle + height / 2) : undefined, low };
  });
  return { tabs: found.flatMap((one) => one.tab ?? []), low: found.flatMap((one) => one.low ?? []) };
}

/** The heights between which all of a wall stands behind a tab. */
interface Room { readonly from: Mm; readonly to: Mm }

function roomAt(walls: readonly BlockWall[], i: number, width: Mm): Room {
  const { top: [x, y] } = walls[i]!, behind = walls.filter(({ top }, k) => k === i || Math.hypot(top[0] - x, top[1] - y) <= width / 2 + APART);
  return { from: Math.max(...behind.map(({ bottom }) => bottom[2])), to: Math.min(...behind.map(({ top }) => top[2])) };
}

/** The place on the wall that is wanted: square to the side at the waist, half way round at the heel. */
function nearest(walls: readonly BlockWall[], place: Tab['place'], side: Tab['side'], length: Mm): number {
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
