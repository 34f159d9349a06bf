import { add, subtract, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { boxOf, grown, overlap, type Box, type Words } from './drawing.ts';

export type Segment = readonly [from: Point, to: Point];

/** Where a label may stand, and the leader that would tie it to what it names. */
export interface Place { readonly at: Point; readonly leader?: Segment }

/** A label and its places, best first. */
export interface Wish {
  readonly label: Words;
  readonly places: Places;
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
export interface Placed extends Wish { readonly leader: Segment | undefined; readonly choice: Choice }

/** Which place a label took: of those wished, or so far from the first of them. */
export type Choice = { readonly nth: number } | { readonly off: Point };

/** Places in rows of equal length, each made only when somebody looks that far. */
export interface Places extends Iterable<Place> { readonly at: (n: number) => Place | undefined }
export const rowsOf = (rows: number, row: (step: number) => readonly Place[]): Places => ({
  *[Symbol.iterator]() { for (let step = 0; step < rows; step++) yield* row(step); },
  at: (n) => { const width = row(0).length; return row(Math.floor(n / width))[n % width]; },
});

/** Room between one label and the next, and between a label and a line, so that they stay apart in a system font that runs wider. */
const APART: Mm = 0.7;
/** What a place costs for each better one before it, in crossed lines. */
const LATER = 0.02;
/** What it costs to run a leader through other lettering, which then interrupts it. */
const THROUGH = 3;

/** Thrown where a paper is too small for all that stands on it. */
export class NoRoom extends Error {
  constructor(text: string) {
    super(`the drawing has no room left for the label "${text}"; it needs a larger paper`);
    this.name = 'NoRoom';
  }
}

/**
 * Sets labels one after another so that none covers another: each takes the free place that crosses the fewest lines.
 * @param before what the same labels took on a drawing much like this one: they stay there where that is still free, so
 * that they do not jump about while a hand drags, and need not be looked for
 * @throws NoRoom when a label finds none
 */
export function placed(wishes: readonly Wish[], { boxes, bodies = [], lines, within }: Taken, before: readonly Choice[] = []): Placed[] {
  const full = [...boxes], drawnLines = [...lines], set: Placed[] = [], kept = before.length === wishes.length ? before : [];
  for (const [i, wish] of wishes.entries()) {
    const { label, places, frame = 0 } = wish;
    const now = { boxes: full, bodies, lines: drawnLines, within }, size = grown(boxOf({ ...label, at: [0, 0] }), frame);
    const found = stillFree(size, places, kept[i], now) ?? firstBest(size, places, now) ?? elsewhere(size, places, now);
    if (!found) throw new NoRoom(label.text);
    const { place: { at, leader }, choice } = found;
    set.push({ ...wish, label: { ...label, at }, leader, choice });
    full.push(moved(size, at));
    if (leader) drawnLines.push(leader);
  }
  return set;
}

interface Found { readonly place: Place; readonly choice: Choice }

function stillFree(size: Box, places: Places, choice: Choice | undefined, taken: Taken): Found | undefined {
  const place = choice && ('nth' in choice ? places.at(choice.nth) : offFrom(places.at(0)!, choice.off));
  return place && isFree(moved(size, place.at), taken) ? { place, choice } : undefined;
}

const STEP: Mm = 3;
/** Where no wished place is free: all over the sheet, the nearest first, on a leader. */
function elsewhere(size: Box, places: Places, taken: Taken): Found | undefined {
  const first = places.at(0)!, [x, y] = first.at, { left, top, right, bottom } = taken.within;
  const spots = Array.from({ length: Math.floor((bottom - top) / STEP) }, (_, row) => Array.from({ length: Math.floor((right - left) / STEP) }, (_, column): Point => [left + column * STEP, top + row * STEP])).flat();
  const from = (spot: Point): number => (spot[0] - x) ** 2 + (spot[1] - y) ** 2;
  const found = firstBest(size, spots.sort((a, b) => from(a) - from(b)).map((at) => offFrom(first, subtract(at, first.at))), taken);
  return found && { place: found.place, choice: { off: subtract(found.place.at, first.at) } };
}

function offFrom({ at, leader }: Place, off: Point): Place {
  const spot = add(at, off), named = leader?.[1] ?? at;
  return { at: spot, leader: [[spot[0], spot[1] + (spot[1] < named[1] ? 1 : -3)], named] };
}

function firstBest(size: Box, places: Places, taken: Taken): Found | undefined {
  let best: Found | undefined, fewest = Infinity, i = -1;
  for (const place of places) {
    if (++i * LATER >= fewest) break;
    const { at, leader } = place, box = moved(size, at), room = grown(box, APART);
    if (!isFree(box, taken)) continue;
    const through = leader ? taken.boxes.filter((other) => crosses(other, leader)).length : 0;
    const cost = taken.lines.filter((line) => crosses(room, line)).length + through * THROUGH + i * LATER;
    if (cost < fewest) { best = { place, choice: { nth: i } }; fewest = cost; }
  }
  return best;
}

function isFree(box: Box, { boxes, bodies = [], within }: Taken): boolean {
  const room = grown(box, APART);
  return inside(box, within) && ![boxes, bodies].some((all) => all.some((other) => overlap(room, other)));
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
