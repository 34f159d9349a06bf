import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { withTaken } from '../../src/targets/taken.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { seekOn, type SeekTold } from '../../viewer/desk/seeking.ts';
import { readText, sheetText, withValue, type Sheet } from '../../viewer/keep/sheet.ts';
import { takingsOn } from '../../viewer/keep/takings.ts';
import { freeOn, limitsSet, withFirstLimit } from '../../viewer/parts/limits/limitsSet.ts';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const sample = (name: string): Sheet => {
  const read = readText(readFileSync(`samples/${name}/sheet.json`, 'utf8'));
  if (!read.ok) throw new Error(read.text);
  return read.sheet;
};
const limited = withValue(withValue(sample('market-gardener'), 'making', undefined), 'right.order.targets', { seatHeightAtMost: 30, free: ['apex'] });

describe('answers and the sheet they are for', () => {
  const one = { values: [{ name: 'apex', path: 'order.apex', unit: '%', digits: 1, ordered: 65, value: 66, changed: true }] } as const;
  const other = { values: [{ name: 'toe radius', path: 'order.toe.radius', unit: 'mm', digits: 1, ordered: 200, value: 230.5, changed: true }] } as const;

  test('one taken in place of another goes on the sheet they were sought for, beside what the other shoe took', () => {
    const asked = sample('baker'), takings = takingsOn(asked), first = takings.take(asked, 'left', 'answer', one), second = takings.take(first, 'left', '3', other), both = takings.take(second, 'right', '0', one);
    expect([takings.on(asked), takings.on(first), takings.on(second), takings.on(both)]).toEqual([{}, { left: 'answer' }, { left: '3' }, { left: '3', right: '0' }]);
    expect(second).toEqual(withTaken(asked, 'left', other));
    expect(both).toEqual(withTaken(withTaken(asked, 'left', other), 'right', one));
    expect(takings.on(withValue(both, 'wearer.mass', 70))).toBeUndefined();
    // A sheet that says the same is the same, whoever wrote it.
    expect(takings.on(JSON.parse(JSON.stringify(first)) as Sheet)).toEqual({ left: 'answer' });
  });

  test('a first limit loses nothing, reads, and is told in the unit shown', () => {
    for (const [name, side, seat] of [['ferry-pilot', 'right', 45.2], ['bookbinder', 'left', 27.9]] as const) {
      const sheet = withFirstLimit(sample(name), side, seat), reading = readSheet(sheetText(sheet)), order = reading.ok ? reading.fitting.shoes[side]?.order : undefined;
      expect(order?.kind === 'rocker' && order.targets!.seatHeightAtMost! >= seat && order.targets!.seatHeightAtMost! < seat + 2).toBe(true);
      expect(freeOn(sheet, side)).toEqual(['apex', 'toe radius']);
    }
    const words = (lengths: 'mm' | 'in'): readonly string[] => limitsSet(withValue(limited, 'right.order.targets.weightAtMost', 120), 'right', lengths).map((limit) => limit.words);
    // An inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    expect([words('mm'), words('in')]).toEqual([['Seat height at most 30 mm', 'Weight of the sole at most 120 g'], ['Seat height at most 1.181 in', 'Weight of the sole at most 120 g']]);
    expect(limitsSet(withValue(limited, 'right.order.targets.seatHeightAtMost', 'high'), 'right', 'mm')[0]).toEqual({ path: 'right.order.targets.seatHeightAtMost', words: 'Seat height at most not filled in' });
  });

  test('what may be changed is ticked, one at least; no two fields of limits are called alike', () => {
    const fields = fieldsOfSheet().filter(({ path }) => path.startsWith('left.order.targets.'));
    expect(fields.filter(({ kind }) => kind === 'ticks').map(({ path, some }) => [path, some])).toEqual([['left.order.targets.free', true]]);
    expect(new Set(fields.map(({ label }) => label)).size).toBe(fields.length);
    expect(fieldsOfSheet().find(({ path }) => path === 'wearer.risks')?.some).toBeUndefined();
  });

  test('it is told how far it has come, never back, and a sheet with faults is told them', () => {
    const told = [...seekOn(sheetText(limited))], shares = told.flatMap((step) => (step.kind === 'going' ? [step.share] : []));
    expect(told.filter(({ kind }) => kind !== 'going').map(({ kind }) => kind)).toEqual(['answer', 'curve', 'done'] satisfies SeekTold['kind'][]);
    expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share < 1)).toBe(true);
    expect(new Set(shares.map((share) => Math.floor(share * 10))).size).toBeGreaterThan(6);
    expect([...seekOn('{}')].map(({ kind }) => kind)).toEqual(['failed']);
  });
});

describe.skipIf(noBrowser)('within limits in a browser', () => {
  let bench: Bench, page: Page, complaints: readonly string[], elsewhere: readonly string[];
  beforeAll(async () => {
    bench = await openBench('no solids');
    ({ page, complaints, elsewhere } = await openPage(bench));
    await openSample(page, 'market gardener');
    await part().scrollIntoViewIfNeeded();
    await ask().waitFor();
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  const part = () => page.locator('#limits'), button = (name: string | RegExp) => part().getByRole('button', { name }), ask = () => button('Find the best rocker');
  const status = () => part().getByRole('status'), dots = () => part().getByRole('radio'), chosen = (): Promise<string | null> => part().locator('.chosen').textContent();
  const field = (name: string) => page.locator(`input[name="right.${name}"]`), seat = () => field('order.targets.seatHeightAtMost');
  const undoTitle = (): Promise<string | null> => page.getByRole('button', { name: 'Undo' }).getAttribute('title');
  const found = async (): Promise<void> => { await expect.poll(() => ask().isVisible(), { timeout: 30_000 }).toBe(true); };
  /** The focused thing and, of the sheet, what a shoe is made after. */
  const isFocused = (target: ReturnType<typeof ask>): Promise<boolean> => target.evaluate((node) => node === document.activeElement);
  const order = (): Promise<readonly string[]> => Promise.all(['order.apex', 'order.toe.radius'].map((name) => field(name).inputValue()));

  test('a limit is set, then the best rocker asked for, taken and put back, by mouse', async () => {
    expect(await ask().isDisabled()).toBe(true);
    await button('Set limits, right shoe').click();
    await expect.poll(() => isFocused(seat())).toBe(true);
    expect(await seat().inputValue()).toBe('39');
    await seat().fill('36');
    await seat().press('Tab');
    await settled(page);
    const before = await order(), step = await undoTitle();
    await button('Seat height at most 36 mm').click();
    expect(await isFocused(seat())).toBe(true);
    await ask().click();
    expect(await part().getByRole('progressbar').isVisible()).toBe(true);
    await found();
    expect(await part().locator('.loss').textContent()).toMatch(/^Lost against the order: \d\.\d° of toe-off\.$/);
    expect(await part().getByRole('table', { name: 'limits' }).locator('tr.bites').textContent()).toBe('Seat height at most36.0 mm36.0 mm (est.)just kept');
    expect([await order(), await undoTitle()]).toEqual([before, step]);
    await button('Take these values, right shoe').click();
    await settled(page);
    const becomes = await part().getByRole('table', { name: 'what to change' }).getByRole('row').filter({ hasText: '%' }).getByRole('cell').last().textContent();
    expect(`${Number((await order())[0]).toFixed(1)} %`).toBe(becomes);
    expect(await page.locator('.figures').filter({ hasText: 'right shoe' }).getByRole('row', { name: /^Seat height/ }).first().textContent()).toMatch(/36\.0 mm/);
    expect([await button('Taken, right shoe').getAttribute('aria-disabled'), await status().textContent()]).toEqual(['true', expect.stringContaining('Undo brings back')]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect([await order(), await undoTitle(), await status().textContent()]).toEqual([before, step, 'Nothing of this is on the sheet until you take it.']);
  }, 60_000);

  test('a dot is chosen by a press anywhere over it, and taken below; it stands for what its label says', async () => {
    await part().locator('.curve').scrollIntoViewIfNeeded();
    const many = await dots().count(), { x, y, width, height } = (await dots().nth(many - 3).boundingBox())!;
    expect(many).toBeGreaterThan(7);
    await page.mouse.click(x + width / 2, y + height - 20);
    expect(await dots().nth(many - 3).getAttribute('aria-checked')).toBe('true');
    const label = (await dots().nth(many - 3).getAttribute('aria-label'))!;
    expect(label).toMatch(/^Seat height at most \d\d\.\d mm: toe-off \d\d\.\d° \(est\.\)\. .*toe radius \d+\.\d mm\. (Lost|Nothing)/);
    expect(label.startsWith((await chosen())!)).toBe(true);
    await button('Take this rocker, right shoe').click();
    await settled(page);
    expect(label).toContain(`toe radius ${Number((await order())[1]).toFixed(1)} mm`);
    // Another goes in its place, not on top of it, and one step back brings the first.
    await button('a lower dot').click();
    await button('Take this rocker, right shoe').click();
    await settled(page);
    expect(label).not.toContain(`toe radius ${Number((await order())[1]).toFixed(1)} mm`);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(label).toContain(`toe radius ${Number((await order())[1]).toFixed(1)} mm`);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
  }, 60_000);

  test('by keys alone: arrows choose, Enter takes, and the focus stays', async () => {
    const before = await order();
    await button('a lower dot').focus();
    await page.keyboard.press('Shift+Tab');
    expect(await dots().evaluateAll((all) => all.filter((dot) => dot === document.activeElement).length)).toBe(1);
    const at = (): Promise<number> => dots().evaluateAll((all) => all.findIndex((dot) => dot === document.activeElement && dot.getAttribute('aria-checked') === 'true'));
    for (const [key, to] of [['Home', 0], ['ArrowLeft', 0], ['ArrowRight', 1], ['ArrowUp', 2], ['ArrowDown', 1]] as const) { await page.keyboard.press(key); expect([key, await at()]).toEqual([key, to]); }
    await page.keyboard.press('Enter');
    await settled(page);
    expect([await at(), (await order())[1] === before[1]]).toEqual([1, false]);
    expect(await dots().nth(1).getAttribute('aria-label')).toContain(`toe radius ${Number((await order())[1]).toFixed(1)} mm`);
    await page.keyboard.press('ControlOrMeta+z');
    await settled(page);
    expect([await order(), await at()]).toEqual([before, 1]);
  }, 60_000);

  test('all that is said follows the unit shown', async () => {
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('in');
    await settled(page);
    expect(await part().textContent()).not.toMatch(/\d\s?mm\b/);
    expect(await chosen()).toMatch(/^Seat height at most \d\.\d{3} in/);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('mm');
    await settled(page);
    expect(await part().textContent()).not.toMatch(/\d\s?in\b/);
  }, 60_000);

  test('nothing in it keeps anybody out', async () => {
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    const { violations } = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string }[] }>(() => (globalThis as unknown as { axe: { run: (host: string, how: object) => never } }).axe.run('#limits', { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] }));
    expect(violations.filter(({ impact }) => ['serious', 'critical'].includes(impact))).toEqual([]);
  }, 60_000);

  test('a sheet that goes on leaves the answers grey and not to be taken; cancelled by keys, what is on the sheet stays', async () => {
    await seat().fill('36.5');
    await settled(page);
    expect([await status().textContent(), await part().locator('.outdated .answer').count(), await button('Take this rocker, right shoe').getAttribute('aria-disabled')]).toEqual(['The sheet has changed since this was sought: ask again.', 1, 'true']);
    const before = await order();
    await ask().focus();
    await page.keyboard.press('Enter');
    expect(await isFocused(button('Cancel'))).toBe(true);
    await page.keyboard.press('Enter');
    expect([await isFocused(ask()), await status().textContent(), await dots().count(), await order()]).toEqual([true, 'Cancelled; what had been found stays.', 0, before]);
    await ask().click();
    await field('order.targets.tipAtMost').fill('9');
    await settled(page);
    expect([await status().textContent(), await button('Cancel').isVisible()]).toEqual([expect.stringContaining('changed meanwhile'), false]);
    await field('order.targets.tipAtMost').fill('');
  }, 60_000);

  test('limits that cannot be kept: the one to blame is told, what works is put on the sheet and sought', async () => {
    await seat().fill('20');
    await seat().press('Tab');
    await settled(page);
    await ask().click();
    await part().locator('.blame').first().waitFor({ timeout: 30_000 });
    expect(await part().locator('.blame').first().textContent()).toMatch(/^Seat height at most 20\.0 mm cannot be kept\. Works: Seat height at most (\d\d\.\d) mm\. Lost against the order: .*Try Seat height at most \1 mm$/);
    const works = /Works: Seat height at most (\d\d\.\d) mm/.exec((await part().locator('.blame').first().textContent())!)![1]!;
    await found();
    await button(/^Try /).first().click();
    await found();
    expect(Number(await seat().inputValue())).toBe(Number(works));
    await button('Take these values, right shoe').waitFor();
    await settled(page);
    expect(await part().textContent()).not.toMatch(/\b(heals?|cures?|better for|relie[fv]\w*|less pain|improves?)\b/i);
  }, 60_000);

  test('another job takes nothing of it over', async () => {
    await openSample(page, 'baker');
    await expect.poll(() => part().locator('.answer').count()).toBe(0);
    expect([await status().textContent(), await button(/^Set limits/).count(), complaints, elsewhere]).toEqual(['', 2, [], []]);
  }, 60_000);
});
