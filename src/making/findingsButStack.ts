import type { Finding } from '../checks/finding.ts';
import type { Pair } from '../pair/shoe.ts';
import { blockFindings } from './block/blockFindings.ts';
import { cardFindings } from './card/findings.ts';
import { boardNotMeasured, kerfTooWide } from './cut/boardFindings.ts';
import { gaugeFindings } from './gauges/findings.ts';
import { jigFindings } from './jig/findings.ts';
import { mouldFindings } from './mould/findings.ts';
import { printFindings } from './print/findings.ts';
import { wedgeFindings } from './wedges/findings.ts';

/** All but the stack of sheets, whose checks lay blanks out and are large: what stands in the way of the other things that are made besides. */
export const findingsButStack = (pair: Pair): Finding[] => CHECKS.flatMap((check) => check(pair));

const CHECKS: readonly ((pair: Pair) => readonly Finding[])[] = [
  blockFindings,
  cardFindings,
  gaugeFindings,
  kerfTooWide,
  jigFindings,
  boardNotMeasured,
  mouldFindings,
  printFindings,
  wedgeFindings,
];
