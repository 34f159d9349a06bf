import type { Design } from '../checks/design.ts';
import type { Stacks } from '../making/stack/stack.ts';
import { cuttingListPdf, sheetFileName } from './cuttingList.ts';
import { textFile, type NamedFile } from './namedFile.ts';
import { stackSheet } from './stackSheets.ts';

/** A drawing of each sheet that is cut up, and the cutting list. */
export function stackFiles(design: Design, stack: Stacks): NamedFile[] {
  const { reference } = design.fitting.job;
  return [
    ...stack.sheets.map((sheet) => textFile(sheetFileName(reference, sheet.number), stackSheet(sheet, reference))),
    { name: `${reference}_cutting-list.pdf`, bytes: cuttingListPdf(design, stack) },
  ];
}
