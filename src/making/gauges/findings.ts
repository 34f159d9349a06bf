import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { over } from '../../checks/seen.ts';
import { PRACTICE } from '../../checks/sources.ts';
import { partsOf, type Pair } from '../../pair/shoe.ts';
import { CORNER, roundReaches } from './heightGauge.ts';

/** A stout cutter leaves the corner beside each low step of a height gauge round, and a sole held into it would seem too high. */
export function stepsRounded({ shoes, fitting: { making: { gauges, board: { kerf } } } }: Pair): Finding[] {
  if (!gauges || !over(kerf, CORNER) || shoes.every((shoe) => !partsOf(shoe))) return [];
  return [{
    code: 'GAUGE_STEP_ROUND', severity: 'note', measured: kerf, limit: CORNER, unit: 'mm', where: 'height gauge', basis: PRACTICE,
    text: `A cut of ${mm(kerf, 2)} leaves the corner beside each low step of the height gauge round: the step is level from ${mm(roundReaches(kerf))} off the high one. Hold the edge of the sole further out than that, or file the corner square. A cut of ${mm(CORNER)} or less clears it (making.board.kerf).`,
  }];
}
