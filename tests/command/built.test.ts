import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { changed, lockedSheet } from '../fitting/sheets.ts';
import { contents, emptyFolder } from './fakeWorld.ts';

/** The command as it is installed, started as a program of its own. `npm test` builds it first. */
const MAIN = fileURLToPath(new URL('../../dist/command/main.js', import.meta.url));
const sheet = changed(lockedSheet(), { 'left.order.outsole': { thickness: 2 }, 'left.order.apex': 65 });

function folderWithSheet(): string {
  const here = emptyFolder();
  writeFileSync(join(here, 'sheet.json'), JSON.stringify(sheet));
  return here;
}

const started = (words: readonly string[], here: string, environment: NodeJS.ProcessEnv = {}) =>
  spawnSync(process.execPath, [MAIN, ...words], { cwd: here, encoding: 'utf8', env: { ...process.env, ...environment } });

/** The sheet made once, and what lay in its folder then. */
let made: { readonly here: string; readonly status: number | null; readonly stdout: string; readonly stderr: string; readonly left: Readonly<Record<string, string>> };
beforeAll(() => {
  if (!existsSync(MAIN)) throw new Error('the command is not built: npm run build');
  const here = folderWithSheet(), { status, stdout, stderr } = started(['make', 'sheet.json'], here);
  made = { here, status, stdout, stderr, left: contents(here) };
}, 60_000);

test('makes a sheet, quiet but for its summary', () => {
  const { here, status, stdout, stderr, left } = made;
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toContain(join(here, 'T-1'));
  expect(Object.keys(left).filter((name) => name.startsWith('.'))).toEqual([]);
});

test('the same sheet gives the same bytes', () => {
  const here = folderWithSheet(), of = (all: typeof made.left, folder: string) => Object.entries(all).filter(([name]) => name.startsWith(`${folder}/`)).map(([name, text]) => [name.slice(folder.length), text]);
  expect(started(['make', 'sheet.json', '--into', 'again'], here).status).toBe(0);
  expect(of(made.left, 'T-1').length).toBeGreaterThan(5);
  expect(of(contents(here), 'again')).toEqual(of(made.left, 'T-1'));
});

test('ends as its help says', () => {
  const here = folderWithSheet();
  for (const [words, status] of [[['--help'], 0], [[], 2], [['check', 'missing.json'], 5], [['check', MAIN], 3]] as const)
    expect(started(words, here).status, words.join(' ')).toBe(status);
});

test('colours nothing in a pipe, NO_COLOR or not', () => {
  const here = folderWithSheet();
  for (const environment of [{}, { NO_COLOR: '1' }, { FORCE_COLOR: '1' }]) expect(started(['check', 'sheet.json'], here, environment).stdout).not.toContain('\u001b');
});

test('whoever reads its output may stop early', () => {
  const { stdout, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${MAIN}" schema | head -n 1`], { encoding: 'utf8' });
  expect({ stdout, stderr }).toEqual({ stdout: '{\n', stderr: '' });
});

describe('a signal that comes while it writes', () => {
  /** Starts make and sends the signal as soon as the hidden folder appears. Signal and end may cross, so it says how it ended. */
  async function killed(here: string, signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL'): Promise<number | string | null> {
    const child = spawn(process.execPath, [MAIN, 'make', 'sheet.json'], { cwd: here, stdio: 'ignore' });
    const watcher = watch(here, (_, name) => { if (name?.startsWith('.T-1.part')) child.kill(signal); });
    const ended = await new Promise<number | string | null>((resolve) => { child.on('exit', (code, by) => resolve(code ?? by)); });
    watcher.close();
    return ended;
  }

  const TRIES = 10;

  for (const [signal, exit] of [['SIGINT', 130], ['SIGTERM', 143]] as const) {
    test(`${signal} leaves nothing behind`, async () => {
      const ends = new Set<number | string | null>();
      for (let i = 0; i < TRIES && !ends.has(exit); i++) {
        const here = folderWithSheet(), ended = await killed(here, signal);
        ends.add(ended);
        // A signal that comes after the last file ends the program as it would any other: whole, with nothing hidden left.
        expect([0, exit, signal]).toContain(ended);
        expect(Object.keys(contents(here)).filter((name) => name.startsWith('.T-1.part'))).toEqual([]);
        if (ended === exit) expect(Object.keys(contents(here))).toEqual(['sheet.json']);
      }
      expect([...ends]).toContain(exit);
    }, 60_000);
  }

  test('SIGKILL leaves a hidden folder that the next run clears away', async () => {
    for (let i = 0; i < TRIES; i++) {
      const here = folderWithSheet();
      if (await killed(here, 'SIGKILL') !== 'SIGKILL') continue;
      expect(Object.keys(contents(here)).some((name) => name.startsWith('.T-1.part-'))).toBe(true);
      expect(existsSync(join(here, 'T-1'))).toBe(false);
      expect(started(['make', 'sheet.json'], here).status).toBe(0);
      expect(contents(here)).toEqual(made.left);
      return;
    }
    throw new Error('the signal never came in time');
  }, 60_000);
});

test('the file that is started begins with the line that finds node', () => {
  expect(readFileSync(MAIN, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
});
