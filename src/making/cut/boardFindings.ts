import type { Finding } from '../../checks/finding.ts';
import { mm } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Pair } from '../../pair/shoe.ts';

/** Slots, of a jig and of the heel block among the gauges of a rocker shoe, are cut to the thickness of the board, and a label is up to 10 % off it. Source: figures makers publish, common practice. */
export function boardNotMeasured({ shoes, fitting: { making: { board, jig, gauges } } }: Pair): Finding[] {
  if (!(jig || (gauges && shoes.some(({ kind }) => kind === 'rocker'))) || board.measured) return [];
  return [{
    code: 'BOARD_NOT_MEASURED', severity: 'warn', measured: board.thickness, unit: 'mm', where: 'board',
    text: `Slots are cut for a board of ${mm(board.thickness)} that nobody measured; boards are up to 10 % off their label, and then nothing goes together. Measure the board and enter it (making.board.thickness).`, basis: PRACTICE,
  }];
}

/** A cutter goes both ways through a slot, so it is narrower by a hair at least. */
const PASSES = 0.01;

/** What slots of board are usually cut with, at most. Common practice of the trade. */
export const USUAL_CUTTER: Mm = 3;

/** A slot that takes no cutter is left out of the line to cut; and parts without slots do not go together. */
export function kerfTooWide({ shoes, fitting: { making: { board: { thickness, clearance, kerf }, jig, gauges } } }: Pair): Finding[] {
  const slot = thickness + clearance, widest = Math.floor((slot - PASSES) * 100 + 1e-6) / 100, heelBlocks = gauges && shoes.some(({ kind }) => kind === 'rocker');
  if ((!jig && !heelBlocks) || kerf <= widest) return [];
  return [{
    code: 'KERF_WIDER_THAN_SLOT', severity: 'stop', measured: kerf, limit: widest, unit: 'mm', where: jig ? 'slots of the jig' : 'slots of the heel block', basis: PRACTICE,
    text: `A cut of ${mm(kerf, 2)} cannot make slots of ${mm(slot, 2)}, so the parts would have none. Take a beam or a cutter of ${mm(Math.min(USUAL_CUTTER, widest), 2)} (making.board.kerf), or a thicker board; ${mm(widest, 2)} just goes through.`,
  }];
}
