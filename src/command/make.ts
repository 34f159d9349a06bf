import { resolve } from 'node:path';
import { stopsLeft } from '../checks/overrides.ts';
import type { Design } from '../design.ts';
import type { NamedFile } from '../exports/fileSet.ts';
import type { MakingName } from '../fitting/words.ts';
import { howToGoOn } from './check.ts';
import { designFrom } from './designFrom.ts';
import { findingsTable, tally } from './findingsTable.ts';
import { placeFor, writeFolder } from './folder.ts';
import { EXIT, printable, Refusal, type Exit } from './refusal.ts';
import { counted, FaultySheet, fittingFrom } from './sheetFile.ts';
import type { World } from './world.ts';

/** Works out a sheet and writes everything into a new folder. @throws Refusal, and then nothing was written */
export async function make(world: World, asked: { readonly sheet: string; readonly with: readonly MakingName[]; readonly into: string | undefined; readonly replace: boolean }): Promise<Exit> {
  const fitting = await fittingFrom(world, asked);
  const target = resolve(world.here, asked.into ?? fitting.job.reference);
  const place = await placeFor(world, target, asked.replace);
  progress(world, `Working out ${fitting.job.reference}.\n`);
  const design = await designFrom(fitting);
  if (design.mouldFaults.length) throw new FaultySheet(design.mouldFaults);
  requireNoStops(world, design);
  const files = await filesOf(design);
  const left = await writeFolder(world, place, files, (done) => progress(world, `\rWriting ${done} of ${files.length} files.`)).finally(() => progress(world, '\n'));
  if (left !== undefined) world.err.write(`The old folder could not be removed and lies at ${printable(left)}; remove it by hand.\n`);
  world.out.write(`${summary(design, target, files.length)}${warnings(world, design)}`);
  return EXIT.good;
}

/** The kernel that drills and splits is loaded only where something needs it. */
async function filesOf(design: Design): Promise<readonly NamedFile[]> {
  const { filesFor } = await import('../exports/fileSet.ts');
  const { needsKernel } = await import('../making/made.ts');
  return filesFor(design, needsKernel(design.fitting.making) ? await (await import('../making/booleans.ts')).loadBooleans() : undefined);
}

/** Said on a terminal only; a pipe stays quiet. */
function progress({ err }: World, text: string): void {
  if (err.isTerminal) err.write(text);
}

function requireNoStops({ err }: World, { findings, fitting }: Design): void {
  const stops = stopsLeft(findings);
  if (stops.length === 0) return;
  throw new Refusal(EXIT.stops, `${findingsTable(stops, err, fitting.units === 'in')}\n${fitting.job.reference}: ${tally(findings)}; nothing was written.\n${howToGoOn(findings)}`);
}

/** What sets the height of a rocker, and what a match gets: that is what the maker can change. */
const SUMMED_UP = ['GOVERNS', 'RAISE', 'CANNOT_BE_RAISED'];

function summary({ fitting, findings }: Design, target: string, files: number): string {
  const heights = findings.filter(({ code }) => SUMMED_UP.includes(code)).map(({ side, text }) => `${side}: ${text}`);
  return [`${fitting.job.reference}: ${counted(files, 'file')} in ${printable(target)}`, ...heights, tally(findings)].map((line) => `${line}\n`).join('');
}

/** What must not be missed by whoever made without a check: every warning, and every stop that was taken. */
function warnings({ out }: World, { fitting, findings }: Design): string {
  const told = findings.filter(({ severity }) => severity !== 'note');
  return told.length === 0 ? '' : `\n${findingsTable(told, out, fitting.units === 'in')}`;
}
