import type { Side } from '../fitting/words.ts';
import { lengthOf, pointOn, type Path } from '../geometry/path.ts';
import { between, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { drawn, LETTERS, words, type Ink, type LineKind, type Mark, type Words } from './drawing.ts';
import type { Place, Segment, Wish } from './labels.ts';
import { part, together, type Part } from './picture.ts';

/** One part in true size, any length: millimetres as on paper, y down, its zero anywhere. */
export interface Template {
  readonly side: Side;
  /** As it ends the name of a file. */
  readonly stem: string;
  /** As it is lettered in large. */
  readonly part: string;
  /** What to know before it is cut. */
  readonly notes: readonly string[];
  readonly picture: Part;
  /** Lettering that has its place already. */
  readonly fixed: readonly Words[];
}

/** Paper runs down where the sole is drawn up. */
const down = ([x, y]: Point): Point => [x, -y];
export const trueSize = (path: Path): Path => path.map((piece) => piece.kind === 'line'
  ? { kind: 'line', from: down(piece.from), to: down(piece.to) }
  : { ...piece, centre: down(piece.centre), start: -piece.start, sweep: -piece.sweep });

/** A line of the sole as it lies in its plan, y up. */
export function line(path: Path, kind: LineKind, ink: Ink = 'ink'): Part {
  const onPaper = trueSize(path);
  return part({ shapes: [drawn(onPaper, kind, ink)], lines: segments(onPaper) });
}

/** A path as short straight segments, for what must keep off it. */
export const segments = (path: Path): Segment[] => path.flatMap((piece) => {
  const steps = piece.kind === 'line' ? 1 : Math.ceil(lengthOf(piece) / 4);
  return Array.from({ length: steps }, (_, i): Segment => [pointOn(piece, i / steps), pointOn(piece, (i + 1) / steps)]);
});

/** A line that lettering may interrupt: of a row of stations each. */
export const faint = (path: Path): Part => part({ shapes: [drawn(trueSize(path), 'thin', 'pencil')] });

/** A straight line with its name written along it, upwards. */
export function namedLine(name: string, path: Path, kind: LineKind, ink: Ink = 'ink'): Part {
  const onPaper = trueSize(path), ends = [onPaper[0], onPaper.at(-1)] as const;
  if (!ends[0] || !ends[1]) return part({});
  return together([line(path, kind, ink), part({ wishes: [beside(name, pointOn(ends[0], 0), pointOn(ends[1], 1))] })]);
}

const SHARES = [0.72, 0.28, 0.55, 0.42, 0.82, 0.18], ASIDE: readonly Mm[] = [0.9, 3, 6, 9, 14, 20];

/** Turned lettering left or right of an upright line, best near its ends. */
function beside(name: string, a: Point, b: Point): Wish {
  const label = words(name, a, { turned: true, anchor: 'middle' });
  const places = ASIDE.flatMap((aside) => SHARES.flatMap((share): Place[] => {
    const [x, y] = between(a, b, share);
    return [{ at: [x - aside, y] }, { at: [x + aside + LETTERS.label * 0.75, y] }];
  }));
  return { label, places };
}

/** Level lettering that looks for room round a place of the plan, never tied to it. @param way forward or back only, for what must not leave the outline at an end */
export function lettering(text: string, [x, y]: Point, style: Partial<Pick<Words, 'size' | 'bold'>> = {}, way: 1 | 0 | -1 = 0): Part {
  const label = words(text, down([x, y]), { anchor: 'middle', ...style }), tries: readonly Mm[] = [0, 8, -8, 16, -16, 26, -26, 38, -38, 52, -52, 70, -70, 90, -90].filter((aside) => aside * way >= 0);
  const places = [0, 5, -5, 10, -10, 16, -16, 23, -23].flatMap((row) => tries.map((aside): Place => ({ at: [x + aside, -y + row] })));
  return part({ wishes: [{ label, places }] });
}

/** A name on a leader to a point of a line, written inside (towards a level) or outside of it. */
export function tied(text: string, at: Point, inwards: 1 | -1): Part {
  const [x, y] = down(at), label = words(text, [x, y], { anchor: 'middle' });
  const places = [6, 9, 12, 16, 20].flatMap((off) => [0, 10, -10, 20, -20, 32, -32].map((aside): Place => {
    const foot: Point = [x + aside, y + inwards * off];
    return { at: [foot[0], foot[1] + (inwards > 0 ? 2.6 : -0.8)], leader: [foot, [x, y]] };
  }));
  return part({ wishes: [{ label, places }] });
}

export const isLine = (mark: Mark): mark is Extract<Mark, { kind: 'line' }> => mark.kind === 'line';
