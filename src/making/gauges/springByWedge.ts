import { figuresOf } from '../../checks/figures.ts';
import { mm } from '../../checks/say.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import type { Mm } from '../../geometry/units.ts';
import { tipOf } from '../../last/outline.ts';
import type { Shoe, SoleParts } from '../../pair/shoe.ts';
import { angleAt, heightAt } from '../../profile/groundFace.ts';
import { rollX } from '../../profile/rollLine.ts';
import type { ToeEnd } from './toeWedge.ts';

/** The end of the ground face, which the wedge is pushed under. */
export const toeEndOf = ({ shape: { face }, bodies: { whole: { rim } } }: SoleParts): ToeEnd => ({ height: heightAt(face, rim.end), slope: angleAt(face, rim.end) });

/** How far ahead of the tip of the last the ground face ends, along the walking line: less than nothing where walls lean in or the crest is turned. */
const aheadOfTip = ({ shape: { last, line }, bodies: { whole: { rim } } }: SoleParts): Mm => rim.end - rollX(line, tipOf(last));
/** No hand finds places apart that are nearer than this. */
const SAME_PLACE: Mm = 0.05;

/** Where the wedge finds the end of the ground face, as seen from the tip of the last. */
export function endWords(parts: SoleParts): string {
  const ahead = aheadOfTip(parts);
  return Math.abs(ahead) < SAME_PLACE ? 'under the tip of the last' : `under the end of the edge, ${mm(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'} the tip of the last`;
}

/** How the end of the edge stands against the tip of the last: on a toe that turns up what lies ahead is higher. Nothing where they are one place. */
export function endAgainstTip(parts: SoleParts): string {
  const ahead = aheadOfTip(parts);
  return Math.abs(ahead) < SAME_PLACE ? '' : `the end of the edge lies ${mm(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'} it and stands ${ahead > 0 ? 'higher' : 'lower'}, ${mm(toeEndOf(parts).height)} on the sole as planned`;
}

/** What the wedge reads, and how it is said; it is as sure as the toe spring of the shoe. @property atLast the figure, at the tip of the last  @property where the wedge finds it */
export interface SpringByWedge { readonly height: Mm; readonly words: string; readonly atLast: string; readonly where: string }

export function springByWedge(shoe: Shoe, parts: SoleParts, fitting: Fitting): SpringByWedge {
  const { height } = toeEndOf(parts), figure = figuresOf(shoe, fitting).find(({ key }) => key === 'toeSpringOfShoe'), guessed = figure?.estimated ? ' (est.)' : '';
  return { height, words: `${mm(height)}${guessed}`, atLast: figure ? mm(figure.value) : '', where: endWords(parts) };
}
