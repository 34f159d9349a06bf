import { closeSync, existsSync, mkdirSync, openSync, readFileSync, ftruncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { stopsLeft } from '../../src/checks/overrides.ts';
import { run } from '../../src/command/run.ts';
import type { Disk } from '../../src/command/world.ts';
import { design } from '../../src/design.ts';
import { filesFor } from '../../src/exports/fileSet.ts';
import { SHEET_MAX_BYTES } from '../../src/fitting/readSheet.ts';
import { sheetJsonSchema } from '../../src/fitting/schema.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { contents, diskError, emptyFolder, realDisk, watched, type Changes } from './fakeWorld.ts';

/** Coarse solids, so that the tests are quick. */
const good = changed(lockedSheet(), { 'making.chordGap': 0.4, 'left.order.outsole': { thickness: 2 }, 'left.order.apex': 65 });
const stopped = changed(good, { 'left.foot.ankleAngle': -8 });
const shapeless = changed(good, { 'left.order.apex': 46 });
const faulty = changed(good, { 'left.foot.pivotHeight': 8.5, 'left.last.pitch': 'high', nonsense: 1 });

const designOf = (sheet: Json) => {
  const designing = design(fittingOf(sheet));
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join('\n'));
  return designing.design;
};

/** Runs the command in a folder that holds the sheet. */
async function runWith(words: readonly string[], sheet: Json | string | Uint8Array, changes: Changes = {}) {
  const here = changes.here ?? emptyFolder();
  writeFileSync(join(here, 'sheet.json'), typeof sheet === 'string' || sheet instanceof Uint8Array ? sheet : JSON.stringify(sheet));
  const { world, said } = watched({ here, ...changes });
  const exit = await run(words, world), left = contents(here);
  delete left['sheet.json'];
  return { exit, here, left, ...said };
}

/** A complete folder as contents() tells it. */
const made = (sheet: Json, folder = 'T-1'): Record<string, string> => Object.fromEntries([
  [`${folder}/`, ''], ...filesFor(designOf(sheet)).map(({ name, bytes }) => [`${folder}/${name}`, Buffer.from(bytes).toString('utf8')]),
]);

describe('make', () => {
  test('writes everything into a new folder named after the reference and sums up, and is quiet else', async () => {
    const { exit, left, out, err, here } = await runWith(['make', 'sheet.json'], good);
    expect(exit).toBe(0);
    expect(left).toEqual(made(good));
    expect(err).toBe('');
    expect(out).toContain(`T-1: ${filesFor(designOf(good)).length} files in ${join(here, 'T-1')}\n`);
    expect(out).toMatch(/^left: The .* sets the height: /m);
    expect(out).toMatch(/^no stops, .*warnings?, .*notes?$/m);
  });

  test('prints every warning after its summary as check shows it, and no note', async () => {
    const { findings } = designOf(good), { out } = await runWith(['make', 'sheet.json'], good), checked = (await runWith(['check', 'sheet.json'], good)).out;
    const [summary, told] = out.split(/^(?=.*\bfinding\b)/m), flat = told!.replace(/\s+/g, ' ');
    expect(summary).toMatch(/\d+ files in/);
    expect(findings.filter(({ severity }) => severity === 'warn').length).toBeGreaterThan(0);
    expect(told!.match(/^WARN /gm)).toHaveLength(findings.filter(({ severity }) => severity === 'warn').length);
    expect(told!.match(/^WARN /gm)).toEqual(checked.match(/^WARN /gm));
    expect(checked).toMatch(/^note /m);
    expect(flat).not.toMatch(/^note /m);
  });

  test('writes a mould when the sheet asks for one', async () => {
    const { exit, left } = await runWith(['make', 'sheet.json'], changed(good, { 'making.mould': { part: 'foam body' } }));
    expect(exit).toBe(0);
    expect(Object.keys(left)).toEqual(expect.arrayContaining(['T-1/T-1_left_mould-cavity.stl', 'T-1/T-1_left_mould-lid.stl']));
    expect(Object.keys(made(good)).filter((name) => name.includes('mould'))).toEqual([]);
  });

  test('tells its steps on a terminal', async () => {
    const { err } = await runWith(['make', 'sheet.json'], good, { screen: { isTerminal: true } });
    expect(err).toContain('Working out T-1.');
    expect(err).toMatch(/Writing (\d+) of \1 files\.\n$/);
  });

  test('writes into the folder that was named, seen from where it was called', async () => {
    const { exit, left } = await runWith(['make', 'sheet.json', '--into', 'deep/../other'], good);
    expect(exit).toBe(0);
    expect(left).toEqual(made(good, 'other'));
  });

  test('refuses a folder that is there, and replaces it when asked', async () => {
    const first = await runWith(['make', 'sheet.json'], good);
    const again = await runWith(['make', 'sheet.json'], good, { here: first.here });
    expect(again).toMatchObject({ exit: 5, left: first.left });
    expect(again.err).toContain('--replace');
    const other = changed(good, { 'left.order.apex': 66 }), replaced = await runWith(['make', 'sheet.json', '--replace'], other, { here: first.here });
    expect(replaced).toMatchObject({ exit: 0, err: '' });
    expect(replaced.left).toEqual(made(other));
    expect(replaced.left).not.toEqual(first.left);
  });

  test('does not replace a folder that holds anything else, the sheet itself least of all', async () => {
    const here = emptyFolder(), { world, said } = watched({ here });
    mkdirSync(join(here, 'T-1'));
    writeFileSync(join(here, 'T-1', 'sheet.json'), JSON.stringify(good));
    expect(await run(['make', 'T-1/sheet.json', '--replace'], world)).toBe(5);
    expect(said.err).toContain('holds sheet.json, which rockerbench did not make');
    expect(contents(here)).toEqual({ 'T-1/': '', 'T-1/sheet.json': JSON.stringify(good) });
  });

  test('writes nothing while a stop is left, and says which', async () => {
    const stops = stopsLeft(designOf(stopped).findings);
    expect(stops.length).toBeGreaterThan(0);
    const { exit, left, out, err } = await runWith(['make', 'sheet.json'], stopped);
    expect({ exit, left, out }).toEqual({ exit: 4, left: {}, out: '' });
    expect(err).toContain('nothing was written');
    for (const { code } of stops) expect(err).toContain(code);
  });

  test('makes it all the same when every stop is taken on a name', async () => {
    const overrides = stopsLeft(designOf(stopped).findings).map(({ code }) => ({ code, by: 'A. Maker', reason: 'tried on' }));
    const { exit, out } = await runWith(['make', 'sheet.json'], { ...stopped, overrides });
    expect(exit).toBe(0);
    expect(out).toContain("taken on the maker's name");
    expect(out.match(/^STOP /gm)).toHaveLength(overrides.length);
    expect(out.replace(/\s+/g, ' ')).toContain('Taken by A. Maker: tried on');
  });

  test('a full disk at any file leaves nothing behind, and an old folder as it was', async () => {
    const count = filesFor(designOf(good)).length, old = await runWith(['make', 'sheet.json'], good);
    for (let n = 1; n <= count; n++) {
      let written = 0;
      const write: Disk['write'] = async (path, bytes) => {
        if (++written < n) return realDisk.write(path, bytes);
        await realDisk.write(path, bytes.subarray(0, 1));
        throw diskError('ENOSPC');
      };
      const fresh = await runWith(['make', 'sheet.json', '--into', `new-${n}`, '--replace'], good, { here: old.here, disk: { write } });
      expect(fresh, `file ${n}`).toMatchObject({ exit: 5, left: old.left, out: '' });
      expect(fresh.err, `file ${n}`).toContain('the disk is full');
    }
  });

  test('a signal while it writes ends it with nothing left behind', async () => {
    const stop = new AbortController(), write: Disk['write'] = async (path, bytes) => { await realDisk.write(path, bytes); stop.abort('SIGINT'); };
    expect(await runWith(['make', 'sheet.json'], good, { stop: stop.signal, disk: { write } })).toMatchObject({ exit: 130, left: {}, out: '' });
  });
});

describe('check', () => {
  test('prints every finding and writes nothing', async () => {
    const { findings } = designOf(good), { exit, left, out, err } = await runWith(['check', 'sheet.json'], good);
    expect({ exit, left, err }).toEqual({ exit: 0, left: {}, err: '' });
    const flat = out.replace(/\s+/g, ' ');
    for (const { where } of findings) expect(flat).toContain(where.split(' ')[0]);
    expect(out).toMatch(/^T-1: no stops, /m);
  });

  test('ends with 4 when stops are left', async () => {
    const { exit, out } = await runWith(['check', 'sheet.json'], stopped);
    expect(exit).toBe(4);
    expect(out).toContain('STOP');
    expect(out).toContain('overrides');
  });

  for (const sheet of [good, stopped]) {
    test(`--json prints the findings as they are (${sheet === good ? 'no stop' : 'stops'})`, async () => {
      const { exit, out, err } = await runWith(['check', 'sheet.json', '--json'], sheet), { findings } = designOf(sheet);
      expect(exit).toBe(sheet === good ? 0 : 4);
      expect(JSON.parse(out)).toEqual({ reference: 'T-1', findings: JSON.parse(JSON.stringify(findings)) });
      expect(err).toBe('');
    });
  }

  test('--json prints what keeps findings from being found', async () => {
    const faults = await runWith(['check', 'sheet.json', '--json'], faulty), troubles = await runWith(['check', 'sheet.json', '--json'], shapeless);
    expect(JSON.parse(faults.out)).toMatchObject({ faults: expect.arrayContaining([expect.objectContaining({ path: 'left.foot.pivotHeight' })]) });
    expect(JSON.parse(troubles.out)).toMatchObject({ troubles: [{ path: 'left.order.apex', works: expect.arrayContaining([{ values: [{ path: 'left.order.apex', value: expect.any(Number), unit: '%' }], text: expect.stringContaining('left.order.apex') }]) }] });
    expect([faults.exit, troubles.exit]).toEqual([3, 3]);
  });

  test('--json prints one JSON text whatever comes of it, and ends as without it', async () => {
    const disk = { read: async () => { throw diskError('EACCES'); } }, bug = { read: async () => { throw new TypeError('put in by a test'); } };
    for (const [words, changes, key, exit, said] of [
      [['missing.json'], {}, 'problem', 5, 'missing.json is not there'], [['.'], {}, 'problem', 5, 'is a folder'], [['sheet.json'], { disk }, 'problem', 5, 'not open to you'],
      [['sheet.json'], { disk: bug }, 'problem', 1, 'a fault of rockerbench'], [[], {}, 'problem', 2, 'needs a fitting sheet'], [['sheet.json', '--odd'], {}, 'problem', 2, '--odd'],
      [['sheet.json'], { disk: { read: async () => new Uint8Array([0xff]) } }, 'faults', 3, 'UTF-8'],
    ] as const) {
      const { out, err, ...ended } = await runWith(['check', ...words, '--json'], good, changes);
      expect(ended.exit, said).toBe(exit);
      expect(Object.keys(JSON.parse(out) as object), said).toEqual([key]);
      expect(out).toContain(said);
      expect(err).toContain(said);
    }
    expect((await runWith(['check', 'missing.json'], good)).out).toBe('');
  });

  test('says what to write on the sheet to take a stop on one\'s own name, and that does it', async () => {
    const { out } = await runWith(['check', 'sheet.json'], stopped), words = /"overrides": (\[[^\]]*\])/.exec(out)![1]!;
    expect((await runWith(['check', 'sheet.json'], changed(stopped, { overrides: JSON.parse(words) as unknown }))).exit).toBe(0);
  });

  test('colours on a terminal only', async () => {
    expect((await runWith(['check', 'sheet.json'], stopped)).out).not.toContain('\u001b');
    expect((await runWith(['check', 'sheet.json'], stopped, { screen: { colour: true } })).out).toContain('\u001b[1;31mSTOP');
  });
});

for (const verb of ['make', 'check']) {
  describe(`${verb} on a sheet that cannot be used`, () => {
    const refused = async (sheet: Json | string | Uint8Array, changes: Changes = {}) => runWith([verb, 'sheet.json'], sheet, changes);

    test('faults: a line each, and how many', async () => {
      const { exit, left, out, err } = await refused(faulty);
      expect({ exit, left, out }).toEqual({ exit: 3, left: {}, out: '' });
      expect(err).toMatch(/^left\.foot\.pivotHeight .*8\.5.*cm/m);
      expect(err).toMatch(/^left\.last\.pitch /m);
      expect(err.trimEnd().split('\n').at(-1)).toBe('3 faults on the sheet; correct them and call again.');
      expect(err.trimEnd().split('\n')).toHaveLength(4);
    });

    test('no shape: which field, and values that work', async () => {
      const { exit, left, err } = await refused(shapeless);
      expect({ exit, left }).toEqual({ exit: 3, left: {} });
      expect(err).toMatch(/^left\.order\.apex: .* mm ahead/m);
      expect(err).toMatch(/^ {2}works: left\.order\.apex \d\d(\.\d)? %$/m);
    });

    test('a mould the sole could not leave takes nothing from the findings of a check', async () => {
      const faulty = changed(good, { 'making.mould': { part: 'foam body' }, 'left.order.taper': { heelOuter: -5 } });
      const { exit, out, err } = await runWith(['check', 'sheet.json'], faulty);
      expect([exit, out.includes('GOVERNS') || out.includes('sets the height')]).toEqual([3, true]);
      expect(err).toMatch(/^making\.mould\.split/);
      const told = JSON.parse((await runWith(['check', '--json', 'sheet.json'], faulty)).out) as { findings: object[]; faults: object[] };
      expect([told.findings.length > 0, told.faults.length]).toEqual([true, 1]);
    });
    test('a mould the sole could not leave', async () => {
      const { exit, left, err } = await refused(changed(good, { 'making.mould': { part: 'foam body' }, 'left.order.taper': { heelOuter: -5 } }));
      expect({ exit, left }).toEqual({ exit: 3, left: {} });
      expect(err).toMatch(/^making\.mould\.split .*flares out by 5\.0°/);
      expect(err).toContain('1 fault on the sheet');
    });

    test('a reference that would lead out of the folder', async () => {
      for (const reference of ['../T-1', '/tmp/T-1', '..', '.', 'a/b', 'a\\b', 'T-1\u0000', '.T-1', '', 'a..b']) {
        const { exit, left, here } = await refused(changed(good, { 'job.reference': reference }));
        expect({ exit, left }, reference).toEqual({ exit: 3, left: {} });
        expect(existsSync(join(dirname(here), 'T-1')), reference).toBe(false);
      }
    });

    test('bytes that are no UTF-8, and bytes that say so in front', async () => {
      const wide = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(JSON.stringify(good), 'utf16le')]);
      expect(await refused(wide)).toMatchObject({ exit: 3, left: {}, err: expect.stringContaining('UTF-8') });
      const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(JSON.stringify(good))]);
      expect((await refused(marked)).exit).toBe(0);
    });

    test('50 MB are refused without being read', async () => {
      const here = emptyFolder(), file = openSync(join(here, 'large.json'), 'w');
      ftruncateSync(file, 50_000_000);
      closeSync(file);
      let reads = 0;
      const { world, said } = watched({ here, disk: { read: async (path) => { reads++; return realDisk.read(path); } } });
      expect(await run([verb, 'large.json'], world)).toBe(3);
      expect(said.err).toContain(String(SHEET_MAX_BYTES));
      expect(reads).toBe(0);
    });

    test('a folder, nothing, something that is no file, and a file that may not be read', async () => {
      const here = emptyFolder();
      for (const [sheet, words, disk] of [
        ['.', 'is a folder', {}], ['missing.json', 'is not there', {}], ['/dev/null', 'is not a file', {}],
        ['sheet.json', 'not open to you', { read: async () => { throw diskError('EACCES'); } }],
        ['sheet.json/deeper.json', 'not a folder', {}],
      ] as const) {
        const { exit, left, out, err } = await runWith([verb, sheet], good, { here, disk });
        expect({ exit, left, out }, sheet).toEqual({ exit: 5, left: {}, out: '' });
        expect(err, sheet).toContain(words);
      }
    });

    test('a fault of our own is called one', async () => {
      const { exit, err } = await refused(good, { disk: { read: async () => { throw new TypeError('put in by a test'); } } });
      expect(exit).toBe(1);
      expect(err).toContain('a fault of rockerbench, not of your sheet');
      expect(err).toContain('put in by a test');
    });
  });
}

describe('schema, samples and version', () => {
  test('schema prints the schema of the sheet', async () => {
    const { world, said } = watched();
    expect(await run(['schema'], world)).toBe(0);
    expect(JSON.parse(said.out)).toEqual(JSON.parse(JSON.stringify(sheetJsonSchema())));
  });

  test('samples are listed a line each, and printed as they lie', async () => {
    const { world, said } = watched();
    expect(await run(['samples'], world)).toBe(0);
    const names = said.out.trimEnd().split('\n').map((line) => line.split(' ')[0]!);
    expect(names.length).toBeGreaterThan(3);
    for (const name of names) {
      const one = watched();
      expect(await run(['samples', name], one.world)).toBe(0);
      expect(one.said.out).toBe(readFileSync(join(world.home, 'samples', name, 'sheet.json'), 'utf8'));
      expect(one.said.err).toMatch(new RegExp(`that of the sample "${name}", not of your client.*rockerbench help blank`));
    }
    expect(said.err).toContain('The clients are invented, and so are their measures.');
  });

  test.each([['toe', 'both'], ['ankle', 'left'], ['prosthesis', 'right']])('blank writes a sheet for %s, %s, of which check says all that waits', async (foot, rocker) => {
    const here = emptyFolder(), { world, said } = watched({ here });
    expect(await run(['blank', foot, '--rocker', rocker, '--to', 'new.json'], world)).toBe(0);
    expect(said).toEqual({ out: expect.stringContaining('rockerbench check new.json'), err: '' });
    const text = contents(here)['new.json']!, waits = text.match(/null/g)!.length, checked = watched({ here });
    expect(JSON.parse(text)).toMatchObject({ $schema: './fitting-sheet.schema.json' });
    expect(await run(['check', 'new.json'], checked.world)).toBe(3);
    expect(checked.said.err).toContain(`${waits} faults on the sheet`);
  });

  test('blank leaves alone whatever lies there, and makes no folder', async () => {
    const here = emptyFolder();
    mkdirSync(join(here, 'folder'));
    writeFileSync(join(here, 'mine.json'), 'mine');
    for (const [name, words] of [['mine.json', 'is there already'], ['folder', 'is there already'], ['none/new.json', 'cannot be written']] as const) {
      const { world, said } = watched({ here });
      expect(await run(['blank', 'toe', '--rocker', 'left', '--to', name], world), name).toBe(5);
      expect(said).toEqual({ out: '', err: expect.stringContaining(words) });
    }
    const late = watched({ here, disk: { look: async () => undefined } });
    expect(await run(['blank', 'toe', '--rocker', 'left', '--to', 'mine.json'], late.world)).toBe(5);
    expect(contents(here)).toEqual({ 'folder/': '', 'mine.json': 'mine' });
  });

  test('a sample that is not there is refused, whatever its name', async () => {
    for (const name of ['nobody', '../samples/baker', '..', '']) {
      const { world, said } = watched();
      expect(await run(['samples', name], world), name).toBe(2);
      expect(said.err).toContain('baker');
      expect(said.out).toBe('');
    }
  });

  test('version is that of the package', async () => {
    const { world, said } = watched();
    expect(await run(['--version'], world)).toBe(0);
    expect(said.out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
