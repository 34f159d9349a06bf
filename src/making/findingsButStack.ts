import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';
import { blockFindings } from './block/blockFindings.ts';
import { cardFindings } from './card/findings.ts';
import { beyondBoard, boardNotMeasured, kerfTooWide } from './cut/boardFindings.ts';
import { stepsRounded } from './gauges/findings.ts';
import { gaugeLots } from './gauges/lots.ts';
import { jigFindings, jigLots } from './jig/findings.ts';
import { mouldFindings } from './mould/findings.ts';
import { printFindings } from './print/findings.ts';
import { wedgeFindings, wedgeLots } from './wedges/findings.ts';

/** All but the stack of sheets, whose checks lay blanks out and are large: what stands in the way of the other things that are made besides. */
export const findingsButStack = (pair: Pair): Finding[] => CHECKS.flatMap((check) => check(pair));

/** All that is cut from the board on the sheet, held against it together. */
const boardTooSmall = (pair: Pair): Finding[] => beyondBoard([...gaugeLots(pair), ...jigLots(pair), ...wedgeLots(pair)], pair.fitting.making.board);

const CHECKS: readonly ((pair: Pair) => readonly Finding[])[] = [
  blockFindings,
  cardFindings,
  boardTooSmall,
  stepsRounded,
  kerfTooWide,
  jigFindings,
  boardNotMeasured,
  mouldFindings,
  printFindings,
  wedgeFindings,
];
