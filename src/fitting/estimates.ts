import { degrees, type Mm } from '../geometry/units.ts';
import type { Wearer } from './fitting.ts';
import type { Measure } from './measure.ts';
import { SURVEY_SOURCE } from './survey.ts';
import type { Sex } from './words.ts';

/**
 * What stands in for a measure that was not taken. Every estimate names its rule and, where data show it, its standard
 * error. Straight lines from the survey were fitted to its 6,068 persons by least squares: `add + times * x`.
 */

const PRACTICE = 'common practice';

const estimate = (value: number, rule: string, error?: number): Measure =>
  error === undefined ? { value, origin: 'estimated', rule } : { value, origin: 'estimated', rule, error };
const byDefault = (value: number, rule: string): Measure => ({ value, origin: 'default', rule });

interface Line { readonly add: number; readonly times: number; readonly error: number }
type BySex = Readonly<Record<Sex | 'unknown', Line>>;

const HIP_FROM_CROTCH: BySex = {
  female: { add: 113.7, times: 0.93521, error: 15.9 },
  male: { add: 77.9, times: 0.97289, error: 19.3 },
  unknown: { add: 111.1, times: 0.93521, error: 18.4 },
};
const HIP_FROM_STATURE: BySex = {
  female: { add: -126.9, times: 0.59703, error: 23 },
  male: { add: -169.9, times: 0.60976, error: 25.9 },
  unknown: { add: -26.2, times: 0.5302, error: 26.1 },
};
const MALLEOLUS_FROM_STATURE: BySex = {
  female: { add: 6, times: 0.03484, error: 4.6 },
  male: { add: 5, times: 0.03868, error: 5 },
  unknown: { add: -26.7, times: 0.05614, error: 5.2 },
};

/** The pivot lies about 5 mm above the outer ankle bone's most lateral point. */
const PIVOT_ABOVE_MALLEOLUS: Mm = 5;

function fromLine(lines: BySex, what: string, of: string, x: number, sex: Sex | undefined, beyond = 0): Measure {
  const { add, times, error } = lines[sex ?? 'unknown'];
  const sum = `${times} × ${of} ${add < 0 ? '−' : '+'} ${Math.abs(add)}${beyond === 0 ? '' : ` + ${beyond}`}`;
  return estimate(add + times * x + beyond, `${what} = ${sum} (${sex ?? 'sex not given'}; ${SURVEY_SOURCE})`, error);
}

/** Hip joint above the sole from crotch height, else from stature; undefined when neither is known. */
export function hipHeightFor({ crotchHeight, stature, sex }: Wearer): Measure | undefined {
  if (crotchHeight) return fromLine(HIP_FROM_CROTCH, 'hip height', 'crotch height', crotchHeight.value, sex);
  return stature && fromLine(HIP_FROM_STATURE, 'hip height', 'stature', stature.value, sex);
}

/** Ankle pivot above the sole from the measured height of the outer ankle bone. */
export const pivotHeightAbove = ({ value, accuracy }: Measure): Measure => ({
  ...estimate(value + PIVOT_ABOVE_MALLEOLUS, `ankle pivot = outer ankle bone + ${PIVOT_ABOVE_MALLEOLUS} mm (${PRACTICE})`), ...(accuracy === undefined ? {} : { accuracy }),
});

/** Ankle pivot above the sole from stature, a poor guess that only a free ankle bears; undefined without stature. */
export const pivotHeightFor = ({ stature, sex }: Wearer): Measure | undefined =>
  stature && fromLine(MALLEOLUS_FROM_STATURE, 'ankle pivot', 'stature', stature.value, sex, PIVOT_ABOVE_MALLEOLUS);

export const pivotForwardFor = (footLength: Mm): Measure =>
  estimate(0.24 * footLength, `0.24 × foot length (${PRACTICE})`, 10);
export const ballInnerFor = (footLength: Mm): Measure =>
  estimate(0.7463 * footLength - 1.6, `0.7463 × foot length − 1.6 (${SURVEY_SOURCE})`, 3.8);
export const ballOuterFor = (footLength: Mm): Measure => estimate(0.63 * footLength, `0.63 × foot length (${PRACTICE})`);
export const ballWidthFor = (footLength: Mm): Measure =>
  estimate(0.376 * footLength, `0.376 × foot length (${SURVEY_SOURCE})`, 4.6);
export const heelWidthFor = (footLength: Mm): Measure =>
  estimate(0.268 * footLength, `0.268 × foot length (${SURVEY_SOURCE})`, 4.8);

/** Hip ahead of the ankle in quiet standing. Source: Woodhull 1985. */
export const HIP_AHEAD: Measure = estimate(62, '62 ± 13 mm in quiet standing (Woodhull 1985)', 13);

export const lastLengthFor = (footLength: Mm, allowance: Mm): Measure =>
  estimate(footLength + allowance, `foot length + ${Number(allowance.toFixed(2))} mm allowance (${PRACTICE}; 15 to 20 published)`);
export const seatLengthFor = (lastLength: Mm): Measure =>
  estimate(lastLength / 4, 'a quarter of the last length (shoe glossary)');
export const treadFor = (lastLength: Mm): Measure =>
  estimate(0.715 * lastLength, `0.715 × last length (${PRACTICE}, 0.70 to 0.74, from memory)`);

/** For a shoe of which only the last is known. */
const LAST_SHARES = {
  innerBall: 0.7, outerBall: 0.6, ballWidth: 0.355, heelWidth: 0.253,
} as const;
export const shareOfLast = (name: keyof typeof LAST_SHARES, lastLength: Mm): Measure =>
  estimate(LAST_SHARES[name] * lastLength, `${LAST_SHARES[name]} × last length (${PRACTICE})`);

export const DEFAULT_STRIKE: Measure = byDefault(degrees(25), `25° where the tilt at heel strike was not measured (${PRACTICE})`);
export const DEFAULT_SHANK_LEAN: Measure = byDefault(0, 'shank taken as aligned upright where no lean is given');
/** What the last is taken to be where the sheet says nothing, mm. */
export const LAST_DEFAULTS = {
  heelBack: byDefault(0, `0 mm where the heel curve was not measured (${PRACTICE})`),
  camber: byDefault(0, `0 mm, a bottom flat across (${PRACTICE})`),
  insole: byDefault(4, `4 mm between foot and sole (${PRACTICE})`),
  inflare: byDefault(4, `toe set 4 mm to the inner side (${PRACTICE})`),
  matchPitch: byDefault(12, `12 mm for an ordinary shoe (${PRACTICE})`),
  matchToeSpring: byDefault(8, `8 mm for an ordinary shoe (${PRACTICE})`),
} as const;
