import type { Fitting } from '../fitting/fitting.ts';
import type { Shoe } from '../pair/shoe.ts';
import type { Figure } from './figure.ts';
import { matchFigures } from './matchFigures.ts';
import type { InputField } from './inputs.ts';
import { estimatesIn, measuresShown } from './restsOn.ts';
import { rockerFigures } from './rockerFigures.ts';

export { inWords, type Figure, type FigureUnit } from './figure.ts';
export { stationsOf, type Station } from './stations.ts';
export { estimatesBehind, type FigureKey } from './restsOn.ts';

/**
 * Every number of a shoe that screen, paper and files show, in reading order: they come from here and nowhere else.
 * A figure a shoe does not have (the heel arc of a shoe without one, the raise of a level shoe) is left out.
 */
export function figuresOf(shoe: Shoe, fitting: Fitting): readonly Figure[] {
  const known = workedOut.get(shoe);
  if (known?.fitting === fitting) return known.figures;
  const figures = workOut(shoe, fitting);
  workedOut.set(shoe, { fitting, figures });
  return figures;
}

/** Checks, drawings and papers all ask for the figures of the same shoe. */
const workedOut = new WeakMap<Shoe, { readonly fitting: Fitting; readonly figures: readonly Figure[] }>();

function workOut(shoe: Shoe, fitting: Fitting): readonly Figure[] {
  const isEstimated = estimatesIn(shoe, fitting);
  const figures = shoe.kind === 'rocker' ? rockerFigures(shoe, fitting) : matchFigures(shoe);
  return figures.map((figure) => ({ ...figure, estimated: isEstimated(figure.key) }));
}

/** Measures of a shoe that its papers list: a default that no figure rests on is left out. */
export const measuresListed = (shoe: Shoe, fitting: Fitting): readonly InputField[] =>
  measuresShown(shoe, figuresOf(shoe, fitting).map(({ key }) => key));
