import type { Fitting } from '../fitting/fitting.ts';
import type { MatchShoe, RockerShoe, Shoe } from '../pair/shoe.ts';
import { figuresOf } from './figures.ts';
import type { InputField } from './inputs.ts';
import { estimatesBehind, type FigureKey } from './restsOn.ts';

/**
 * Whether advice is put in and solved before it is given, which takes as long as the shoe itself. Quick, while a hand drags:
 * the same findings, without that advice.
 */
export type Pace = 'careful' | 'quick';

/** A shoe on the bench with its figures: what the checks look at. They take every number from the figures. */
export interface Seen<Kind extends Shoe = Shoe> {
  readonly shoe: Kind;
  readonly fitting: Fitting;
  /** Value of a figure; NaN where the shoe has none, which no limit lets pass. */
  readonly number: (key: FigureKey) => number;
  /** Place a figure belongs to, x from the heel, ready to stand in a finding; empty where it has none. */
  readonly place: (key: FigureKey) => { readonly at?: number };
  /** Measures that were estimated and that a figure rests on, in the order of the sheet. */
  readonly estimates: readonly InputField[];
  readonly pace: Pace;
}

export function see<Kind extends Shoe>(shoe: Kind, fitting: Fitting, pace: Pace = 'careful'): Seen<Kind> {
  const figures = new Map(figuresOf(shoe, fitting).map((figure) => [figure.key, figure]));
  const place: Seen['place'] = (key) => { const x = figures.get(key)?.at; return x === undefined ? {} : { at: x }; };
  return { shoe, fitting, number: (key) => figures.get(key)?.value ?? NaN, place, estimates: estimatesBehind(shoe, [...figures.keys()]), pace };
}

export const isRocker = (seen: Seen): seen is Seen<RockerShoe> => seen.shoe.kind === 'rocker';
export const isMatch = (seen: Seen): seen is Seen<MatchShoe> => seen.shoe.kind === 'match';

/** Rounding of the arithmetic itself: a value this near a limit keeps to it. */
const ARITHMETIC = 1e-9;

/** True unless a value keeps to its upper limit; what is no number never does. */
export const over = (value: number, limit: number): boolean => !(value <= limit + ARITHMETIC);
/** True unless a value keeps to its lower limit; what is no number never does. */
export const under = (value: number, limit: number): boolean => !(value >= limit - ARITHMETIC);
export const outside = (value: number, [least, most]: readonly [number, number]): boolean => under(value, least) || over(value, most);

/** Severity of a value that should not fall below either of two limits, the lower one the worse; with the limit broken. */
export function shortOf(value: number, warn: number, note: number): { readonly severity: 'warn' | 'note'; readonly limit: number } | undefined {
  if (under(value, warn)) return { severity: 'warn', limit: warn };
  return under(value, note) ? { severity: 'note', limit: note } : undefined;
}
