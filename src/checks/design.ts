import type { Fault } from '../fitting/faults.ts';
import type { Pair } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';

/** A checked pair: the shoes, and everything a careful maker would want to know before cutting, worst first. */
export interface Design extends Pair {
  readonly findings: readonly Finding[];
  /** Codes of those that are about what is made besides the soles. */
  readonly besides: readonly string[];
  /** What keeps its moulds from being made, as corrections to the sheet; the soles stand all the same. */
  readonly mouldFaults: readonly Fault[];
}
