import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';

/** What every paper and file is made from: the shoes of a job and what was found on them. A design is one. */
export interface CheckedPair extends Pair { readonly findings: readonly Finding[] }
