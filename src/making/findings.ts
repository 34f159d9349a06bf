import type { Finding } from '../checks/finding.ts';
import type { Pace } from '../checks/seen.ts';
import type { Pair } from '../pair/shoe.ts';
import { findingsButStack } from './findingsButStack.ts';
import { stackFindings } from './stack/findings.ts';

/**
 * What stands in the way of making what the sheet orders besides the soles, each with the nearest thing that works.
 * @param pace quick while a hand drags: what takes longer than the shoe itself waits
 */
export const makingFindings = (pair: Pair, pace: Pace = 'careful'): Finding[] => [...findingsButStack(pair, pace), ...stackFindings(pair, pace)];
