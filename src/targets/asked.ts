import type { Targets } from '../fitting/fitting.ts';
import type { LookedAt, RockerOutcome } from './outcome.ts';
import type { Bound, Term } from './task.ts';

/** A limit the sheet may set on what is seen of a shoe. */
export type LimitName = Exclude<keyof Targets, 'free' | 'spans' | 'tipWanted'>;
export interface LimitKind { readonly label: string; readonly of: LookedAt; readonly sign: 1 | -1; readonly unit: 'mm' | 'g' }

export const LIMITS: Readonly<Record<LimitName, LimitKind>> = {
  seatHeightAtMost: { label: 'Seat height at most', of: 'seatHeight', sign: 1, unit: 'mm' },
  ballHeightAtMost: { label: 'Ball height at most', of: 'ballHeight', sign: 1, unit: 'mm' },
  ballThicknessAtMost: { label: 'Edge at the ball at most', of: 'ballThickness', sign: 1, unit: 'mm' },
  tipAtMost: { label: 'Thickness at the tip at most', of: 'tip', sign: 1, unit: 'mm' },
  toeSpringAtLeast: { label: 'Toe spring of the shoe at least', of: 'toeSpring', sign: -1, unit: 'mm' },
  toeSpringAtMost: { label: 'Toe spring of the shoe at most', of: 'toeSpring', sign: 1, unit: 'mm' },
  weightAtMost: { label: 'Weight of the sole at most', of: 'weight', sign: 1, unit: 'g' },
  seatDifferenceAtMost: { label: 'Seats differ by at most', of: 'seatDifference', sign: 1, unit: 'mm' },
};
const LIMIT_NAMES = Object.keys(LIMITS) as readonly LimitName[];

/** A limit as it stands on the sheet, in mm or g. */
export interface Limit extends LimitKind { readonly name: LimitName; readonly limit: number }

export const limitsOf = (targets: Targets): Limit[] => LIMIT_NAMES.flatMap((name) => {
  const limit = targets[name];
  return limit === undefined ? [] : [{ name, limit, ...LIMITS[name] }];
});

/** How much past a limit is felt as one: a millimetre, or ten grams. */
export const FELT_AS_ONE = { mm: 1, g: 10 };
export const boundOf = ({ of, sign, limit, unit }: Limit): Bound => ({ of, sign, limit, scale: FELT_AS_ONE[unit] });

/**
 * What each thing lost weighs, in degrees of roll. Common practice of the trade; all of it is told in plain units besides.
 * - A degree at strike and one at toe-off weigh alike: both are a degree of the turning that a step takes.
 * - A degree more on a toe arc lowers the hip by some 5 mm by itself, so a millimetre of hip drop weighs a tenth.
 * - A standing flat costs hardly any height and wear makes one anyway: 10 mm of it, too long or too short, weigh as a degree.
 * - A tip that misses the thickness wanted by a millimetre shows as much as a degree is felt.
 */
export const WEIGHTS = { strike: 1, toeOff: 1, dropStrike: 0.1, dropToeOff: 0.1, flat: 0.1, tip: 1 } as const;

/** What is lost against the shoe as it is ordered, each in its own unit, none of it less than nothing; and all of it weighed. */
export interface Loss {
  /** Degrees of roll. */
  readonly strike: number;
  readonly toeOff: number;
  /** How much further the hip drops, mm. */
  readonly dropStrike: number;
  readonly dropToeOff: number;
  /** How far the flat, and the tip where one is wanted, miss what was asked, mm. */
  readonly flat: number;
  readonly tip: number;
  readonly weighed: number;
}

/** What a shoe is held against: its figures as it is ordered, without limits. */
export type Reference = Readonly<Record<'strike' | 'toeOff' | 'dropStrike' | 'dropToeOff' | 'flat', number>> & { readonly tip: number | undefined };

export function lossAgainst(asked: Reference, { strike, toeOff, dropStrike, dropToeOff, flat, tip }: RockerOutcome['figures']): Loss {
  const lost = {
    strike: Math.max(0, asked.strike - strike), toeOff: Math.max(0, asked.toeOff - toeOff),
    dropStrike: Math.max(0, dropStrike - asked.dropStrike), dropToeOff: Math.max(0, dropToeOff - asked.dropToeOff),
    flat: Math.abs(flat - asked.flat), tip: asked.tip === undefined ? 0 : Math.abs(tip - asked.tip),
  };
  return { ...lost, weighed: (Object.keys(WEIGHTS) as (keyof typeof WEIGHTS)[]).reduce((sum, name) => sum + WEIGHTS[name] * lost[name], 0) };
}

/** The same as what a search weighs. */
export function termsOf(asked: Reference): Term[] {
  const term = (of: keyof typeof WEIGHTS, sign: 1 | -1, past: number): Term[] => (Number.isFinite(past) ? [{ of, sign, past, weight: WEIGHTS[of] }] : []);
  const missed = (of: 'flat' | 'tip', wanted: number | undefined): Term[] => (wanted === undefined ? [] : [...term(of, 1, wanted), ...term(of, -1, wanted)]);
  return [
    ...term('strike', -1, asked.strike), ...term('toeOff', -1, asked.toeOff),
    ...term('dropStrike', 1, asked.dropStrike), ...term('dropToeOff', 1, asked.dropToeOff), ...missed('flat', asked.flat), ...missed('tip', asked.tip),
  ];
}
