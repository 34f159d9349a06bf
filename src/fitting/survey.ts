import type { Sex } from './words.ts';

/** Smallest, 1st percentile, 99th percentile and largest person. */
type Spread = readonly [smallest: number, p1: number, p99: number, largest: number];

/**
 * Measures of 1,986 women and 4,082 men, mm and kg, percentiles between neighbouring persons by straight lines, to 0.1.
 * Source: ANSUR II, the 2012 US Army anthropometric survey (Gordon et al. 2014), public release.
 */
export const SURVEY = {
  footLength: { female: [198, 219, 276, 286], male: [216, 242, 302, 323] },
  ballLength: { female: [151, 161, 204, 216], male: [156, 178, 225, 245] },
  /** Greater trochanter above the floor. */
  hipHeight: { female: [660, 745.9, 952, 1018], male: [731, 795, 1022, 1095] },
  stature: { female: [1409, 1482.6, 1777.6, 1829], male: [1491, 1601.6, 1927, 1993] },
  crotchHeight: { female: [610, 685, 888.2, 947], male: [702, 746.8, 960, 1031] },
  mass: { female: [35.8, 46.7, 97.5, 119.6], male: [39.3, 57.8, 124.2, 144.2] },
  malleolusHeight: { female: [43, 51, 75, 79], male: [54, 60, 87, 93] },
} as const satisfies Record<string, Record<Sex, Spread>>;
export type SurveyName = keyof typeof SURVEY;

export const SURVEY_SOURCE = '2012 US Army survey, Gordon et al. 2014';

/** P1 to P99 of one sex, or from the women's P1 to the men's P99. */
export function usualInSurvey(name: SurveyName, sex?: Sex): readonly [number, number] {
  const { female, male } = SURVEY[name];
  return [(sex === 'male' ? male : female)[1], (sex === 'female' ? female : male)[2]];
}

/** Smallest and largest person of the survey. */
export function extremesInSurvey(name: SurveyName): readonly [number, number] {
  const { female, male } = SURVEY[name];
  return [Math.min(female[0], male[0]), Math.max(female[3], male[3])];
}
