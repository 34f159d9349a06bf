import type { FigureKey } from '../checks/figures.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { levelDimension, uprightDimension, type Dimension } from './dimension.ts';
import { about } from './drawing.ts';
import { bare, bareMeasure } from './numbers.ts';
import { onSheet, part, upperAt, type Part, type Picture } from './picture.ts';
import { spot } from './view.ts';

/** Room beside a sole for its upright dimensions, and below the ground for its level ones, on paper. */
export const BESIDE = { left: 15, right: 9 } as const;
const ROW: Mm = 6.5, FIRST_ROW: Mm = 8.5, COLUMN: Mm = 6, FIRST_COLUMN: Mm = 5;
export const ROWS_BELOW: Mm = FIRST_ROW + 4 * ROW;

export const sideDimensions = (picture: Picture): Part => part({ dimensions: [...level(picture, 'all'), ...upright(picture)] });

/** Where a drawing is small: without the tread, which is measured on the last. */
export const fewDimensions = (picture: Picture): Part => part({ dimensions: [...level(picture, 'few'), ...upright(picture)] });
export const FEW_ROWS_BELOW: Mm = FIRST_ROW + 3 * ROW;

/** A dimension and the figure it shows answer together on a screen. */
function dimensionOf({ shoe: { side } }: Picture, key: FigureKey, { marks, label }: Dimension): Dimension {
  const of = `${side}.${key}`;
  return { marks: marks.map((mark) => about(of, mark)), label: about(of, label) };
}

/** From the heel, the shortest nearest to the ground. */
function level(picture: Picture, shown: 'all' | 'few'): Dimension[] {
  const { shoe, along, book, view } = picture, { last } = shoe.fitting;
  const row = (i: number): Mm => view.zero[1] + FIRST_ROW + i * ROW;
  const between = (from: Mm, to: Mm, i: number, text: string): Dimension => levelDimension(spot(view, [from, 0]), spot(view, [to, 0]), row(i), text);
  const fromHeel = (to: Mm, i: number, text: string): Dimension => between(along(0), to, i, text);
  const length = (i: number): Dimension => fromHeel(along(last.length.value), i, `last ${bareMeasure(last.length)}`);
  const ends = (first: number): Dimension[] => (shown === 'few' ? [length(first)] : [fromHeel(along(last.tread.value), first, `tread ${bareMeasure(last.tread)}`), length(first + 1)]);
  if (shoe.kind === 'match') return ends(0);
  const { mid, pivot, stance, apex } = shoe.rocker;
  return [
    ...(mid.frontX > mid.rearX ? [dimensionOf(picture, 'standingFlat', between(mid.rearX, mid.frontX, 0, `flat ${bare(book('standingFlat')!)}`))] : []),
    dimensionOf(picture, 'pivotX', fromHeel(pivot[0], 0, `pivot ${bare(book('pivotX')!)}`)),
    dimensionOf(picture, 'standingPoint', fromHeel(along(stance.standing), 1, `standing point ${bare(book('standingPoint')!)}`)),
    dimensionOf(picture, 'apex', fromHeel(apex.point[0], 2, `apex ${bare(book('apex')!)} (${bare(book('apexShare')!)} % from the heel)`)),
    ...ends(3),
  ];
}

/** Ball and seat on the left, the tip on the right. */
function upright(picture: Picture): Dimension[] {
  const { shoe: { kind, last }, profile: { back, tip }, book, view } = picture, ground = view.zero[1];
  const left = spot(view, [Math.min(back.from[0], back.to[0]), 0])[0], right = spot(view, [Math.max(tip.from[0], tip.to[0]), 0])[0];
  const height = ([x, y]: Point, key: FigureKey, column: number, name: string): Dimension =>
    dimensionOf(picture, key, uprightDimension([left, ground], [x, y], left - FIRST_COLUMN - column * COLUMN, `${name} ${bare(book(key)!)}`));
  const raised = kind === 'match', seatY = onSheet(picture, upperAt(picture, last.seatLength / 2))[1];
  return [
    // The level of the tread is drawn through the sole: the seat stands above it by the pitch.
    height(onSheet(picture, upperAt(picture, last.tread)), raised ? 'raiseBall' : 'ballHeight', 0, raised ? 'raise at tread' : 'height at tread'),
    height([left, seatY], raised ? 'raiseSeat' : 'seatHeight', 1, raised ? 'raise at seat' : 'height at seat'),
    dimensionOf(picture, 'toeSpringOfShoe', uprightDimension([right, ground], onSheet(picture, tip.from), right + COLUMN, `toe spring ${bare(book('toeSpringOfShoe')!)}`)),
  ];
}
