import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Ask, DeskAnswer, Handle, Outcome } from '../../viewer/desk/protocol.ts';
import { openDesk, type Told } from '../../viewer/desk/ask.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { outcomeOf } from '../../viewer/desk/outcome.ts';
import { readText, sheetText, valueAt, withValue, type Sheet } from '../../viewer/keep/sheet.ts';

const PAPER = { width: 320, height: 172 }, look = { paper: PAPER, chordGap: 0.6 };
const SHEETS = readdirSync('samples', { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => [name, readFileSync(`samples/${name}/sheet.json`, 'utf8')] as const);
const sheetOf = (text: string): Sheet => { const read = readText(text); if (!read.ok) throw new Error(read.text); return read.sheet; };
const shown = (outcome: Outcome): Extract<Outcome, { kind: 'shown' }>['shown'] => { if (outcome.kind !== 'shown') throw new Error(JSON.stringify(outcome)); return outcome.shown; };

describe.each(SHEETS)('the handles of %s', (_, text) => {
  const sheet = sheetOf(text), before = shown(outcomeOf({ ...look, sheet: text }).outcome);
  const moved = ({ path, also }: Handle, value: number): Handle[] => {
    const others = Object.entries(also ?? {}).reduce((changed, [other, word]) => withValue(changed, other, word ?? undefined), sheet);
    return [...shown(outcomeOf({ ...look, sheet: sheetText(withValue(others, path, value)) }).outcome).handles];
  };
  test('move their own place by about as much as was asked, and show the value that was put in', () => {
    expect(before.handles.length).toBeGreaterThanOrEqual(4);
    for (const handle of before.handles.filter(({ id }) => !id.endsWith('.flat'))) {
      const by = handle.id.endsWith('.seat') ? 3 : 1, value = handle.value + by * handle.perMm, now = moved(handle, value).find(({ id }) => id === handle.id)!;
      expect([handle.id, Math.abs(now.value - value) < 1e-6]).toEqual([handle.id, true]);
      const way = handle.moves === 'along' ? now.at[0] - handle.at[0] : handle.at[1] - now.at[1];
      expect([handle.id, Math.abs(way * (handle.perPaper / handle.perMm) - by) < 0.25]).toEqual([handle.id, true]);
    }
  });
});

test('every field of a sample can be typed on the page, and each field is named once for each kind of shoe', () => {
  const fields = fieldsOfSheet(), known = new Set(fields.map(({ path }) => path));
  for (const [, text] of SHEETS) {
    const sheet = sheetOf(text), leaves = leavesOf(sheet, '').filter((path) => !/^(\$schema|version|units)|\.kind$/.test(path));
    expect(leaves.filter((path) => !known.has(path) && valueAt(sheet, path) !== undefined)).toEqual([]);
  }
  const names = fields.map(({ path, forKind }) => `${path} ${forKind ?? ''}`);
  expect(new Set(names).size).toBe(names.length);
  expect(fields.find(({ path }) => path === 'left.foot.pivotForward')).toMatchObject({ label: 'heel to ankle pivot', unit: 'length', kind: 'number', measured: true });
});

/** Places of values, a measure or a list being one. */
function leavesOf(value: unknown, path: string): string[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value) || 'value' in value || 'size' in value) return [path];
  return Object.entries(value).flatMap(([name, child]) => leavesOf(child, path ? `${path}.${name}` : name));
}

test.each(SHEETS)('%s is drawn on any paper, and on a small one no label is lost', (_, text) => {
  for (const width of [200, 260, 320, 420]) expect(shown(outcomeOf({ ...look, sheet: text, paper: { width, height: 0.56 * width } }).outcome).side.marks.length).toBeGreaterThan(200);
});

/** Names on the drawing with their places; a number in them may change. */
const namesOn = (outcome: Outcome): Map<string, readonly [number, number]> =>
  new Map([...shown(outcome).side.marks.join('').matchAll(/<text x="([-.\d]+)" y="([-.\d]+)"[^>]*>([^<]*[a-z]{4}[^<]*)</g)].map(([, x, y, text]) => [text!.replace(/-?[\d.]+/g, '0'), [Number(x), Number(y)]]));

test('while the apex is dragged the labels stay where they stood, give or take what they name', () => {
  const [, text] = SHEETS.find(([name]) => name === 'market-gardener')!;
  let { outcome, choices } = outcomeOf({ ...look, sheet: text }), most = 0;
  for (let apex = 62; apex < 66; apex += 0.5) {
    const before = namesOn(outcome);
    ({ outcome, choices } = outcomeOf({ ...look, sheet: sheetText(withValue(sheetOf(text), 'right.order.apex', apex)) }, choices));
    const now = namesOn(outcome), jumps = [...before].flatMap(([name, [x, y]]) => { const at = now.get(name); return at && Math.hypot(at[0] - x, at[1] - y) > 12 ? [name] : []; });
    most = Math.max(most, jumps.length);
  }
  expect(namesOn(outcome).size).toBeGreaterThan(15);
  expect(most).toBeLessThanOrEqual(1);
});

test('a sheet with faults tells them, one without shape tells what works', () => {
  const [, text] = SHEETS.find(([name]) => name === 'market-gardener')!;
  expect(outcomeOf({ ...look, sheet: sheetText(withValue(sheetOf(text), 'right.foot.length', 24.9)) }).outcome).toMatchObject({ kind: 'faults' });
  expect(outcomeOf({ ...look, sheet: sheetText(withValue(sheetOf(text), 'right.order.apex', 46)) }).outcome).toMatchObject({ kind: 'troubles', troubles: [{ path: 'right.order.apex' }] });
});

test('sentences follow the unit shown; drawings, pins, figures and solids do not change with it', () => {
  const [, text] = SHEETS.find(([name]) => name === 'market-gardener')!, sheet = withValue(sheetOf(text), 'making.mould', { part: 'foam body', dowel: 30 });
  const asked = (changed: Sheet, lengths: 'mm' | 'in'): Outcome => outcomeOf({ ...look, chordGap: 0, sheet: sheetText(withValue(changed, 'making.chordGap', 0.5)), lengths }).outcome;
  const { findings, mouldFaults, ...rest } = shown(asked(sheet, 'mm')), inches = shown(asked(sheet, 'in'));
  expect(inches).toMatchObject(rest);
  expect(inches.findings.map(({ code, measured }) => [code, measured])).toEqual(findings.map(({ code, measured }) => [code, measured]));
  expect([mouldFaults.length > 0, mouldFaults.some(({ text: said }) => / in\b(?! the)/.test(said)), inches.mouldFaults.map(({ path }) => path)]).toEqual([true, false, mouldFaults.map(({ path }) => path)]);
  for (const { text: said } of inches.mouldFaults) { expect(said).toMatch(/\d in\b/); expect(said).not.toMatch(/ mm\b/); }
  expect(asked(withValue(sheetOf(text), 'right.foot.length', 24.9), 'in')).toMatchObject({ faults: [{ rule: 'must be 3.898 to 19.07 in', value: '0.98' }] });
});

test('the desk asks for the newest sheet only, says which answer is current, and asks again finely when the hand rests', async () => {
  const asked: Ask[] = [], told: Told[] = [];
  const worker = { postMessage: (ask: Ask) => asked.push(ask), onmessage: null as ((event: { data: DeskAnswer }) => void) | null };
  const desk = openDesk(worker as unknown as Worker, (one) => told.push(one), () => undefined);
  const answer = (): void => { const ask = asked.at(-1)!; worker.onmessage!({ data: { kind: 'design', id: ask.id, outcome: { kind: 'faults', faults: [] } } }); };
  const view = { job: '1', paper: PAPER, lengths: 'mm', extras: { beside: [], foot: false } } as const;
  for (const sheet of ['a', 'b', 'c']) desk.show({ ...view, sheet });
  expect(asked.map((ask) => ('sheet' in ask ? ask.sheet : ''))).toEqual(['a']);
  answer();
  expect([told.at(-1)!.current, asked.length]).toEqual([false, 2]);
  answer();
  expect([told.at(-1)!.current, told.at(-1)!.sheet, told.at(-1)!.fine]).toEqual([true, 'c', false]);
  await new Promise((resolve) => setTimeout(resolve, 260));
  answer();
  expect([told.at(-1)!.fine, asked.length]).toEqual([true, 3]);
  desk.show({ ...view, sheet: 'c', lengths: 'in' });
  expect(asked.at(-1)).toMatchObject({ sheet: 'c', lengths: 'in' });
  // Another job is opened while this is worked out: the answer says whose it is.
  desk.show({ ...view, job: '2', sheet: 'd' });
  answer();
  expect(told.at(-1)).toMatchObject({ job: '1', current: false });
  answer();
  expect(told.at(-1)).toMatchObject({ job: '2', current: true });
});
