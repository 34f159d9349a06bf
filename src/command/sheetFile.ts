import { resolve } from 'node:path';
import { fault, type Fault } from '../fitting/faults.ts';
import type { Fitting } from '../fitting/fitting.ts';
import type { MakingName } from '../fitting/words.ts';
import { EXIT, onDisk, printable, Refusal } from './refusal.ts';
import type { World } from './world.ts';

/** Thrown for a sheet that has to be corrected. */
export class FaultySheet extends Refusal {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super(EXIT.sheet, [...faults.map(({ text }) => text), `${counted(faults.length, 'fault')} on the sheet; correct ${faults.length === 1 ? 'it' : 'them'} and call again.`].join('\n'));
    this.name = 'FaultySheet';
    this.faults = faults;
  }

  override forMachines(): object { return { faults: this.faults }; }
}

/** `1 fault`, `2 faults`. */
export const counted = (count: number, what: string): string => `${count === 0 ? 'no' : count} ${what}${count === 1 ? '' : 's'}`;

/**
 * The fitting on a sheet, with what is ordered besides on the command line.
 * @param sheet its path as it was typed
 * @throws Refusal when there is no such file, FaultySheet when it must be corrected
 */
export async function fittingFrom(world: World, { sheet, with: besides }: { readonly sheet: string; readonly with: readonly MakingName[] }): Promise<Fitting> {
  const { readSheet, SHEET_MAX_BYTES } = await import('../fitting/readSheet.ts');
  const reading = readSheet(await sheetText(world, sheet, SHEET_MAX_BYTES));
  if (!reading.ok) throw new FaultySheet(reading.faults);
  const { fitting } = reading;
  if (besides.length === 0) return fitting;
  const { withMakings } = await import('../fitting/readMaking.ts');
  return { ...fitting, making: withMakings(fitting.making, besides) };
}

/** @throws Refusal when there is no such file */
export async function sheetText({ disk, here }: World, path: string, most: number): Promise<string> {
  const full = resolve(here, path), there = await onDisk('read', path, () => disk.look(full, 'follow'));
  if (!there) throw new Refusal(EXIT.disk, `${printable(path)} is not there; is the name spelt right, and the folder?`);
  if (there.kind === 'folder') throw new Refusal(EXIT.disk, `${printable(path)} is a folder; name the sheet inside it.`);
  if (there.kind !== 'file') throw new Refusal(EXIT.disk, `${printable(path)} is not a file; a sheet is a file of JSON text.`);
  if (there.size > most) throw new FaultySheet([fault([], `must be at most ${most} bytes of text`, there.size, 'Is this the right file?')]);
  return decoded(await onDisk('read', path, () => disk.read(full)));
}

function decoded(bytes: Uint8Array): string {
  try { return new TextDecoder('utf-8', { fatal: true }).decode(bytes); }
  catch { throw new FaultySheet([fault([], 'must be text in UTF-8', 'bytes of another kind', 'Save it again as UTF-8.')]); }
}
