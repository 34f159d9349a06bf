import { designWith, type Designing } from './designWith.ts';
import type { Pace } from './checks/seen.ts';
import type { Fitting } from './fitting/fitting.ts';
import { makingFindings } from './making/findings.ts';

export * from './designWith.ts';

/**
 * From a fitting to a checked pair, with all that stands in the way of what is ordered besides: the story is told in
 * designWith.ts. Pure.
 * @param pace quick while a hand drags: the findings come without the advice that must be put in and solved first
 */
export const design = (fitting: Fitting, pace?: Pace): Designing => designWith(makingFindings, fitting, pace);
