import type { Finding } from '../../checks/finding.ts';
import type { Pair } from '../../pair/shoe.ts';
import { beyondBoard } from '../cut/boardFindings.ts';
import { gaugesFor } from './gauges.ts';

/** What to know of the gauges before they are cut. */
export function gaugeFindings(pair: Pair): Finding[] {
  return gaugesFor(pair).flatMap(({ side, parts }) => beyondBoard(side, 'gauges', parts, pair.fitting.making.board));
}
