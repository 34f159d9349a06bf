import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { realWorld } from '../../src/command/realWorld.ts';
import type { Disk, Screen, World } from '../../src/command/world.ts';

/** The real machine with other screens, and with whatever a test puts in its place. */
export interface Watched { readonly world: World; readonly said: { out: string; err: string } }

export interface Changes {
  readonly here?: string;
  readonly home?: string;
  readonly disk?: Partial<Disk>;
  readonly screen?: Partial<Screen>;
  readonly process?: World['process'];
  readonly stop?: AbortSignal;
}

export const realDisk: Disk = realWorld().disk;

export function watched({ here, home, disk, screen, process, stop }: Changes = {}): Watched {
  const real = realWorld(), said = { out: '', err: '' };
  const on = (name: 'out' | 'err'): Screen => ({ isTerminal: false, columns: 100, colour: false, ...screen, write: (text) => { said[name] += text; } });
  const world: World = {
    ...real, out: on('out'), err: on('err'), here: here ?? real.here, home: home ?? real.home,
    disk: { ...real.disk, ...disk }, process: process ?? real.process,
    interruptible: stop ? (work) => work(stop) : real.interruptible,
  };
  return { world, said };
}

/** An error as Node's file system throws it. */
export const diskError = (code: string): Error => Object.assign(new Error(`${code}: put in by a test`), { code, syscall: 'test' });

const folders: string[] = [];
afterEach(() => { for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true }); });

/** An empty folder that is gone after the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'rockerbench-test-'));
  folders.push(folder);
  return folder;
}

/** Everything under a folder, path to text; folders end in a stroke. Hidden ones too. */
export function contents(folder: string): Record<string, string> {
  const found = readdirSync(folder, { recursive: true, withFileTypes: true, encoding: 'utf8' });
  return Object.fromEntries(found.map((entry) => {
    const path = join(entry.parentPath, entry.name), name = path.slice(folder.length + 1);
    return entry.isDirectory() ? [`${name}/`, ''] : [name, readFileSync(path, 'utf8')];
  }));
}
