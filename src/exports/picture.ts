import type { FigureKey } from '../checks/figures.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { lengthOf, pointOn, type Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { partsOf, type Shoe, type SoleParts } from '../pair/shoe.ts';
import type { Dimension } from './dimension.ts';
import { about, HANGS, roomFor, type Box, type Mark, type Words } from './drawing.ts';
import { rowsOf, type Place, type Segment, type Wish } from './labels.ts';
import { figureBook, type FigureBook } from './numbers.ts';
import { sideProfile, type SideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** Where a shoe stands on paper. */
export interface Stand {
  readonly shoe: Shoe;
  readonly book: FigureBook;
  readonly view: View;
  /** Way along the drawing of a place on the long axis. */
  readonly along: (x: Mm) => Mm;
  /** The upper face as points on paper, left to right, at most 1 mm apart. */
  readonly skyline: readonly Point[];
}

/** Everything one side view is drawn from. */
export interface Picture extends Stand {
  readonly parts: SoleParts;
  readonly profile: SideProfile;
  /** How far up the paper it may reach. */
  readonly top: Mm;
}

/** A share of a view: what is fixed, the labels that still look for a place, and what those keep off. */
export interface Part {
  readonly shapes: readonly Mark[];
  readonly dimensions: readonly Dimension[];
  readonly wishes: readonly Wish[];
  /** Lines that labels had better not stand on, boxes they never do. */
  readonly lines: readonly Segment[];
  readonly boxes: readonly Box[];
  /** Drawn bodies: no label stands on them, or its patch would blot out an outline; leaders run through. */
  readonly bodies: readonly Box[];
}

/** A part whose every mark belongs to one figure of the shoe. */
export function ofFigure({ shoe: { side } }: Stand, key: FigureKey, share: Part): Part {
  const of = `${side}.${key}`;
  return {
    ...share, shapes: share.shapes.map((mark) => about(of, mark)), wishes: share.wishes.map((wish) => ({ ...wish, label: about(of, wish.label) })),
    dimensions: share.dimensions.map(({ marks, label }) => ({ marks: marks.map((mark) => about(of, mark)), label: about(of, label) })),
  };
}

export const part = (share: Partial<Part>): Part => ({ shapes: [], dimensions: [], wishes: [], lines: [], boxes: [], bodies: [], ...share });
export const together = (parts: readonly Part[]): Part => ({
  shapes: parts.flatMap(({ shapes }) => shapes), dimensions: parts.flatMap(({ dimensions }) => dimensions),
  wishes: parts.flatMap(({ wishes }) => wishes), lines: parts.flatMap(({ lines }) => lines), boxes: parts.flatMap(({ boxes }) => boxes),
  bodies: parts.flatMap(({ bodies }) => bodies),
});

/** Only where it stands, when there is no sole to make. */
export function pictureOf(shoe: Shoe, fitting: Fitting, view: View, top: Mm): Picture | Stand {
  const parts = partsOf(shoe), book = figureBook(shoe, fitting);
  if (!parts) return { shoe, book, view, along: (x) => x, skyline: [] };
  const profile = sideProfile(parts.shape), skyline = pointsAlong(onPaper(view, profile.upper));
  return { shoe, parts, profile, book, view, top, along: profile.along, skyline };
}

/** Points at most 1 mm apart on paper, so that none of the questions below falls between two of them. */
const pointsAlong = (path: Path): Point[] => path.flatMap((piece) => {
  const steps = Math.max(1, Math.ceil(lengthOf(piece)));
  return Array.from({ length: steps + 1 }, (_, i) => pointOn(piece, i / steps));
});

/** A point of the upper face over a place on the long axis. */
export const upperAt = ({ along, parts: { shape: { upper, build } } }: Picture, x: Mm): Point => [along(x), upper(x, 0) + build];

/** The highest paper place of the upper face between two places across the paper. */
export const highest = ({ skyline }: Stand, left: Mm, right: Mm): Mm =>
  skyline.reduce((least, [x, y]) => x >= left - 1 && x <= right + 1 ? Math.min(least, y) : least, Infinity);

/** A path as short straight segments on paper, for what must keep off it. */
export const segmentsOf = (view: View, path: Path): Segment[] => onPaper(view, path).flatMap((piece) => {
  const steps = piece.kind === 'line' ? 1 : Math.ceil(lengthOf(piece) / 10);
  return Array.from({ length: steps }, (_, i): Segment => [pointOn(piece, i / steps), pointOn(piece, (i + 1) / steps)]);
});

/** Places over a point on or above the upper face, tied to it by an upright leader, clear of the sole all along the label. */
export function above(picture: Stand, label: Words, [x, y]: Point): Wish {
  const width = roomFor(label.text, label), shifts = [0, 0.35, -0.35, 0.5, -0.5].map((share) => share * width);
  const places = rowsOf(40, (step) => shifts.map((shift): Place => {
    const base = Math.min(y, highest(picture, x + shift - width / 2, x + shift + width / 2)) - 1.6 - step * 1.1;
    return { at: [x + shift, base - HANGS * label.size], leader: [[x, base], [x, y]] };
  }));
  return { label, places };
}

export const onSheet = ({ view }: Stand, point: Point): Point => spot(view, point);
