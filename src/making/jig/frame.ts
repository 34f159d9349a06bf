import type { BoardOrder, JigOrder } from '../../fitting/making.ts';
import { pointAlong } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { heightsOf, type GroundFace } from '../../profile/groundFace.ts';
import { planPoint, rollX, rollY } from '../../profile/rollLine.ts';
import { groundPoint } from '../../solid/groundLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import { bushOffset } from './bush.ts';
import { runOn, setIn } from './runOn.ts';

/**
 * The frame of a jig, LEFT shoe lying on its upper, ground face up, mm: x along the walking line as in the side profile,
 * y across it to the INNER side (the shoe is turned over about its length), z up from the bench. So the crest lies along y
 * however it is turned, both rails carry the same line, and the ribs stand square to them.
 */
export interface JigFrame {
  /** Height of the ground above the bench: what is z above the ground in the shoe is `zero` - z above the bench. */
  readonly zero: Mm;
  /** The face that is cut, run on straight beyond the sole, and the edge of the rails for it; both as in the side profile. */
  readonly wanted: GroundFace;
  readonly rails: GroundFace;
  /** How far the edge of the rails lies inside the ground face: outsole and guide bush together. */
  readonly inside: Mm;
  /** Ends of the sole, and of the rails. */
  readonly sole: Span;
  readonly run: Span;
  /** Places of the ribs, middle of the board, heel to toe. */
  readonly ribs: readonly Mm[];
  /** Width of a slot: the board and its clearance. */
  readonly slot: Mm;
  /** Middle of the rails and of the stringers, -y first. */
  readonly railsAt: readonly [Mm, Mm];
  readonly stringersAt: readonly [Mm, Mm];
  /** Lower edge of the rails above the bench. */
  readonly railFoot: Mm;
  /** What stands between two places along, -y to +y: the edge and the ground line of the sole; undefined beyond it. */
  readonly across: (from: Mm, to: Mm) => Span | undefined;
}
export interface Span { readonly from: Mm; readonly to: Mm }

/** Wood left beside a slot, and between a slot and the shoe. */
export const WALL: Mm = 15;
/** Height of a stringer, and of the floor of the notches that carry the shoe. */
export const STRINGER: Mm = 36, FLOOR: Mm = 46;
/** The ribs end this far below the edge of the rails, clear of what runs on it. */
export const BELOW_EDGE: Mm = 5;
/** Least height over which rail and rib lap each other, half of it in each; least height of the ends of a rail. */
const LAP: Mm = 24, END: Mm = 14;
/** The rails run on so far beyond the sole, straight. */
const RUN: Mm = 30;
/** Between two ribs there is room for a hand's tools. */
const BETWEEN: Mm = 10;

export function jigFrame(shape: SoleShape, order: JigOrder, board: BoardOrder): JigFrame {
  const ring = ringOf(shape), slot = board.thickness + board.clearance, xs = ring.flat().map(([x]) => x);
  const sole = { from: Math.min(...xs), to: Math.max(...xs) }, ribs = ribPlaces(sole, order, board), end = board.thickness / 2 + WALL;
  const run = { from: Math.min(sole.from - RUN, ribs[0]! - end), to: Math.max(sole.to + RUN, ribs.at(-1)! + end) };
  const inside = (order.face === 'foam body' ? shape.outsole : 0) + bushOffset(shape, order);
  const face = runOn(shape.face, sole, run), wanted = setIn(face, order.face === 'foam body' ? shape.outsole : 0, run), rails = setIn(face, inside, run);
  const across = (from: Mm, to: Mm): Span | undefined => acrossBetween(ring, from, to);
  const opening = ribs.flatMap((x) => across(x - board.thickness / 2, x + board.thickness / 2) ?? []), out = order.room + WALL + slot / 2;
  const railsAt = [Math.min(...opening.map(({ from }) => from)) - out, Math.max(...opening.map(({ to }) => to)) + out] as const;
  const quarter = (railsAt[1] - railsAt[0]) / 4, stringersAt = [railsAt[0] + quarter, railsAt[1] - quarter] as const;
  const drop = ribs.map((x) => lowestUnder(rails, x, board.thickness) + BELOW_EDGE + LAP), ends = [run.from, run.to].map((x) => heightsOf(rails)(x) + END);
  const hung = ribs.map((x) => featherHeight(shape, x, across(x, x)) + order.depth), deepest = Math.max(...drop, ...ends);
  const zero = Math.max(FLOOR + Math.max(...hung), STRINGER + deepest);
  return { zero, wanted, rails, inside, sole, run, ribs, slot, railsAt, stringersAt, railFoot: zero - deepest, across };
}

/** Height in the shoe, above the ground, of the face under the last over a rib, at the edge of the sole where that is dished. */
export function featherHeight({ upper, build, line }: SoleShape, x: Mm, sole: Span | undefined): Mm {
  return build + Math.max(...[0, ...(sole ? [sole.from, sole.to] : [])].map((y) => upper(...planPoint(line, x, -y))));
}

/** How far up in the shoe, so how low over the bench, the edge of the rails lies at most within the thickness of a rib. */
export const lowestUnder = (rails: GroundFace, x: Mm, thickness: Mm): Mm =>
  Math.max(...[-1, 0, 1].map((side) => heightsOf(rails)(x + (side * thickness) / 2)));

/** Ribs from behind the heel to ahead of the toe, evenly, no further apart than asked, unless the board is too thick for that. */
function ribPlaces(sole: Span, order: JigOrder, board: BoardOrder): Mm[] {
  const out = order.room + board.thickness / 2, first = sole.from - out, last = sole.to + out;
  const count = Math.max(2, Math.min(Math.ceil((last - first) / order.ribsApart - 1e-9), Math.floor((last - first) / leastApart(board))));
  return Array.from({ length: count + 1 }, (_, i) => first + ((last - first) * i) / count);
}

/** The nearest two ribs of a board can stand, middle to middle. */
export const leastApart = ({ thickness, clearance }: BoardOrder): Mm => thickness + clearance + BETWEEN;

/** Places looked at on each piece of the edge. */
const LOOKS = 5;

/** Edge line and ground line of the sole in the frame of the jig, each a closed row of points. */
function ringOf(shape: SoleShape): Point[][] {
  const { edge, line } = shape, at = groundPoint(shape), places = Array.from({ length: edge.length * LOOKS }, (_, i) => i / LOOKS);
  const turned = (point: Point): Point => [rollX(line, point), -rollY(line, point)];
  return [places.map((w) => turned(pointAlong(edge, w))), places.map((w) => { const [x, y] = at(w); return turned([x, y]); })];
}

function acrossBetween(rings: readonly (readonly Point[])[], from: Mm, to: Mm): Span | undefined {
  const ys = rings.flatMap((ring) => ring.flatMap((b, i) => within(ring.at(i - 1)!, b, from, to)));
  return ys.length === 0 ? undefined : { from: Math.min(...ys), to: Math.max(...ys) };
}

/** y at both ends of that part of a straight line whose x lies between two places. */
function within([ax, ay]: Point, [bx, by]: Point, from: Mm, to: Mm): Mm[] {
  const low = Math.max(from, Math.min(ax, bx)), high = Math.min(to, Math.max(ax, bx));
  if (low > high) return [];
  return bx === ax ? [ay, by] : [low, high].map((x) => ay + ((x - ax) / (bx - ax)) * (by - ay));
}
