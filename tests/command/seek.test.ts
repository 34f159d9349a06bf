import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/command/run.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { contents, diskError, emptyFolder, realDisk, watched, type Changes } from './fakeWorld.ts';

const good = changed(lockedSheet(), { 'left.order.apex': 65, 'making.chordGap': 0.4, 'left.order.targets': { seatHeightAtMost: 29, free: ['apex'] } });
const tight = changed(good, { 'left.order.targets.seatHeightAtMost': 15 });

async function seeking(words: readonly string[], sheet: Json, changes: Changes = {}) {
  const here = changes.here ?? emptyFolder();
  writeFileSync(join(here, 'sheet.json'), JSON.stringify(sheet));
  const { world, said } = watched({ here, ...changes }), exit = await run(['seek', 'sheet.json', ...words], world), left = contents(here);
  delete left['sheet.json'];
  return { exit, here, left, ...said };
}

describe('seek', () => {
  test('prints what to change, what comes of it and what it loses, and writes nothing', async () => {
    const { exit, left, out, err } = await seeking([], good);
    expect({ exit, left, err }).toEqual({ exit: 0, left: {}, err: '' });
    expect(out).toMatch(/^T-1 left: Lost against the order: .*° of toe-off/m);
    expect(out).toMatch(/^apex +65\.0 % +\d\d\.\d %$/m);
    expect(out).toMatch(/^Seat height at most +29\.0 mm +2[89]\.\d mm \(est\.\) +(just kept|0\.\d mm to spare)$/m);
    expect(out).toMatch(/^Toe-off angle reached +\d\d\.\d° \(est\.\) +\d\d\.\d° \(est\.\) +\d\.\d°$/m);
  });

  test('--take writes a new sheet that reads and asks for the values found; one that is there stays', async () => {
    const first = await seeking(['--take', 'new.json'], good);
    expect(first.exit).toBe(0);
    expect(Object.keys(first.left)).toEqual(['new.json']);
    const taken = JSON.parse(first.left['new.json']!) as Json, apex = Number(/^apex +\S+ % +(\S+) %$/m.exec(first.out)![1]);
    expect(taken).toEqual(changed(good, { 'left.order.apex': apex }));
    expect(fittingOf(taken).shoes.left).toBeDefined();
    const again = await seeking(['--take', 'new.json'], changed(good, { 'left.order.targets.seatHeightAtMost': 30 }), { here: first.here });
    expect(again).toMatchObject({ exit: 5, left: first.left, out: '' });
    expect(again.err).toContain('is there already');
    expect(readFileSync(join(first.here, 'sheet.json'), 'utf8')).toContain('30');
  });

  test('a disk that is full leaves nothing behind', async () => {
    const disk = { write: async (path: string, bytes: Uint8Array) => { await realDisk.write(path, bytes.subarray(0, 3)); throw diskError('ENOSPC'); } };
    const { exit, left, err } = await seeking(['--take', 'new.json'], good, { disk });
    expect({ exit, left }).toEqual({ exit: 5, left: {} });
    expect(err).toContain('the disk is full');
  });

  test('ends with 3 where no rocker keeps to the limits: the one to blame is named, and nothing is taken', async () => {
    const { exit, out, err, here } = await seeking(['--take', 'new.json'], tight);
    expect(exit).toBe(3);
    expect(out).toMatch(/Seat height at most 15\.0 mm cannot be kept\. Works: Seat height at most \d\d\.\d mm\. Lost against the order: /);
    expect(err).toContain('new.json was not written');
    expect(existsSync(join(here, 'new.json'))).toBe(false);
  });

  test('--json prints one JSON text: answers, or what keeps them from being found', async () => {
    const found = await seeking(['--json'], good), none = await seeking(['--json'], tight), faulty = await seeking(['--json'], changed(good, { 'left.order.targets.free': [] })), without = await seeking(['--json'], lockedSheet());
    expect(JSON.parse(found.out)).toMatchObject({ reference: 'T-1', shoes: [{ side: 'left', withinLimits: true, values: [{ path: 'order.apex', unit: '%', ordered: 65, changed: true }], limits: [{ name: 'seatHeightAtMost', limit: 29 }] }] });
    expect(JSON.parse(none.out)).toMatchObject({ shoes: [{ withinLimits: false, toBlame: [{ limits: [{ name: 'seatHeightAtMost', works: expect.any(Number) }] }] }] });
    expect(Object.keys(JSON.parse(faulty.out) as object)).toEqual(['faults']);
    expect(JSON.parse(without.out)).toEqual({ problem: expect.stringContaining('order.targets') });
    expect([found.exit, none.exit, faulty.exit, without.exit]).toEqual([0, 3, 3, 3]);
  });
});
