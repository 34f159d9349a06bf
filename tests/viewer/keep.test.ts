import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { historyOf } from '../../viewer/keep/history.ts';
import { openJobs } from '../../viewer/keep/jobs.ts';
import { copiedAcross, mirrored, readText, sheetText, valueAt, withValue, type Json, type Sheet } from '../../viewer/keep/sheet.ts';
import { memoryStore } from '../../viewer/keep/store.ts';
import { zipOf } from '../../viewer/keep/zip.ts';
import { numberTyped, stepped } from '../../viewer/parts/numbers.ts';

const SEED = { seed: 20260311, numRuns: 200 };
const names = fc.constantFrom('left', 'right', 'foot', 'order', 'toe', 'apex', 'pitch'), paths = fc.array(names, { minLength: 1, maxLength: 4 }).map((steps) => steps.join('.'));
const values: fc.Arbitrary<Json> = fc.oneof(fc.integer(), fc.string(), fc.boolean(), fc.constant({ size: 40, system: 'paris points' }));
const edits = fc.array(fc.tuple(paths, fc.option(values, { nil: undefined })), { maxLength: 12 });
const sheets = edits.map((list): Sheet => list.reduce<Sheet>((sheet, [path, value]) => withValue(sheet, path, value), {}));

describe('a sheet', () => {
  test('gives back what was put in, changes nothing in place, and leaves no empty group behind', () => {
    fc.assert(fc.property(sheets, paths, values, (sheet, path, value) => {
      const before = JSON.stringify(sheet), put = withValue(sheet, path, value);
      expect(valueAt(put, path)).toEqual(value);
      expect(JSON.stringify(sheet)).toBe(before);
      expect(valueAt(withValue(put, path, undefined), path)).toBeUndefined();
      expect(JSON.stringify(withValue(put, path, undefined)).slice(1)).not.toContain('{}');
    }), SEED);
  });
  test('a number put where a measure tells how it was taken keeps what it tells; a size gives way', () => {
    const sheet: Sheet = { left: { foot: { length: { value: 260, how: 'size stick', twice: true } }, last: { length: { size: 40, system: 'paris points' } } } };
    expect(valueAt(withValue(sheet, 'left.foot.length', 262), 'left.foot.length')).toEqual({ value: 262, how: 'size stick', twice: true });
    expect(valueAt(withValue(sheet, 'left.last.length', 280), 'left.last.length')).toBe(280);
  });
  test('written and read again is the same; what is none is told', () => {
    fc.assert(fc.property(sheets, (sheet) => { expect(readText(sheetText(sheet))).toEqual({ ok: true, sheet: JSON.parse(JSON.stringify(sheet)) as Sheet }); }), SEED);
    expect(readText('[1]')).toMatchObject({ ok: false });
    expect(readText('{')).toMatchObject({ ok: false });
  });
  test('swapped twice is the same, and the shorter leg goes with the side; copied across both shoes are alike', () => {
    const sheet: Sheet = { wearer: { legDifference: { correct: 6, shorter: 'left' } }, left: { order: { kind: 'rocker' } } };
    expect(mirrored(sheet)).toEqual({ wearer: { legDifference: { correct: 6, shorter: 'right' } }, right: { order: { kind: 'rocker' } } });
    expect(mirrored(mirrored(sheet))).toEqual(sheet);
    expect(copiedAcross(sheet, 'left')).toMatchObject({ right: { order: { kind: 'rocker' } } });
  });
});

describe('undo', () => {
  test('of everything gives the first state back, redo the last', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer(), fc.option(fc.constantFrom('a', 'b'), { nil: undefined }))), (steps) => {
      const history = historyOf(0);
      for (const [state, key] of steps) history.edit(state, 'typed', key);
      const last = history.now();
      while (history.undo());
      expect([history.now(), history.undoLabel()]).toEqual([0, undefined]);
      while (history.redo());
      expect([history.now(), history.redoLabel()]).toEqual([last, undefined]);
    }), SEED);
  });
  test('one drag is one step, two drags are two', () => {
    const history = historyOf(0);
    for (const x of [1, 2, 3]) history.edit(x, 'apex', 'drag apex');
    history.settle();
    for (const x of [4, 5]) history.edit(x, 'apex', 'drag apex');
    history.undo();
    expect(history.now()).toBe(3);
    history.undo();
    expect(history.now()).toBe(0);
  });
});

test('jobs outlast the page with their undo; a removed one comes back, and is gone after thirty days', async () => {
  const store = memoryStore();
  let now = 1_000, id = 0;
  const open = (): ReturnType<typeof openJobs> => openJobs(store, () => now, () => `job ${++id}`, () => undefined);
  const jobs = await open(), one = jobs.create({ job: { reference: 'K-1' } }), history = jobs.open(one)!;
  history.edit({ job: { reference: 'K-2' } }, 'reference');
  jobs.keep(one, history);
  const two = jobs.duplicate(one)!;
  jobs.remove(two);
  await jobs.flush();
  const again = await open(), kept = again.open(one)!;
  expect(again.list().map(({ name, removed }) => [name, removed !== undefined]).sort()).toEqual([['K-2', false], ['K-2', true]]);
  expect([valueAt(kept.now(), 'job.reference'), kept.undo(), valueAt(kept.now(), 'job.reference')]).toEqual(['K-2', true, 'K-1']);
  again.restore(two);
  expect(again.list().every(({ removed }) => removed === undefined)).toBe(true);
  again.remove(two);
  await again.flush();
  now += 31 * 24 * 3600 * 1000;
  expect((await open()).list()).toHaveLength(1);
});

test('a zip holds the files as they are, and the same files give the same zip', () => {
  const files = [{ name: 'a.stl', bytes: Uint8Array.of(1, 2, 3) }, { name: 'b.json', bytes: new TextEncoder().encode('{}') }];
  expect(unzipSync(zipOf(files))['a.stl']).toEqual(files[0]!.bytes);
  expect(zipOf(files)).toEqual(zipOf(files));
});

test.each([['62,5', 62.5], [' 62.5 ', 62.5], ['−3', -3], ['1 024', 1024], ['', undefined], ['6,2,5', undefined], ['6 mm', undefined]])('%j is typed as %j', (text, number) => expect(numberTyped(text)).toBe(number));
test('a drag moves in tenths, in inches in finer steps', () => expect([stepped(65.237, '%'), stepped(1.2349, 'in')]).toEqual([65.2, 1.235]));
