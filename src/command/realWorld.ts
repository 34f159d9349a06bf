import { lstat, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Stats } from 'node:fs';
import type { WriteStream } from 'node:tty';
import type { Disk, Entry, Screen, World } from './world.ts';

/** Letters on a line where nobody says otherwise. */
const COLUMNS = 100;

/** The machine as it is. */
export function realWorld(): World {
  return {
    out: screen(process.stdout), err: screen(process.stderr),
    here: process.cwd(), home: fileURLToPath(new URL('../..', import.meta.url)),
    disk: DISK,
    process: { id: process.pid, isRunning },
    interruptible,
  };
}

function screen(stream: WriteStream): Screen {
  const isTerminal = stream.isTTY === true;
  return {
    write: (text) => { stream.write(text); },
    isTerminal,
    columns: isTerminal && stream.columns > 0 ? stream.columns : COLUMNS,
    // https://no-color.org: set and not empty means no colour.
    colour: isTerminal && !process.env['NO_COLOR'] && process.env['TERM'] !== 'dumb',
  };
}

const DISK: Disk = {
  look: async (path, links) => {
    try { return entry(await (links === 'follow' ? stat(path) : lstat(path))); }
    catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
      throw error;
    }
  },
  read: (path) => readFile(path),
  list: (folder) => readdir(folder),
  makeFolder: async (path) => { await mkdir(path); },
  write: async (path, bytes) => {
    const file = await open(path, 'wx');
    try { await file.writeFile(bytes); await file.sync(); }
    finally { await file.close(); }
  },
  settle: async (folder) => {
    // Windows keeps folders on disk by itself and lets nobody open them.
    if (process.platform === 'win32') return;
    const opened = await open(folder, 'r');
    try { await opened.sync(); }
    finally { await opened.close(); }
  },
  rename,
  remove: (path) => rm(path, { recursive: true, force: true }),
};

function entry(stats: Stats): Entry {
  const kind = stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : stats.isSymbolicLink() ? 'link' : 'other';
  return { kind, size: stats.size };
}

function isRunning(id: number): boolean {
  try { process.kill(id, 0); return true; }
  catch (error) { return (error as NodeJS.ErrnoException).code === 'EPERM'; }
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

async function interruptible<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const stop = new AbortController(), note = (name: string): void => stop.abort(name);
  for (const name of SIGNALS) process.on(name, note);
  try { return await work(stop.signal); }
  finally { for (const name of SIGNALS) process.off(name, note); }
}
