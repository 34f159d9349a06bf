import { figuresOf } from '../../checks/figures.ts';
import { mm } from '../../checks/say.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { angleAt, heightAt } from '../../profile/groundFace.ts';
import type { ToeEnd } from './toeWedge.ts';

/** The end of the ground face, which the wedge is pushed under: the edge stands out ahead of the last, so it is higher than the toe spring of the shoe. */
export const toeEndOf = ({ shape: { face }, bodies: { whole: { rim } } }: SoleParts): ToeEnd => ({ height: heightAt(face, rim.end), slope: angleAt(face, rim.end) });

/** What the wedge reads, and how it is said; it is as sure as the toe spring of the shoe. @property atLast the figure, at the tip of the last */
export interface SpringByWedge { readonly height: Mm; readonly words: string; readonly atLast: string }

export function springByWedge(shoe: Shoe, parts: SoleParts, fitting: Fitting): SpringByWedge {
  const { height } = toeEndOf(parts), figure = figuresOf(shoe, fitting).find(({ key }) => key === 'toeSpringOfShoe'), guessed = figure?.estimated ? ' (est.)' : '';
  return { height, words: `${mm(height)}${guessed}`, atLast: figure ? mm(figure.value) : '' };
}
