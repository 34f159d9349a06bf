import fc from 'fast-check';
import { expect, test } from 'vitest';
import { historyAgain, historyOf, type History } from '../../viewer/keep/history.ts';

const runs = { seed: 20260506, numRuns: 300 };

/** Any hand at work: typing in two fields, resting, going back and forth. */
const acts = fc.array(fc.oneof(
  fc.record({ act: fc.constant('edit' as const), key: fc.constantFrom(undefined, 'apex', 'pitch') }),
  fc.record({ act: fc.constantFrom('settle' as const, 'drop' as const, 'undo' as const, 'redo' as const), key: fc.constant(undefined) })), { maxLength: 60 });
type Acts = typeof acts extends fc.Arbitrary<infer Value> ? Value : never;

let states = 0;
/** Each edit comes to a state of its own. */
function work(history: History<number>, hand: Acts): void {
  for (const { act, key } of hand) if (act === 'edit') history.edit(++states, `to ${states}`, key); else history[act]();
}

/** The slow way: a list of steps, each remembering the key that may still join it. */
function slowly(hand: Acts, first: number): readonly number[] {
  let past = [{ state: first, key: undefined as string | undefined }], future: typeof past = [];
  let asItWas = { past, future };
  const rest = (): void => { past = past.map(({ state }) => ({ state, key: undefined })); };
  for (const { act, key } of hand) {
    if (act === 'edit') {
      if (key !== undefined && past.at(-1)!.key === key) past.pop(); else { rest(); asItWas = { past: [...past], future }; }
      past.push({ state: ++states, key });
      future = [];
    } else if (act === 'drop' && past.at(-1)!.key !== undefined) ({ past, future } = asItWas);
    else rest();
    if (act === 'undo' && past.length > 1) future.unshift(past.pop()!);
    if (act === 'redo' && future.length > 0) past.push(future.shift()!);
  }
  return [...past, ...future].map(({ state }) => state);
}

test('undo of everything gives the first state back, redo of everything the last, whatever the hand did', () => {
  fc.assert(fc.property(acts, (hand) => {
    const history = historyOf(0);
    work(history, hand);
    const seen: number[] = [];
    while (history.redo());
    const last = history.now();
    do seen.unshift(history.now()); while (history.undo());
    expect(history.now()).toBe(0);
    for (const state of seen) { expect(history.now()).toBe(state); history.redo(); }
    expect(history.now()).toBe(last);
  }), runs);
});

test('its steps are those of a slow list', () => {
  fc.assert(fc.property(acts, (hand) => {
    states = 0;
    const history = historyOf(0);
    work(history, hand);
    states = 0;
    expect(history.kept().steps.map(({ state }) => state)).toEqual(slowly(hand, 0));
  }), runs);
});

test('a drag is one step, with the label of its end; what follows a rest is another', () => {
  const history = historyOf('start');
  for (const state of ['a', 'ab', 'abc']) history.edit(state, `apex to ${state}`, 'apex');
  history.settle();
  history.edit('abcd', 'apex to abcd', 'apex');
  expect(history.undoLabel()).toBe('apex to abcd');
  history.undo();
  expect([history.now(), history.undoLabel(), history.redoLabel()]).toEqual(['abc', 'apex to abc', 'apex to abcd']);
  history.undo();
  expect([history.now(), history.undoLabel(), history.undo()]).toEqual(['start', undefined, false]);
});

test('another field, and a step back and forth, end a drag', () => {
  const history = historyOf(0);
  history.edit(1, 'apex', 'apex');
  history.edit(2, 'pitch', 'pitch');
  history.edit(3, 'apex', 'apex');
  history.undo();
  history.redo();
  history.edit(4, 'apex', 'apex');
  expect(history.kept().steps.map(({ state }) => state)).toEqual([0, 1, 2, 3, 4]);
});

test('a drag that is dropped leaves nothing to undo or redo, and what was undone before it can be redone again', () => {
  const history = historyOf(0);
  history.edit(1, 'one');
  history.edit(2, 'two');
  history.undo();
  const { steps, at } = history.kept();
  for (const state of [7, 8, 9]) history.edit(state, 'apex', 'apex');
  expect([history.undoLabel(), history.redoLabel(), history.drop()]).toEqual(['apex', undefined, true]);
  expect([history.now(), history.undoLabel(), history.redoLabel(), history.kept()]).toEqual([1, 'one', 'two', { steps, at }]);
});

test('only what is unsettled can be dropped: not a step the hand has rested on, nor an older drag of the same key', () => {
  const history = historyOf(0);
  history.edit(1, 'apex', 'apex');
  history.settle();
  expect([history.drop(), history.now()]).toEqual([false, 1]);
  history.edit(2, 'apex', 'apex');
  expect([history.drop(), history.now(), history.drop(), history.redo()]).toEqual([true, 1, false, false]);
  history.edit(3, 'at once');
  expect([history.drop(), history.now()]).toEqual([false, 3]);
});

test('an edit that changes nothing is no step and does not lose what was undone', () => {
  const history = historyOf(0);
  history.edit(1, 'one');
  history.undo();
  history.edit(0, 'nothing');
  expect([history.undoLabel(), history.redoLabel()]).toEqual([undefined, 'one']);
});

test('something else done after an undo loses what was undone, and only that', () => {
  const history = historyOf(0);
  for (const state of [1, 2, 3]) history.edit(state, String(state));
  history.undo();
  history.undo();
  history.edit(9, 'nine');
  expect([history.redo(), history.kept().steps.map(({ state }) => state)]).toEqual([false, [0, 1, 9]]);
});

test('ten thousand steps go all the way back', () => {
  const history = historyOf(0);
  for (let state = 1; state <= 10_000; state++) history.edit(state, 'on');
  let steps = 0;
  while (history.undo()) steps++;
  expect([steps, history.now()]).toEqual([10_000, 0]);
});

test('kept and taken up again it goes on; a state that looks like something kept is only a state', () => {
  fc.assert(fc.property(acts, (hand) => {
    const history = historyOf(0);
    work(history, hand);
    const again = historyAgain(structuredClone(history.kept()));
    expect(again.kept()).toEqual(history.kept());
    again.edit(-1, 'after', 'apex');
    expect([again.undo(), again.now()]).toEqual([true, history.now()]);
  }), runs);
  const odd = { steps: [], at: 3 };
  expect(historyOf<object>(odd).now()).toBe(odd);
});
