import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { openJobs, type Jobs } from '../../viewer/keep/jobs.ts';
import { memoryStore, type Job, type Store } from '../../viewer/keep/store.ts';
import { withValue, type Sheet } from '../../viewer/keep/sheet.ts';

const DAY = 24 * 3600 * 1000;
const sheet: Sheet = { job: { reference: 'K-219' }, left: { last: { pitch: 14 } } };
const pitch = (value: number): Sheet => withValue(sheet, 'left.last.pitch', value);

let now = 0, ids = 0, said: number[] = [], writes: Job[] = [];
const clock = (): number => now;
const opened = (store: Store): Promise<Jobs> => openJobs(store, clock, () => `job ${++ids}`, (at) => said.push(at));

/** A store that counts, and keeps copies as a device does. */
function counted(): Store {
  const memory = memoryStore();
  return { ...memory, put: async (job) => { writes.push(job); await memory.put(structuredClone(job)); } };
}

beforeEach(() => { vi.useFakeTimers(); now = 1_000_000; ids = 0; said = []; writes = []; });
afterEach(() => { vi.useRealTimers(); });

test('a job comes back after the page is opened anew: sheet, name, and undo with it', async () => {
  const store = counted(), jobs = await opened(store), id = jobs.create(sheet), history = jobs.open(id)!;
  history.edit(pitch(15), 'pitch');
  history.edit(withValue(pitch(16), 'job.reference', 'K-220'), 'job number');
  history.undo();
  jobs.keep(id, history);
  await jobs.flush();
  const again = await opened(store), back = again.open(id)!;
  expect(again.list()).toEqual([{ id, name: 'K-219', changed: now }]);
  expect([back.now(), back.undoLabel(), back.redoLabel()]).toEqual([pitch(15), 'pitch', 'job number']);
  expect([back.undo(), back.now()]).toEqual([true, sheet]);
});

test('a job without a number is listed as that; the number is its name as soon as it has one', async () => {
  const jobs = await opened(counted()), id = jobs.create({}), history = jobs.open(id)!;
  expect(jobs.list()[0]!.name).toBe('without a number');
  history.edit(sheet, 'job number');
  jobs.keep(id, history);
  expect(jobs.list()[0]!.name).toBe('K-219');
});

describe('writing', () => {
  test('is done at most once in 300 ms while a hand works, with the newest work, and once more after it', async () => {
    const jobs = await opened(counted()), id = jobs.create(sheet), history = jobs.open(id)!;
    for (let i = 0; i < 60; i++) {                             // a second of dragging
      history.edit(pitch(15 + i), 'pitch', 'pitch');
      jobs.keep(id, history);
      await vi.advanceTimersByTimeAsync(16);
    }
    expect(writes.length).toBeLessThanOrEqual(4);
    await vi.advanceTimersByTimeAsync(300);
    expect(writes.at(-1)!.work.steps.map(({ state }) => state)).toEqual([sheet, pitch(74)]);
    const done = writes.length;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(writes.length).toBe(done);
  });

  test('is begun at once for every job that waits when the page goes, and told once', async () => {
    const jobs = await opened(counted());
    jobs.create(sheet);
    jobs.create(pitch(3));
    const flushed = jobs.flush();
    expect(writes.map(({ id }) => id)).toEqual(['job 1', 'job 2']);
    await flushed;
    expect(said).toEqual([now]);
    await jobs.flush();
    expect(said).toEqual([now]);
  });

  test('is not done for a job that was only looked at, and its date stays', async () => {
    const store = counted(), jobs = await opened(store), id = jobs.create(sheet);
    await jobs.flush();
    now += DAY;
    const again = await opened(store);
    again.keep(id, again.open(id)!);
    await again.flush();
    expect([writes.length, again.list()[0]!.changed]).toEqual([1, now - DAY]);
  });

  test('keeps two hundred states and the one that is now among them; in the open page all stay', async () => {
    const store = counted(), jobs = await opened(store), id = jobs.create(sheet), history = jobs.open(id)!;
    for (let i = 1; i <= 500; i++) history.edit(pitch(i), `pitch ${i}`);
    jobs.keep(id, history);
    await jobs.flush();
    expect([writes.at(-1)!.work.steps.length, (await opened(store)).open(id)!.now()]).toEqual([200, pitch(500)]);
    expect(jobs.open(id)!.kept().steps.length).toBe(501);
    for (let i = 0; i < 450; i++) history.undo();
    jobs.keep(id, history);
    await jobs.flush();
    const back = (await opened(store)).open(id)!;
    expect([writes.at(-1)!.work.steps.length, back.now(), back.redoLabel()]).toEqual([200, pitch(50), 'pitch 51']);
  });

  test('that the device did not take is tried again, and the work goes on meanwhile', async () => {
    const memory = memoryStore();
    let full = true;
    const store: Store = { ...memory, put: (job) => (full ? Promise.reject(new Error('full')) : memory.put(job)), get warning() { return full ? 'full' : undefined; } };
    const jobs = await opened(store), id = jobs.create(sheet);
    await vi.advanceTimersByTimeAsync(300);
    expect([said.length, store.warning, jobs.open(id)!.now(), (await memory.all()).length]).toEqual([1, 'full', sheet, 0]);
    full = false;
    await jobs.flush();
    expect((await memory.all()).map((job) => job.id)).toEqual([id]);
  });
});

describe('a job that another tab writes as well', () => {
  /** Two tabs of one device; the other one has written `pitch(40)` while this one still has `pitch(15)` waiting. */
  async function overtaken(): Promise<{ readonly jobs: Jobs; readonly store: Store; readonly id: string; readonly other: Jobs }> {
    const store = counted(), jobs = await opened(store), id = jobs.create(sheet), history = jobs.open(id)!;
    await jobs.flush();
    const other = await opened(store), theirs = other.open(id)!;
    history.edit(pitch(15), 'mine');
    jobs.keep(id, history);
    theirs.edit(pitch(40), 'theirs');
    other.keep(id, theirs);
    await other.flush();
    return { jobs, store, id, other };
  }
  const stored = async (store: Store, id: string): Promise<Sheet | undefined> => (await opened(store)).open(id)?.now();

  test('would be written over by what waits here', async () => {
    const { jobs, store, id } = await overtaken();
    await jobs.flush();
    expect(await stored(store, id)).toEqual(pitch(15));
  });

  test('is left alone where it is to be left: what waits is not written, and stands on this page until the next edit', async () => {
    const { jobs, store, id } = await overtaken(), done = writes.length;
    jobs.leave(id);
    await vi.advanceTimersByTimeAsync(10_000);
    await jobs.flush();
    expect([writes.length, await stored(store, id), jobs.open(id)!.now()]).toEqual([done, pitch(40), pitch(15)]);
    const history = jobs.open(id)!;
    history.edit(pitch(16), 'mine again');
    jobs.keep(id, history);
    await jobs.flush();
    expect(await stored(store, id)).toEqual(pitch(16));
  });

  test('is left alone for itself only: other jobs that wait are written', async () => {
    const { jobs, store, id } = await overtaken(), next = jobs.create(pitch(3));
    jobs.leave(id);
    await jobs.flush();
    expect([await stored(store, id), await stored(store, next)]).toEqual([pitch(40), pitch(3)]);
  });

  test('is read anew as the store has it, undo with it, and nothing of this tab is written over it', async () => {
    const { jobs, store, id } = await overtaken(), done = writes.length;
    await jobs.reread(id);
    const history = jobs.open(id)!;
    await jobs.flush();
    expect([history.now(), history.undoLabel(), writes.length, await stored(store, id)]).toEqual([pitch(40), 'theirs', done, pitch(40)]);
    expect([history.undo(), history.now()]).toEqual([true, sheet]);
  });

  test('is gone here too where the other tab has taken it off the device, and is listed where it is new', async () => {
    const { jobs, store, id, other } = await overtaken(), theirs = other.create(pitch(7));
    await other.flush();
    await store.drop(id);
    await jobs.reread(id);
    await jobs.reread(theirs);
    await jobs.flush();
    expect([jobs.open(id), jobs.list().map((job) => job.id), jobs.open(theirs)!.now(), await stored(store, id)]).toEqual([undefined, [theirs], pitch(7), undefined]);
  });
});

describe('a removed job', () => {
  test('is listed as removed, before older ones, and can be brought back as it was', async () => {
    const store = counted(), jobs = await opened(store), first = jobs.create(sheet), second = jobs.create(pitch(3));
    now += 10;
    jobs.remove(first);
    await jobs.flush();
    const again = await opened(store);
    expect(again.list()).toEqual([{ id: first, name: 'K-219', changed: now - 10, removed: now }, { id: second, name: 'K-219', changed: now - 10 }]);
    again.restore(first);
    await again.flush();
    const back = await opened(store);
    expect([back.list().every(({ removed }) => removed === undefined), back.open(first)!.now()]).toEqual([true, sheet]);
  });

  test('stays thirty days, and is then gone from the device too', async () => {
    const store = counted(), jobs = await opened(store), kept = jobs.create(sheet), id = jobs.create(sheet);
    jobs.remove(id);
    await jobs.flush();
    now += 30 * DAY;
    expect((await opened(store)).list().map((job) => job.id).sort()).toEqual([kept, id]);
    now += 1;
    expect((await opened(store)).list().map((job) => job.id)).toEqual([kept]);
    expect((await store.all()).map((job) => job.id)).toEqual([kept]);
  });
});

test('a copy is a job of its own, begun from what stands now', async () => {
  const jobs = await opened(counted()), id = jobs.create(sheet), history = jobs.open(id)!;
  history.edit(pitch(15), 'pitch');
  jobs.keep(id, history);
  const copy = jobs.duplicate(id)!, other = jobs.open(copy)!;
  expect([copy === id, other.now(), other.undo()]).toEqual([false, pitch(15), false]);
  other.edit(pitch(16), 'pitch');
  jobs.keep(copy, other);
  expect(jobs.open(id)!.now()).toEqual(pitch(15));
});

test('a job that is not there is none: nothing is opened, copied, removed or kept', async () => {
  const jobs = await opened(counted()), history = (await opened(counted())).open('x');
  jobs.remove('x');
  jobs.restore('x');
  expect([history, jobs.duplicate('x'), jobs.list()]).toEqual([undefined, undefined, []]);
});

test('a store that keeps nothing says so, and everything goes on in memory', async () => {
  const store = memoryStore('save the sheet before you close the page'), jobs = await opened(store), id = jobs.create(sheet);
  await jobs.flush();
  expect([store.warning, jobs.open(id)!.now()]).toEqual(['save the sheet before you close the page', sheet]);
});
