import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';

/** A part to be cut from board, sheet or paper, in its own plane, mm: true size, without kerf. */
export interface FlatPart {
  /** As it is lettered on the part, like `left rail, inner`. */
  readonly name: string;
  /** Closed, counter-clockwise: what is cut out. */
  readonly outline: Path;
  /** Closed, clockwise: slots and holes cut through. */
  readonly holes: readonly Path[];
  /** Lines that are drawn or scribed on it, not cut. */
  readonly marks: readonly PartMark[];
  readonly letters: readonly PartLetters[];
  /** Closed: what of a board it takes, where some of its lettering stands beside it; its outline where left out. */
  readonly around?: Path;
}

/** @property of what the line is, a trade word in capitals as layers are named, like BALL_LINE */
export interface PartMark { readonly of: string; readonly path: Path }
/** One line of lettering from its lower left corner. @property turn counter-clockwise, level where left out */
export interface PartLetters { readonly text: string; readonly at: Point; readonly size: Mm; readonly turn?: Rad }
