import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

describe.skipIf(noBrowser)('the plan and the pins in a browser', () => {
  let bench: Bench, page: Page, complaints: readonly string[], elsewhere: readonly string[];
  beforeAll(async () => {
    bench = await openBench('no solids');
    ({ page, complaints, elsewhere } = await openPage(bench));
    await openSample(page, 'market gardener');
  }, 60_000);
  afterAll(async () => { await bench?.close(); });
  const now = async (pin: Locator): Promise<number> => Number(await pin.getAttribute('aria-valuenow'));
  const middle = async (pin: Locator): Promise<{ readonly x: number; readonly y: number }> => { const { x, y, width, height } = (await pin.locator('.head').boundingBox())!; return { x: x + width / 2, y: y + height / 2 }; };

  test('a number lights its line on the plan, and the line its number, by pointer and by keyboard', async () => {
    const row = page.locator('.figures').filter({ hasText: 'right shoe' }).locator('tr').filter({ hasText: /crest/i }).first(), line = page.locator('.still [data-of="right.crestAngle"]').first();
    await row.focus();
    expect(await line.getAttribute('class')).toContain('lit');
    await row.blur();
    expect(await line.getAttribute('class')).not.toContain('lit');
    await line.focus();
    expect(await row.getAttribute('class')).toContain('lit');
    await line.blur();
    await line.hover({ force: true });
    expect(await row.getAttribute('class')).toContain('lit');
    await page.mouse.move(2, 2);
    expect(await row.getAttribute('class')).not.toContain('lit');
  });

  test('the footprint is laid on when asked for, with its legend, and taken off again', async () => {
    const tick = page.getByLabel('where a foot presses');
    expect(await page.locator('.pressed circle').count()).toBe(0);
    await tick.check();
    await page.locator('.pressed circle').first().waitFor({ state: 'attached' });
    expect(await page.locator('.pressed circle').count()).toBeGreaterThan(700);
    expect(await page.locator('.print-legend').textContent()).toMatch(/104 adults.*not the pressure of this client.*MIT License/s);
    await tick.uncheck();
    expect(await page.locator('.pressed circle').count()).toBe(0);
    expect(await page.locator('.print-legend').isVisible()).toBe(false);
  });

  test('a pin stops at its limit and says so; Escape puts the value back', async () => {
    const pin = page.getByRole('slider', { name: 'right apex' }), before = await now(pin), most = Number(await pin.getAttribute('aria-valuemax'));
    await page.evaluate(() => window.scrollTo(0, 0));
    const { x, y } = await middle(pin), steps = async (): Promise<readonly (string | null)[]> => [await page.getByRole('button', { name: 'Undo' }).getAttribute('title'), await page.getByRole('button', { name: 'Redo' }).getAttribute('title')], stepsBefore = await steps();
    await page.mouse.move(x, y);
    await page.mouse.down();
    expect(await page.locator('.holding').textContent()).toMatch(/right apex .* %from .* % to .* %/);
    await page.mouse.move(x + 900, y, { steps: 2 });
    expect(await page.locator('.holding').textContent()).toContain(`stops here: the most is ${most} %`);
    await settled(page);
    expect(await pin.getAttribute('aria-valuetext')).toBe(`${most} %, stops here: the most is ${most} %`);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await settled(page);
    expect(await now(pin)).toBeCloseTo(before, 6);
    expect(await steps()).toEqual(stepsBefore);
    expect(await pin.getAttribute('aria-valuetext')).toBe(`${Number(before.toFixed(1))} %`);
    await pin.blur();
    expect(await page.locator('.holding').textContent()).toBe('');
  });

  test('Enter goes to the field, and field and pin follow each other', async () => {
    const pin = page.getByRole('slider', { name: 'right apex' });
    await pin.focus();
    await page.keyboard.press('Enter');
    const field = page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('apex', { exact: true });
    expect(await field.evaluate((input) => input === document.activeElement)).toBe(true);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('64,5');
    await settled(page);
    expect(await now(pin)).toBeCloseTo(64.5, 6);
    await pin.focus();
    await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(Number(await field.inputValue())).toBeCloseTo(await now(pin), 1);
    expect(await now(pin)).toBeGreaterThan(64.6);
  });

  test('pins are targets of 40 px and more, and of two that lie over each other a second tap takes the other', async () => {
    await page.evaluate(() => window.scrollTo(0, 0));
    for (const reach of await page.locator('.pin .reach').all()) expect((await reach.boundingBox())!.width).toBeGreaterThanOrEqual(40);
    const touch = (css: string): Promise<string> => page.locator(css).first().evaluate((one) => getComputedStyle(one).touchAction);
    expect([await touch('.pin'), await touch('.side-drawing')]).toEqual(['none', 'manipulation']);
    const pins = await page.locator('.pin').all(), spots = await Promise.all(pins.map(middle));
    const pair = spots.flatMap((a, i) => spots.slice(i + 1).map((b, j) => ({ i, j: i + 1 + j, far: Math.hypot(a.x - b.x, a.y - b.y) }))).sort((a, b) => a.far - b.far)[0]!;
    // Close enough that both lie under one finger: else there is nothing to tell apart on this sheet.
    expect(pair.far).toBeLessThan(42);
    const [a, b] = [spots[pair.i]!, spots[pair.j]!], at = [(a.x + b.x) / 2, (a.y + b.y) / 2] as const;
    const held = (): Promise<string | null> => page.evaluate(() => document.activeElement!.getAttribute('aria-label'));
    await page.mouse.click(...at);
    const first = await held();
    await page.mouse.click(...at);
    expect(await held()).not.toBe(first);
    await page.mouse.click(...at);
    expect(await held()).toBe(first);
    expect([complaints, elsewhere]).toEqual([[], []]);
  });
});
