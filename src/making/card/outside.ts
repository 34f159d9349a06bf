import { figuresOf, type Figure, type FigureKey } from '../../checks/figures.ts';
import { rounded } from '../../checks/say.ts';
import { stationAt } from '../../checks/stations.ts';
import type { Side } from '../../fitting/words.ts';
import { partsOf, type Shoe } from '../../pair/shoe.ts';
import type { Bench } from './bench.ts';

/**
 * What a row of the list asks at least. @property codes findings that tell more of it
 * @property left the value that must reach it, where it is not the figure of the row itself
 */
export interface Least { readonly least: number; readonly codes: readonly string[]; readonly left?: (shoe: Shoe, figure: Figure) => number }

/** Foam at the ball, of a sole whose figure counts the outsole too. */
export const foamAtBall = (shoe: Shoe, { value }: Figure): number => { const parts = partsOf(shoe); return parts ? stationAt(parts.shape, shoe.last.tread).foam : value; };

/** What stands beside a planned number that does not pass its own row, so that nobody takes it for a fault of the bench. */
export function outsideWords({ design: { shoes, fitting, findings } }: Bench, key: FigureKey, { least, codes, left = (_, { value }) => value }: Least): string | undefined {
  const sides = shoes.flatMap((shoe): Side[] => {
    const figure = figuresOf(shoe, fitting).find((one) => one.key === key);
    return figure && Number(rounded(left(shoe, figure), figure.digits)) < least ? [shoe.side] : [];
  });
  return sides.length === 0 ? undefined : plannedOutside(sides, sides.every((side) => findings.some((finding) => codes.includes(finding.code) && finding.side === side)));
}

/** The soles of a pair, judged where the findings judge them: whole shoes where they were weighed. */
export const weightOutside = ({ design: { findings } }: Bench): string | undefined =>
  findings.some(({ code }) => code === 'WEIGHT_DIFFERS') ? plannedOutside([], true) : undefined;

function plannedOutside(sides: readonly Side[], told: boolean): string {
  const who = sides.length ? ` (${sides.map((side) => (side === 'left' ? 'L' : 'R')).join(', ')})` : '';
  return `planned outside${who}: ${told ? 'see the findings in the all-figures paper' : 'agree on it before cutting'}`;
}
