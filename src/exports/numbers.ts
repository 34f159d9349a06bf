import { rounded } from '../checks/say.ts';
import { figuresOf, type Figure, type FigureKey } from '../checks/figures.ts';
import { isEstimated, type Measure } from '../fitting/measure.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { Shoe } from '../pair/shoe.ts';

/** A number as it stands on a drawing: no unit, that stands once in the title block. */
export const bare = ({ value, digits, estimated }: Figure): string => `${rounded(value, digits)}${estimated ? ' est.' : ''}`;
export const bareMeasure = (measure: Measure, digits = 1): string => `${rounded(measure.value, digits)}${isEstimated(measure) ? ' est.' : ''}`;

/** The figures of a shoe by name; undefined for those it does not have. */
export function figureBook(shoe: Shoe, fitting: Fitting): (key: FigureKey) => Figure | undefined {
  const book = new Map(figuresOf(shoe, fitting).map((figure) => [figure.key, figure]));
  return (key) => book.get(key);
}
export type FigureBook = ReturnType<typeof figureBook>;
