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

/** How a length is told, from mm. */
export type SayLength = (value: number) => string;
/** On papers and in the command: of a sheet in inches in both, for papers and files are in mm. */
export const sayOn = (units: Fitting['units']): SayLength => (value) => (units === 'in' ? `${mm(value)} (${rounded(value / MM_PER_INCH, 3)} in)` : mm(value));

/** A value to take; a length is typed in the unit of the sheet, and told as all others. */
function valued({ unit, digits }: ValueToTake, value: number, say: SayLength): string {
  if (unit === 'mm') return say(value);
  return unit === 'in' ? say(value * MM_PER_INCH) : `${rounded(value, digits)}${unit === '°' ? '' : ' '}${unit}`;
}

/** What is free, what it is now, what it becomes. */
export const VALUE_HEADS: Row = ['May be changed', 'as ordered', 'becomes'];
export const valueRows = ({ values }: Pick<Solution, 'values'>, say: SayLength): Row[] =>
  values.map((value) => [value.name, valued(value, value.ordered, say), value.changed ? valued(value, value.value, say) : 'as ordered']);
/** What changes, in one line. */
export const valuesSaid = ({ values }: Pick<Solution, 'values'>, say: SayLength): string =>
  values.filter(({ changed }) => changed).map((value) => `${value.name} ${valued(value, value.value, say)}`).join(', ') || 'as ordered';

export const limitSaid = (value: number, unit: 'mm' | 'g', say: SayLength): string => (unit === 'g' ? grams(value) : say(value));

/** Beside a limit that leaves nothing to spare. */
export const JUST_KEPT = 'just kept';
export const LIMIT_HEADS: Row = ['Limit', 'asked', 'reached', ''];
export const limitRows = ({ estimated }: Pick<Answer, 'estimated'>, { limits }: Pick<Solution, 'limits'>, say: SayLength): Row[] => limits.map(({ of, label, unit, limit, reached, bites }) =>
  [label, limitSaid(limit, unit, say), `${limitSaid(reached, unit, say)}${estimated.includes(of) ? ' (est.)' : ''}`, bites ? JUST_KEPT : `${limitSaid(Math.abs(limit - reached), unit, say)} to spare`]);

/** What is told of a shoe, in what, and what of it may be lost. */
const FIGURES: readonly { readonly of: LookedAt; readonly label: string; readonly in: 'mm' | '°' | 'g'; readonly lost?: Exclude<keyof Loss, 'weighed'> }[] = [
  { of: 'strike', label: 'Strike angle reached', in: '°', lost: 'strike' }, { of: 'toeOff', label: 'Toe-off angle reached', in: '°', lost: 'toeOff' },
  { of: 'dropStrike', label: 'Hip drops to heel strike', in: 'mm', lost: 'dropStrike' }, { of: 'dropToeOff', label: 'Hip drops to toe-off', in: 'mm', lost: 'dropToeOff' },
  { of: 'flat', label: 'Standing flat', in: 'mm', lost: 'flat' }, { of: 'tip', label: 'Thickness at the tip', in: 'mm', lost: 'tip' },
  { of: 'seatHeight', label: 'Seat height', in: 'mm' }, { of: 'ballHeight', label: 'Ball height', in: 'mm' }, { of: 'ballThickness', label: 'Edge at the ball', in: 'mm' },
  { of: 'toeSpring', label: 'Toe spring of the shoe', in: 'mm' }, { of: 'seatDifference', label: 'Seats differ by', in: 'mm' }, { of: 'weight', label: 'Weight of the sole', in: 'g' },
];
const figureSaid = (value: number, unit: 'mm' | '°' | 'g', say: SayLength): string => (unit === '°' ? deg(value) : limitSaid(value, unit, say));

/** Less than this is told as nothing, in whatever unit. */
const TOLD = 0.05;

export const FIGURE_HEADS: Row = ['', 'as ordered', 'within the limits', 'lost'];

/** Figures of the shoe as ordered and within its limits, and what is lost; a weight or a difference that nothing asks for is left out. */
export function figureRows({ ordered, estimated }: Pick<Answer, 'ordered' | 'estimated'>, { figures, loss }: Pick<Solution, 'figures' | 'loss'>, say: SayLength): Row[] {
  return FIGURES.filter(({ of }) => !((of === 'weight' || of === 'seatDifference') && figures[of] === 0)).map(({ of, label, in: unit, lost }) => {
    const marked = (value: number): string => `${figureSaid(value, unit, say)}${estimated.includes(of) ? ' (est.)' : ''}`, missed = lost === undefined ? 0 : loss[lost];
    return [label, ordered ? marked(ordered[of]) : '', marked(figures[of]), missed < TOLD ? '' : figureSaid(missed, unit, say)];
  });
}

/** The loss in one line. */
export function lossSaid(loss: Loss, say: SayLength): string {
  const parts = [[loss.strike, deg, 'of strike'], [loss.toeOff, deg, 'of toe-off'], [loss.dropStrike, say, 'more hip drop at strike'], [loss.dropToeOff, say, 'more hip drop at toe-off'],
    [loss.flat, say, 'off the standing flat'], [loss.tip, say, 'off the tip wanted']] as const;
  const told = parts.filter(([value]) => value >= TOLD).map(([value, said, what]) => `${said(value)} ${what}`);
  return told.length === 0 ? 'Nothing is lost against the order.' : `Lost against the order: ${told.join(', ')}.`;
}

const loosenedSaid = ({ label, unit, works }: Loosened, say: SayLength): string => `${label} ${limitSaid(works, unit, say)}`;
/** What works in place of limits that cannot be kept. */
export const worksSaid = ({ limits }: Blame, say: SayLength): string => limits.map((one) => loosenedSaid(one, say)).join(' together with ');

/** Why there is no shoe within the limits, and what works. */
export function blameSaid(blame: readonly Blame[], say: SayLength): string[] {
  if (blame.length === 0) return ['With what may be changed there is no shoe at all that keeps to the other limits; let more be changed (order.targets.free, spans).'];
  return blame.map((one) => {
    const asked = one.limits.map(({ label, unit, limit }) => `${label} ${limitSaid(limit, unit, say)}`).join(' and ');
    return `${asked} cannot be kept. Works: ${worksSaid(one, say)}. ${lossSaid(one.loss, say)}`;
  });
}

export const HELD_UP = 'The other shoe, as it is ordered, stands so high that this one is built up to it; bring that one down first, or give it targets too.';

/** A curve in rows: what is allowed, how far the shoe turns, what is lost, what to change. */
export const CURVE_HEADS: Row = ['Height allowed', 'toe-off', 'loss weighed', 'values'];
export const curveRows = ({ label, points }: Pick<TradeOff, 'label' | 'points'>, say: SayLength): Row[] =>
  points.map(({ limit, best }) => [`${label} ${say(limit)}`, deg(best.figures.toeOff), deg(best.loss.weighed), valuesSaid(best, say)]);
