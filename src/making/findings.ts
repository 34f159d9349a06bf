import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';
import { beyondBoard } from './cut/beyondBoard.ts';
import { findingsUnlaid } from './findingsUnlaid.ts';
import { gaugeLots } from './gauges/lots.ts';
import { jigFindings, jigLots } from './jig/findings.ts';
import { stackFindings } from './stack/findings.ts';
import { wedgeFindings, wedgeLots } from './wedges/findings.ts';

/** What stands in the way of making what the sheet orders besides the soles, each with the nearest thing that works. */
export const makingFindings = (pair: Pair): Finding[] => [...findingsUnlaid(pair), ...LAID.flatMap((check) => check(pair))];

/** All that is cut from the board on the sheet, held against it together. */
const boardTooSmall = (pair: Pair): Finding[] => beyondBoard([...gaugeLots(pair), ...jigLots(pair), ...wedgeLots(pair)], pair.fitting.making.board);

const LAID: readonly ((pair: Pair) => readonly Finding[])[] = [
  boardTooSmall,
  jigFindings,
  wedgeFindings,
  stackFindings,
];
