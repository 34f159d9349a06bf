import { basename, dirname, join } from 'node:path';
import type { NamedFile } from '../exports/fileSet.ts';
import { EXIT, onDisk, printable, Refusal } from './refusal.ts';
import type { World } from './world.ts';

/**
 * Writing a folder so that it is there whole or not at all: its files go into a hidden folder beside it, and that one is
 * renamed into place when all are on the disk. An old folder is moved aside first, and back if anything goes wrong.
 */
export interface Place {
  readonly target: string;
  /** The hidden folder that is filled. Its name ends in the number of the process that fills it. */
  readonly part: string;
  /** Where an old folder is moved aside to. */
  readonly aside: string;
  readonly replaces: boolean;
}

/**
 * Looks whether a folder can be written, and clears away what a run that was killed left beside it.
 * @param target absolute path of the folder
 * @throws Refusal when something lies there that may not be replaced, or the folder around it is missing
 */
export async function placeFor(world: World, target: string, replace: boolean): Promise<Place> {
  const parent = dirname(target), name = basename(target), { disk, process } = world;
  if (name === '') throw new Refusal(EXIT.disk, `${printable(target)} is no folder that can be made; name one with --into.`);
  const around = await onDisk('looked at', parent, () => disk.look(parent, 'follow'));
  if (around?.kind !== 'folder') throw new Refusal(EXIT.disk, `${printable(parent)} ${around ? 'is not a folder' : 'is not there'}; make that folder first, or name another with --into.`);
  await clearLeftovers(world, target);
  const there = await onDisk('looked at', target, () => disk.look(target, 'show'));
  if (there && there.kind !== 'folder') throw new Refusal(EXIT.disk, `${printable(target)} is ${KIND_WORDS[there.kind]}, not a folder; name another with --into.`);
  if (there && !replace) throw new Refusal(EXIT.disk, `${printable(target)} is there already; --replace puts the new files in its place, --into names another folder.`);
  if (there) await requireOwnWork(world, target);
  return { target, part: hidden(target, 'part', process.id), aside: hidden(target, 'old', process.id), replaces: there !== undefined };
}

const KIND_WORDS = { file: 'a file', link: 'a link', other: 'neither file nor folder' } as const;

/** Every set of files has one of these; the others begin with the same reference. */
const MARK = '_design.json';

/** Only what this program made may be thrown away: an empty folder, or one with nothing but the files of a job. */
async function requireOwnWork({ disk }: World, target: string): Promise<void> {
  const names = await onDisk('looked into', target, () => disk.list(target));
  const stems = names.filter((name) => name.endsWith(MARK)).map((name) => name.slice(0, 1 - MARK.length));
  for (const name of names) {
    const entry = await onDisk('looked at', join(target, name), () => disk.look(join(target, name), 'show'));
    if (entry?.kind === 'file' && stems.some((stem) => name.startsWith(stem))) continue;
    throw new Refusal(EXIT.disk, `${printable(target)} holds ${printable(name)}, which rockerbench did not make; move it out first, or name another folder with --into.`);
  }
}

const hidden = (target: string, what: 'part' | 'old', process: number | ''): string => join(dirname(target), `.${basename(target)}.${what}-${process}`);

/** What runs that are no longer alive left beside the target: half-filled folders go, an old folder without a new one comes back. */
async function clearLeftovers({ disk, process }: World, target: string): Promise<void> {
  const parent = dirname(target), names = await onDisk('looked into', parent, () => disk.list(parent));
  const isLeft = (what: 'part' | 'old') => (name: string): boolean => {
    const start = basename(hidden(target, what, '')), by = name.startsWith(start) ? name.slice(start.length) : '';
    return /^\d+$/.test(by) && (Number(by) === process.id || !process.isRunning(Number(by)));
  };
  for (const name of names.filter(isLeft('old'))) {
    const old = join(parent, name), there = await onDisk('looked at', target, () => disk.look(target, 'show'));
    await onDisk('cleared away', old, () => there ? disk.remove(old) : disk.rename(old, target));
  }
  for (const name of names.filter(isLeft('part'))) await onDisk('cleared away', join(parent, name), () => disk.remove(join(parent, name)));
}

/**
 * Writes the files and puts their folder into place.
 * @param wrote told after each file
 * @returns where an old folder still lies that could not be removed, if so
 * @throws Refusal on trouble with the disk or when stopped; nothing is left behind then, and an old folder stays as it was
 */
export async function writeFolder(world: World, place: Place, files: readonly NamedFile[], wrote: (done: number) => void): Promise<string | undefined> {
  requirePlainNames(files);
  return world.interruptible(async (stop) => {
    try {
      await fill(world, place, files, stop, wrote);
      return await putInPlace(world, place);
    } catch (error) {
      throw await cleared(world, place.part, error);
    }
  });
}

function requirePlainNames(files: readonly NamedFile[]): void {
  const odd = files.find(({ name }, i) => !/^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(name) || files.findIndex((other) => other.name.toLowerCase() === name.toLowerCase()) !== i);
  if (odd) throw new Error(`a file of the set must have a plain name of its own, got ${JSON.stringify(odd.name)}`);
}

async function fill({ disk }: World, { target, part }: Place, files: readonly NamedFile[], stop: AbortSignal, wrote: (done: number) => void): Promise<void> {
  await onDisk('written into', dirname(target), () => disk.makeFolder(part));
  for (const [i, { name, bytes }] of files.entries()) {
    heed(stop);
    await onDisk('written', join(target, name), () => disk.write(join(part, name), bytes));
    wrote(i + 1);
  }
  await onDisk('written', target, () => disk.settle(part));
  heed(stop);
}

/** @throws Refusal when a signal came in */
function heed(stop: AbortSignal): void {
  if (stop.aborted) throw new Refusal(EXIT[stop.reason as 'SIGINT'], 'Stopped; nothing was written.');
}

/** The half-filled folder goes; should that fail too, the message says where it lies. */
async function cleared({ disk }: World, part: string, error: unknown): Promise<unknown> {
  try { await disk.remove(part); return error; }
  catch { return error instanceof Refusal ? new Refusal(error.exit, `${error.message} ${printable(part)} could not be removed; remove it by hand.`) : error; }
}

async function putInPlace({ disk }: World, { target, part, aside, replaces }: Place): Promise<string | undefined> {
  if (!replaces) { await onDisk('put in place', target, () => disk.rename(part, target)); return undefined; }
  await onDisk('moved aside', target, () => disk.rename(target, aside));
  try { await onDisk('put in place', target, () => disk.rename(part, target)); }
  catch (error) {
    await onDisk(`put back as ${printable(target)}`, aside, () => disk.rename(aside, target));
    throw error;
  }
  try { await disk.remove(aside); return undefined; }
  catch { return aside; }
}
