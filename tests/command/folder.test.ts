import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { placeFor, writeFolder } from '../../src/command/folder.ts';
import type { Disk, World } from '../../src/command/world.ts';
import type { NamedFile } from '../../src/exports/fileSet.ts';
import { contents, diskError, emptyFolder, realDisk, watched } from './fakeWorld.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const FILES: readonly NamedFile[] = ['K-204_left_sole.stl', 'K-204_left_side.dxf', 'K-204_design.json'].map((name) => ({ name, bytes: bytes(`new ${name}`) }));
const NEW = { 'K-204/': '', ...Object.fromEntries(FILES.map(({ name }) => [`K-204/${name}`, `new ${name}`])) };
const OLD = { 'K-204/': '', 'K-204/K-204_right_sole.stl': 'old sole', 'K-204/K-204_design.json': 'old design' };

async function write(world: World, parent: string, replace = false): Promise<string | undefined> {
  return writeFolder(world, await placeFor(world, join(parent, 'K-204'), replace), FILES, () => {});
}

function withOld(): string {
  const parent = emptyFolder();
  mkdirSync(join(parent, 'K-204'));
  for (const [name, text] of Object.entries(OLD)) if (text) writeFileSync(join(parent, name), text);
  return parent;
}

test('the folder holds the files and nothing lies beside it', async () => {
  const parent = emptyFolder();
  await write(watched().world, parent);
  expect(contents(parent)).toEqual(NEW);
});

test('an old folder is refused, and replaced when that is asked for', async () => {
  const parent = withOld(), { world } = watched();
  await expect(write(world, parent)).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('--replace') });
  expect(contents(parent)).toEqual(OLD);
  await write(world, parent, true);
  expect(contents(parent)).toEqual(NEW);
});

const CHANGING = ['makeFolder', 'write', 'settle', 'rename', 'remove'] as const satisfies readonly (keyof Disk)[];

/** The real disk, whose n-th changing step fails. A file that fails is left half written, as on a full disk. */
function failingAt(n: number, code: string): { readonly disk: Partial<Disk>; readonly steps: string[] } {
  const steps: string[] = [];
  const disk = Object.fromEntries(CHANGING.map((name) => [name, async (path: string, more: never) => {
    if (steps.push(name) !== n) return realDisk[name](path, more);
    if (name === 'write') await realDisk.write(path, bytes('ha'));
    throw diskError(code);
  }]));
  return { disk, steps };
}

async function stepsOf(parent: string): Promise<string[]> {
  const { disk, steps } = failingAt(Infinity, '');
  await write(watched({ disk }).world, parent, true);
  return steps;
}

describe('whatever step fails', () => {
  test('of a new folder, nothing is left behind', async () => {
    const steps = await stepsOf(emptyFolder());
    expect(steps).toEqual(['makeFolder', 'write', 'write', 'write', 'settle', 'rename']);
    for (let n = 1; n <= steps.length; n++) {
      const parent = emptyFolder(), { disk } = failingAt(n, 'ENOSPC');
      await expect(write(watched({ disk }).world, parent), `step ${n}`).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('the disk is full') });
      expect(contents(parent), `step ${n}`).toEqual({});
    }
  });

  test('of a replacement, the old folder stays as it was', async () => {
    const steps = await stepsOf(withOld());
    expect(steps).toEqual(['makeFolder', 'write', 'write', 'write', 'settle', 'rename', 'rename', 'remove']);
    for (let n = 1; n < steps.length; n++) {
      const parent = withOld(), { disk } = failingAt(n, 'EIO');
      await expect(write(watched({ disk }).world, parent, true), `step ${n}`).rejects.toMatchObject({ exit: 5 });
      expect(contents(parent), `step ${n}`).toEqual(OLD);
    }
  });

  test('an old folder that cannot be removed is named, and the new one stands', async () => {
    const parent = withOld(), { disk } = failingAt(8, 'EACCES'), { world } = watched({ disk });
    expect(await write(world, parent, true)).toBe(join(parent, `.K-204.old-${world.process.id}`));
    expect(contents(parent)).toMatchObject(NEW);
  });

  test('a half-filled folder that cannot be removed either is named', async () => {
    const parent = emptyFolder();
    const { world } = watched({ disk: { write: async () => { throw diskError('ENOSPC'); }, remove: async () => { throw diskError('EIO'); } } });
    await expect(write(world, parent)).rejects.toMatchObject({ exit: 5, message: expect.stringMatching(/disk is full.*\.K-204\.part-\d+ could not be removed/) });
  });
});

describe('a signal', () => {
  for (const [name, exit] of [['SIGINT', 130], ['SIGTERM', 143], ['SIGHUP', 129]] as const) {
    test(`${name} after any file leaves nothing behind`, async () => {
      for (let after = 0; after <= FILES.length; after++) {
        const parent = withOld(), stop = new AbortController(), { world } = watched({ stop: stop.signal });
        const place = await placeFor(world, join(parent, 'K-204'), true);
        if (after === 0) stop.abort(name);
        const writing = writeFolder(world, place, FILES, (done) => { if (done === after) stop.abort(name); });
        await expect(writing, `after ${after}`).rejects.toMatchObject({ exit });
        expect(contents(parent), `after ${after}`).toEqual(OLD);
      }
    });
  }

  test('that comes while the folders are swapped lets the swap come to its end', async () => {
    const parent = withOld(), stop = new AbortController();
    const { world } = watched({ stop: stop.signal, disk: { rename: async (from, to) => { stop.abort('SIGINT'); await realDisk.rename(from, to); } } });
    await write(world, parent, true);
    expect(contents(parent)).toEqual(NEW);
  });
});

describe('what a killed run left behind', () => {
  const alive = { id: 1000, isRunning: (id: number) => id === 2000 };

  test('is cleared away and never mixed in', async () => {
    const parent = emptyFolder();
    for (const id of [1000, 3000]) {
      mkdirSync(join(parent, `.K-204.part-${id}`));
      writeFileSync(join(parent, `.K-204.part-${id}`, 'stranger.stl'), 'half');
    }
    await write(watched({ process: alive }).world, parent);
    expect(contents(parent)).toEqual(NEW);
  });

  test('is left alone while its run is alive, or when it belongs to another folder', async () => {
    const parent = emptyFolder(), others = ['.K-204.part-2000', '.K-20.part-3000', '.K-204.b.part-3000', '.K-204.part-', '.K-204.part-3x'];
    for (const name of others) mkdirSync(join(parent, name));
    await write(watched({ process: alive }).world, parent);
    expect(contents(parent)).toEqual({ ...NEW, ...Object.fromEntries(others.map((name) => [`${name}/`, ''])) });
  });

  test('comes back when it is the old folder, moved aside and not yet replaced', async () => {
    const parent = withOld();
    await realDisk.rename(join(parent, 'K-204'), join(parent, '.K-204.old-3000'));
    await expect(write(watched({ process: alive }).world, parent)).rejects.toMatchObject({ exit: 5 });
    expect(contents(parent)).toEqual(OLD);
  });

  test('goes when it is the old folder and the new one stands', async () => {
    const parent = withOld();
    mkdirSync(join(parent, '.K-204.old-3000'));
    await expect(write(watched({ process: alive }).world, parent)).rejects.toMatchObject({ exit: 5 });
    expect(contents(parent)).toEqual(OLD);
  });
});

describe('a place that cannot be written', () => {
  const at = async (target: string, replace = true, disk: Partial<Disk> = {}): Promise<unknown> => {
    const { world } = watched({ disk });
    return writeFolder(world, await placeFor(world, target, replace), FILES, () => {});
  };

  test('because a file or a link lies there', async () => {
    const parent = withOld();
    symlinkSync(join(parent, 'K-204'), join(parent, 'link'));
    await expect(at(join(parent, 'K-204', 'K-204_right_sole.stl'))).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('is a file') });
    await expect(at(join(parent, 'link'))).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('is a link') });
    expect(contents(join(parent, 'K-204'))).toEqual({ 'K-204_right_sole.stl': 'old sole', 'K-204_design.json': 'old design' });
  });

  test('because the folder around it is missing or is a file', async () => {
    const parent = withOld();
    await expect(at(join(parent, 'missing', 'K-204'))).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('missing is not there') });
    await expect(at(join(parent, 'K-204', 'K-204_design.json', 'K-204'))).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('design.json is not a folder') });
    expect(contents(parent)).toEqual(OLD);
  });

  test('because it has no name', async () => {
    await expect(at('/')).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('--into') });
  });

  for (const [code, words] of [['EROFS', 'can only be read'], ['EACCES', 'not open to you'], ['EDQUOT', 'share of the disk']] as const) {
    test(`because the folder around it takes nothing (${code})`, async () => {
      const parent = emptyFolder();
      await expect(at(join(parent, 'K-204'), false, { makeFolder: async () => { throw diskError(code); } })).rejects.toMatchObject({ exit: 5, message: expect.stringContaining(words) });
      expect(contents(parent)).toEqual({});
    });
  }

  test.skipIf(process.getuid?.() === 0)('because its folder is closed', async () => {
    const parent = emptyFolder();
    chmodSync(parent, 0o555);
    await expect(at(join(parent, 'K-204'))).rejects.toMatchObject({ exit: 5 });
    chmodSync(parent, 0o755);
    expect(contents(parent)).toEqual({});
  });
});

describe('a folder that is to be replaced', () => {
  test('may be empty', async () => {
    const parent = emptyFolder();
    mkdirSync(join(parent, 'K-204'));
    await write(watched().world, parent, true);
    expect(contents(parent)).toEqual(NEW);
  });

  for (const stranger of ['notes.txt', 'K-205_left_sole.stl', '.hidden', 'K-204_photos/', 'photos/']) {
    test(`stays when it holds anything else (${stranger})`, async () => {
      const parent = withOld(), path = join(parent, 'K-204', stranger);
      if (stranger.endsWith('/')) mkdirSync(path);
      else writeFileSync(path, 'mine');
      const before = contents(parent);
      await expect(write(watched().world, parent, true)).rejects.toMatchObject({ exit: 5, message: expect.stringContaining(`holds ${stranger.replace('/', '')}`) });
      expect(contents(parent)).toEqual(before);
    });
  }

  test('stays when it was never one of a job', async () => {
    const parent = emptyFolder();
    mkdirSync(join(parent, 'K-204'));
    writeFileSync(join(parent, 'K-204', 'K-204_left_sole.stl'), 'mine');
    await expect(write(watched().world, parent, true)).rejects.toMatchObject({ exit: 5 });
    expect(contents(parent)).toEqual({ 'K-204/': '', 'K-204/K-204_left_sole.stl': 'mine' });
  });
});

test('two runs for the same folder do not mix: the later one is refused', async () => {
  const parent = emptyFolder(), one = watched({ process: { id: 1, isRunning: () => true } }).world, other = watched({ process: { id: 2, isRunning: () => true } }).world;
  const places = [await placeFor(one, join(parent, 'K-204'), false), await placeFor(other, join(parent, 'K-204'), false)] as const;
  await writeFolder(one, places[0], FILES, () => {});
  await expect(writeFolder(other, places[1], FILES.slice(1), () => {})).rejects.toMatchObject({ exit: 5, message: expect.stringContaining('something lies there already') });
  expect(contents(parent)).toEqual(NEW);
});

test('a file that would leave the folder, or hide another, is a fault of the program', async () => {
  for (const name of ['../b.stl', 'x/b.stl', '.b', '', 'k-204_LEFT_sole.stl', 'c:b.stl', 'b\\c.stl']) {
    const parent = emptyFolder(), { world } = watched(), place = await placeFor(world, join(parent, 'K-204'), false);
    await expect(writeFolder(world, place, [FILES[0]!, { name, bytes: bytes('x') }], () => {}), name).rejects.toThrow('plain name');
    expect(contents(parent)).toEqual({});
  }
});
