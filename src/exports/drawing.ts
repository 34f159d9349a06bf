import type { Path, PathPiece } from '../geometry/path.ts';
import { add, scale, turnLeft, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { LETTERS, roomFor, type Lettering } from './letters.ts';

export { LETTERS, roomFor, WIDER } from './letters.ts';

/**
 * A drawing as it lies on paper, whatever writes it: millimetres from the upper left corner, x to the right, y DOWN.
 * Arcs keep their radius; a positive sweep therefore turns to the right on paper.
 */
export interface Drawing {
  readonly paper: Paper;
  /** What it shows, for the title of a window or a file. */
  readonly title: string;
  /** In the order they are laid down: later ones cover earlier ones. */
  readonly marks: readonly Mark[];
}

export interface Paper { readonly width: Mm; readonly height: Mm }
/** Upright. Source: ISO 216. */
export const A4: Paper = { width: 210, height: 297 };

export type Mark =
  | { readonly kind: 'line'; readonly path: Path; readonly line: LineKind; readonly ink: Ink; readonly of?: string }
  | { readonly kind: 'fill'; readonly path: Path; readonly colour: Ink | Shade; readonly of?: string }
  | Words;

/** Says which number a mark belongs to, like `left.seatHeight`: on a screen a number and its lines answer together. */
export const about = <Kind extends Mark>(of: string, mark: Kind): Kind => ({ ...mark, of });

/** One line of lettering. A turned one reads upwards, from the right edge of the sheet. */
export interface Words extends Lettering {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turned: boolean;
  readonly ink: Ink;
  readonly of?: string;
}

/** Never told apart by colour alone: on paper all of them are black. */
export type Ink = 'ink' | 'pencil' | 'computed' | 'governs';
export type Shade = 'sheet' | 'foam' | 'rubber' | 'carbon';

/** Line types of technical drawings: visible edges, dimension and extension lines, hidden edges, centre lines, neighbours. */
export type LineKind = 'visible' | 'thin' | 'hidden' | 'centre' | 'phantom';

/** Width and dashes (dash, gap, ...) in mm. Source: ISO 128-2, ratios 12:3 and 24:3:0.5:3, dots drawn long enough to print (from memory). */
export const LINES: Readonly<Record<LineKind, { readonly width: Mm; readonly dashes: readonly Mm[] }>> = {
  visible: { width: 0.5, dashes: [] },
  thin: { width: 0.18, dashes: [] },
  hidden: { width: 0.25, dashes: [3, 0.75] },
  centre: { width: 0.18, dashes: [6, 0.8, 0.5, 0.8] },
  phantom: { width: 0.18, dashes: [6, 0.8, 0.5, 0.8, 0.5, 0.8] },
};

export const drawn = (path: Path, line: LineKind, ink: Ink = 'ink'): Mark => ({ kind: 'line', path, line, ink });
export const stroke = (from: Point, to: Point, line: LineKind = 'thin', ink: Ink = 'pencil'): Mark => drawn([{ kind: 'line', from, to }], line, ink);
export const filled = (path: Path, colour: Ink | Shade): Mark => ({ kind: 'fill', path, colour });

/** Straight pieces through points, closed where asked. */
export function polyline(points: readonly Point[], closed = false): Path {
  const ends = closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.map((to, i): PathPiece => ({ kind: 'line', from: points[i]!, to }));
}
export const circle = (centre: Point, radius: Mm): Path =>
  [0, Math.PI].map((start): PathPiece => ({ kind: 'arc', centre, radius, start, sweep: Math.PI }));

const ARROW: { readonly length: Mm; readonly half: Mm } = { length: 2.5, half: 0.42 };
/** A slim filled arrow head with its tip at a point, flying in a (unit) direction. */
export function arrowHead(tip: Point, direction: Point, ink: Ink = 'pencil'): Mark {
  const back = add(tip, scale(direction, -ARROW.length)), aside = scale(turnLeft(direction), ARROW.half);
  return filled(polyline([tip, add(back, aside), add(back, scale(aside, -1))], true), ink);
}
export const ARROW_LENGTH: Mm = ARROW.length;

export interface Box { readonly left: Mm; readonly top: Mm; readonly right: Mm; readonly bottom: Mm }

/** How far letters stand above and hang below their line, as shares of their size. */
export const RISES = 0.74, HANGS = 0.21;

/** The box a line of lettering covers. */
export function boxOf(words: Words): Box {
  const { at: [x, y], size, turned, anchor } = words, width = roomFor(words.text, words);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  return turned
    ? { left: x - RISES * size, right: x + HANGS * size, top: y - (width - before), bottom: y + before }
    : { left: x - before, right: x + width - before, top: y - RISES * size, bottom: y + HANGS * size };
}

export const overlap = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
export const grown = ({ left, top, right, bottom }: Box, by: Mm): Box => ({ left: left - by, top: top - by, right: right + by, bottom: bottom + by });

type Style = Partial<Pick<Words, 'size' | 'bold' | 'anchor' | 'turned' | 'ink'>>;
export const words = (text: string, at: Point, style: Style = {}): Words =>
  ({ kind: 'text', at, text, size: LETTERS.label, anchor: 'start', turned: false, ink: 'ink', ...style });

/** Lettering that interrupts the lines beneath it, as on a drawing by hand. */
export function clearWords(label: Words): Mark[] {
  const { left, top, right, bottom } = grown(boxOf(label), 0.3);
  return [filled(polyline([[left, top], [right, top], [right, bottom], [left, bottom]], true), 'sheet'), label];
}
