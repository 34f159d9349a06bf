import type { Path, PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';

/** Where a picture lies on paper: its zero, and paper millimetres to a millimetre of the shoe. */
export interface View { readonly zero: Point; readonly scale: number }

/** A point of the shoe on paper, where y runs down. */
export const spot = ({ zero: [x0, y0], scale }: View, [x, up]: Point): Point => [x0 + x * scale, y0 - up * scale];

export const onPaper = (view: View, path: Path): Path => path.map((piece): PathPiece => piece.kind === 'line'
  ? { kind: 'line', from: spot(view, piece.from), to: spot(view, piece.to) }
  : { kind: 'arc', centre: spot(view, piece.centre), radius: piece.radius * view.scale, start: -piece.start, sweep: -piece.sweep });

/** Scales of technical drawings, largest first. Source: ISO 5455, and its intermediate steps in common use. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 10, 20] as const;

/** One to so many: the largest scale at which a size on the shoe fits a size on paper; the smallest one where none does. */
export const scaleFor = (fits: (scale: number) => boolean): number => SCALES.find((by) => fits(1 / by)) ?? SCALES.at(-1)!;
