import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';
import { blockFindings } from './block/blockFindings.ts';
import { cardFindings } from './card/findings.ts';
import { boardNotMeasured, kerfTooWide } from './cut/boardFindings.ts';
import { stepsRounded } from './gauges/findings.ts';
import { mouldFindings } from './mould/findings.ts';
import { plyFindings } from './plies/findings.ts';
import { printFindings } from './print/findings.ts';

/** What stands in the way of what is made besides, as far as it shows without laying parts out on boards and sheets, which takes a large package. */
export const findingsUnlaid = (pair: Pair): Finding[] => CHECKS.flatMap((check) => check(pair));

const CHECKS: readonly ((pair: Pair) => readonly Finding[])[] = [
  blockFindings,
  cardFindings,
  stepsRounded,
  kerfTooWide,
  boardNotMeasured,
  mouldFindings,
  plyFindings,
  printFindings,
];
