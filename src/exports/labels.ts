import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { boxOf, grown, overlap, type Box, type Words } from './drawing.ts';

export type Segment = readonly [from: Point, to: Point];

/** Where a label may stand, and the leader that would tie it to what it names. */
export interface Place { readonly at: Point; readonly leader?: Segment }

/** A label and its places, best first. */
export interface Wish {
  readonly label: Words;
  readonly places: readonly Place[];
  /** How far a frame around it stands off. */
  readonly frame?: Mm;
  /** The leader ends on what the label measures, with an arrow. */
  readonly arrow?: boolean;
}

/** What labels keep clear of: other lettering and bodies always, lines where there is a choice. */
export interface Taken {
  readonly boxes: readonly Box[];
  /** Kept clear of like other lettering, but leaders run through them at no cost. */
  readonly bodies?: readonly Box[];
  readonly lines: readonly Segment[];
  readonly within: Box;
}

/** A wish with its label in place. */
export interface Placed extends Wish { readonly leader: Segment | undefined }

/** Room between one label and the next, so that they stay apart in a system font that runs wider. */
const APART: Mm = 0.7;
/** What a place costs for each better one before it, in crossed lines. */
const LATER = 0.02;
/** What it costs to run a leader through other lettering, which then interrupts it. */
const THROUGH = 3;

/**
 * Sets labels one after another so that none covers another: each takes the free place that crosses the fewest lines.
 * @throws Error when a label finds no room, which is a fault of the drawing
 */
/** Thrown where a paper is too small for all that stands on it. */
export class NoRoom extends Error {
  constructor(text: string) {
    super(`the drawing has no room left for the label "${text}"; it needs a larger paper`);
    this.name = 'NoRoom';
  }
}

export function placed(wishes: readonly Wish[], { boxes, bodies = [], lines, within }: Taken): Placed[] {
  const full = [...boxes], drawnLines = [...lines], set: Placed[] = [];
  for (const wish of wishes) {
    const { label, places, frame = 0 } = wish;
    const now = { boxes: full, bodies, lines: drawnLines, within }, size = grown(boxOf({ ...label, at: [0, 0] }), frame);
    const best = firstBest(size, places, now) ?? firstBest(size, anywhere(places[0]!, within), now);
    if (!best) throw new NoRoom(label.text);
    set.push({ ...wish, label: { ...label, at: best.at }, leader: best.leader });
    full.push(moved(size, best.at));
    if (best.leader) drawnLines.push(best.leader);
  }
  return set;
}

const STEP: Mm = 3;
/** Where no wished place is free: all over the sheet, the nearest first, on a leader. */
function anywhere({ at: [x, y], leader }: Place, { left, top, right, bottom }: Box): Place[] {
  const spots = Array.from({ length: Math.floor((bottom - top) / STEP) }, (_, row) => Array.from({ length: Math.floor((right - left) / STEP) }, (_, column): Point => [left + column * STEP, top + row * STEP])).flat();
  const from = (spot: Point): number => (spot[0] - x) ** 2 + (spot[1] - y) ** 2, named = leader?.[1] ?? [x, y];
  return spots.sort((a, b) => from(a) - from(b)).map((at): Place => ({ at, leader: [[at[0], at[1] + (at[1] < named[1] ? 1 : -3)], named] }));
}

function firstBest(size: Box, places: readonly Place[], { boxes, bodies = [], lines, within }: Taken): Place | undefined {
  const near = besideAny(lines, size, places);
  let best: Place | undefined, fewest = Infinity;
  for (const [i, place] of places.entries()) {
    if (i * LATER >= fewest) break;
    const { at, leader } = place, box = moved(size, at);
    if (!inside(box, within)) continue;
    const room = grown(box, APART);
    if ([boxes, bodies].some((all) => all.some((other) => overlap(room, other)))) continue;
    const through = leader ? boxes.filter((other) => crosses(other, leader)).length : 0;
    const cost = near.filter((line) => crosses(box, line)).length + through * THROUGH + i * LATER;
    if (cost < fewest) { best = place; fewest = cost; }
  }
  return best;
}

/** The lines that any of the places could stand on, left or right of none of them. */
function besideAny(lines: readonly Segment[], { left, right }: Box, places: readonly Place[]): readonly Segment[] {
  const xs = places.map(({ at: [x] }) => x);
  const from = Math.min(...xs) + left, to = Math.max(...xs) + right;
  return lines.filter(([[ax], [bx]]) => Math.max(ax, bx) >= from && Math.min(ax, bx) <= to);
}

const moved = ({ left, right, top, bottom }: Box, [x, y]: Point): Box => ({ left: left + x, right: right + x, top: top + y, bottom: bottom + y });

const inside = (box: Box, { left, top, right, bottom }: Box): boolean => box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom;

/** Whether a straight line runs through a box: it is neither past one side of it nor clear of all its corners. */
export function crosses({ left, top, right, bottom }: Box, [[ax, ay], [bx, by]]: Segment): boolean {
  if (Math.max(ax, bx) < left || Math.min(ax, bx) > right || Math.max(ay, by) < top || Math.min(ay, by) > bottom) return false;
  const dx = bx - ax, dy = by - ay, side = (x: number, y: number): number => dx * (y - ay) - dy * (x - ax);
  const a = side(left, top), b = side(right, top), c = side(left, bottom), d = side(right, bottom);
  return Math.min(a, b, c, d) <= 0 && Math.max(a, b, c, d) >= 0;
}
