import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';
import { findingsButStack } from './findingsButStack.ts';
import { stackFindings } from './stack/findings.ts';

/** What stands in the way of making what the sheet orders besides the soles, each with the nearest thing that works. */
export const makingFindings = (pair: Pair): Finding[] => [...findingsButStack(pair), ...stackFindings(pair)];
