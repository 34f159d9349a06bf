import { design } from '../../src/design.ts';
import { filesFor } from '../../src/exports/fileSet.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { needsKernel } from '../../src/making/made.ts';
import type { FileShown } from './protocol.ts';

/** Every file of a job, the same bytes as the command's. @throws RangeError while stops or mould faults are left */
export async function allFiles(sheet: string): Promise<readonly FileShown[]> {
  const reading = readSheet(sheet);
  if (!reading.ok) throw new RangeError(reading.faults.map(({ text }) => text).join('\n'));
  const designing = design(reading.fitting);
  if (!designing.ok) throw new RangeError(designing.troubles.map(({ text }) => text).join('\n'));
  return filesFor(designing.design, needsKernel(reading.fitting.making) ? await loadBooleans() : undefined);
}
