import { deg, grams, mm, rounded } from '../checks/say.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { MM_PER_INCH } from '../geometry/units.ts';
import type { Loss } from './asked.ts';
import type { Blame, Loosened } from './blame.ts';
import type { LookedAt } from './outcome.ts';
import type { TradeOff } from './tradeOff.ts';
import type { Answer, Solution, ValueToTake } from './seek.ts';

/** Answers as a maker reads them, cell by cell, for screen and paper alike. */
export type Row = readonly string[];

const valued = ({ unit, digits }: ValueToTake, value: number): string => `${rounded(value, digits)}${unit === '°' ? '' : ' '}${unit}`;

/** What is free, what it is now, what it becomes. */
export const VALUE_HEADS: Row = ['May be changed', 'as ordered', 'becomes'];
export const valueRows = ({ values }: Solution): Row[] => values.map((value) => [value.name, valued(value, value.ordered), value.changed ? valued(value, value.value) : 'as ordered']);

/** A limit in its unit; a length on a sheet in inches in those too. */
export const limitSaid = (value: number, unit: 'mm' | 'g', units: Fitting['units']): string =>
  unit === 'g' ? grams(value) : units === 'in' ? `${mm(value)} (${rounded(value / MM_PER_INCH, 3)} in)` : mm(value);

export const LIMIT_HEADS: Row = ['Limit', 'asked', 'reached', ''];
export const limitRows = ({ estimated }: Pick<Answer, 'estimated'>, { limits }: Solution, units: Fitting['units']): Row[] => limits.map(({ of, label, unit, limit, reached, bites }) =>
  [label, limitSaid(limit, unit, units), `${limitSaid(reached, unit, units)}${estimated.includes(of) ? ' (est.)' : ''}`, bites ? 'bites' : `${limitSaid(Math.abs(limit - reached), unit, units)} to spare`]);

/** What is told of a shoe, its unit, and what of it may be lost. */
const FIGURES: readonly { readonly of: LookedAt; readonly label: string; readonly said: (value: number) => string; readonly lost?: Exclude<keyof Loss, 'weighed'> }[] = [
  { of: 'strike', label: 'Strike angle reached', said: deg, lost: 'strike' }, { of: 'toeOff', label: 'Toe-off angle reached', said: deg, lost: 'toeOff' },
  { of: 'dropStrike', label: 'Hip drops to heel strike', said: mm, lost: 'dropStrike' }, { of: 'dropToeOff', label: 'Hip drops to toe-off', said: mm, lost: 'dropToeOff' },
  { of: 'flat', label: 'Standing flat', said: mm, lost: 'flat' }, { of: 'tip', label: 'Thickness at the tip', said: mm, lost: 'tip' },
  { of: 'seatHeight', label: 'Seat height', said: mm }, { of: 'ballHeight', label: 'Ball height', said: mm }, { of: 'ballThickness', label: 'Edge at the ball', said: mm },
  { of: 'toeSpring', label: 'Toe spring of the shoe', said: mm }, { of: 'seatDifference', label: 'Seats differ by', said: mm }, { of: 'weight', label: 'Weight of the sole', said: grams },
];

export const FIGURE_HEADS: Row = ['', 'as ordered', 'within the limits', 'lost'];

/** Figures of the shoe as ordered and within its limits, and what is lost; a weight or a difference that nothing asks for is left out. */
export function figureRows({ ordered, estimated }: Pick<Answer, 'ordered' | 'estimated'>, { figures, loss }: Solution): Row[] {
  return FIGURES.filter(({ of }) => !((of === 'weight' || of === 'seatDifference') && figures[of] === 0)).map(({ of, label, said, lost }) => {
    const marked = (value: number): string => `${said(value)}${estimated.includes(of) ? ' (est.)' : ''}`, missed = lost === undefined ? '' : said(loss[lost]);
    return [label, ordered ? marked(ordered[of]) : '', marked(figures[of]), lost === undefined || Number.parseFloat(missed) === 0 ? '' : missed];
  });
}

/** The loss in one line. */
export function lossSaid(loss: Loss): string {
  const parts = [[loss.strike, deg, 'of strike'], [loss.toeOff, deg, 'of toe-off'], [loss.dropStrike, mm, 'more hip drop at strike'], [loss.dropToeOff, mm, 'more hip drop at toe-off'],
    [loss.flat, mm, 'off the standing flat'], [loss.tip, mm, 'off the tip wanted']] as const;
  const told = parts.map(([value, said, what]) => ({ text: `${said(value)} ${what}`, nothing: Number.parseFloat(said(value)) === 0 })).filter(({ nothing }) => !nothing);
  return told.length === 0 ? 'Nothing is lost against the order.' : `Lost against the order: ${told.map(({ text }) => text).join(', ')}.`;
}

const loosenedSaid = ({ label, unit, works }: Loosened, units: Fitting['units']): string => `${label} ${limitSaid(works, unit, units)}`;

/** Why there is no shoe within the limits, and what works. */
export function blameSaid(blame: readonly Blame[], units: Fitting['units']): string[] {
  if (blame.length === 0) return ['With what may be changed there is no shoe at all that keeps to the other limits; let more be changed (order.targets.free, spans).'];
  return blame.map(({ limits, loss }) => {
    const asked = limits.map(({ label, unit, limit }) => `${label} ${limitSaid(limit, unit, units)}`).join(' and ');
    return `${asked} cannot be kept. Works: ${limits.map((one) => loosenedSaid(one, units)).join(' together with ')}. ${lossSaid(loss)}`;
  });
}

export const HELD_UP = 'The other shoe, as it is ordered, stands so high that this one is built up to it; bring that one down first, or give it targets too.';

/** A curve in rows: what is allowed, what is reached, what is lost. */
export const CURVE_HEADS: Row = ['Height allowed', 'toe-off', 'loss weighed', 'values'];
export const curveRows = ({ label, points }: TradeOff, units: Fitting['units']): Row[] => points.map(({ limit, best: { figures, loss, values } }) => [
  `${label} ${limitSaid(limit, 'mm', units)}`, deg(figures.toeOff), deg(loss.weighed),
  values.filter(({ changed }) => changed).map((value) => `${value.name} ${valued(value, value.value)}`).join(', ') || 'as ordered',
]);
