import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

describe.skipIf(noBrowser)('one page of the bench view, sheet after sheet', () => {
  let bench: Bench, page: Page, complaints: readonly string[];
  beforeAll(async () => {
    bench = await openBench();
    ({ page, complaints } = await openPage(bench));
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  test('the apex is dragged: numbers, checks and mesh follow, and one undo takes it all back', async () => {
    await openSample(page, 'market gardener');
    const pin = page.getByRole('slider', { name: 'right apex' }), before = Number(await pin.getAttribute('aria-valuenow'));
    const build = page.getByRole('row', { name: /^Build: tread plane/ }).locator('td'), built = await build.textContent(), box = (await pin.boundingBox())!;
    const solid = (): Promise<string> => page.locator('#solid canvas').screenshot().then((picture) => picture.toString('base64')), mesh = await solid();
    await page.evaluate('scrollTo(0, 0)');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(box.x + box.width / 2 + 2 * i, box.y + box.height / 2);
    await page.mouse.up();
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeGreaterThan(before + 1);
    expect(await build.textContent()).not.toBe(built);
    expect(await solid()).not.toBe(mesh);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeCloseTo(before, 6);
    expect(await build.textContent()).toBe(built);
    expect(complaints).toEqual([]);
  }, 60_000);

  test('arrow keys move a pin by a millimetre, with shift by a tenth', async () => {
    await openSample(page, 'market gardener');
    const pin = page.getByRole('slider', { name: 'right apex' }), mm = async (): Promise<number> => 2.66 * Number(await pin.getAttribute('aria-valuenow'));
    const before = await mm();
    await pin.focus();
    await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(Math.abs((await mm()) - before - 1)).toBeLessThan(0.03);
    await page.keyboard.press('Shift+ArrowLeft');
    await settled(page);
    expect(Math.abs((await mm()) - before - 0.9)).toBeLessThan(0.05);
    // Faster than a shoe is worked out: none of the presses is lost.
    await pin.evaluate((node) => { for (let i = 0; i < 6; i++) node.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true })); });
    await settled(page);
    expect(Math.abs((await mm()) - before - 6.9)).toBeLessThan(0.1);
  }, 60_000);

  test('a bad value is told beside its field, the last good drawing stays grey, and a decimal comma is taken', async () => {
    await openSample(page, 'market gardener');
    const length = page.locator('.group', { has: page.getByText('Right foot', { exact: true }) }).getByLabel('foot length');
    await length.fill('24,9');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('faults');
    expect(await page.locator('.message').textContent()).toMatch(/Right foot, foot length must be 99 to .* mm; got 24\.9\..*24\.9 cm would be 249 mm/);
    expect(await length.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.side-drawing').getAttribute('class')).toContain('stale');
    expect(await page.locator('.side-drawing text').count()).toBeGreaterThan(15);
    await length.fill('249,5');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('shown');
    expect(await page.locator('.message').textContent()).toBe('');
  }, 60_000);

  test('measures that leave no shape offer values that work, and one of them does', async () => {
    await openSample(page, 'market gardener');
    await page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('apex', { exact: true }).fill('46');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('troubles');
    await page.locator('.message').getByRole('button', { name: /^Try / }).first().click();
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('shown');
  }, 60_000);

  test('a jig is ordered with a tick: its fields and the board\'s show, a guide bush comes and goes as a whole, and undo takes it all off', async () => {
    await openSample(page, 'market gardener');
    const jig = page.locator('.orders').getByRole('checkbox', { name: 'build-up jig' }), group = (title: string) => page.locator('.measures .group .group', { has: page.getByText(title, { exact: true }) });
    expect([await group('Build-up jig').isVisible(), await page.getByRole('button', { name: 'settings: build-up jig' }).isVisible()]).toEqual([false, false]);
    await jig.check();
    await page.getByRole('button', { name: 'settings: build-up jig' }).press('Enter');
    expect(await page.evaluate('document.activeElement.name')).toMatch(/^making\.jig\./);
    await settled(page);
    expect([await group('Board').isVisible(), await group('Build-up jig').getByLabel('ribs apart').getAttribute('placeholder')]).toEqual([true, '35']);
    // What looks for trouble with it is loaded now that it is ordered.
    await page.locator('.finding.warn').filter({ hasText: 'a board of 6.0 mm that nobody measured' }).waitFor();
    await group('Build-up jig').getByLabel('guide bush, outside').fill('17');
    await settled(page);
    expect(await group('Build-up jig').getByLabel('cutter in the guide bush').getAttribute('aria-invalid')).toBe('true');
    await page.getByRole('button', { name: 'Leave the guide bush out' }).click();
    await settled(page);
    expect([await page.locator('html').getAttribute('data-shown'), await jig.isChecked()]).toEqual(['shown', true]);
    for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'Undo' }).click();
    expect([await jig.isChecked(), await group('Build-up jig').isVisible()]).toEqual([false, false]);
  }, 60_000);

  test('the rack is a table that is begun from the usual one: a wrong thickness is told at its cell, and its row is taken out', async () => {
    await page.locator('.orders').getByRole('checkbox', { name: 'stack of sheets' }).check();
    const cell = (i: number) => page.getByRole('textbox', { name: `sheet ${i}, thickness` });
    await page.getByRole('button', { name: 'Start from the usual sheets' }).click();
    await cell(2).fill('600');
    await settled(page);
    expect([await cell(2).getAttribute('aria-invalid'), await page.locator('.list td.faulty').allTextContents(), await page.locator('.message li').getAttribute('data-path')]).toEqual(['true', ['must be 0.5 to 100 mm; got 600.'], 'making.rack[1].thickness']);
    await cell(2).press('ArrowDown');
    expect(await page.evaluate('document.activeElement.name')).toBe('making.rack[2].thickness');
    await page.keyboard.type('9,5');
    await page.getByRole('button', { name: 'remove sheet 2' }).press('Enter');
    await settled(page);
    expect([await page.locator('html').getAttribute('data-shown'), await cell(2).inputValue(), await page.evaluate('document.activeElement.ariaLabel')]).toEqual(['shown', '9.5', 'remove sheet 2']);
    await page.getByRole('button', { name: 'copy sheet 4' }).press('Enter');
    expect([await page.evaluate('document.activeElement.name'), await page.locator('.list tbody:not(.usual) tr').count()]).toEqual(['making.rack[4].name', 5]);
    expect(complaints).toEqual([]);
  }, 60_000);

  test('a version laid under shows as a ghost, and what has changed since is listed', async () => {
    await openSample(page, 'market gardener');
    await page.getByRole('button', { name: 'Lay this under' }).click();
    await page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat').fill('18');
    await settled(page);
    const table = page.getByRole('table', { name: 'Changed since the version laid under' });
    expect(await table.getByRole('row', { name: /standing flat/ }).first().textContent()).toMatch(/18/);
    expect(await table.getByRole('row', { name: /right: Seat height/ }).count()).toBe(1);
    expect(await page.locator('.ghost path').count()).toBeGreaterThan(2);
  }, 60_000);

  test('a measure that is cleared and typed anew is still taken as it was', async () => {
    await openSample(page, 'market gardener');
    const row = page.locator('.group', { has: page.getByText('Right foot', { exact: true }) }).locator('.row', { has: page.getByLabel('foot length') });
    const how = row.getByLabel('how it was taken'), length = row.getByLabel('foot length');
    await how.fill('with the slide');
    await how.press('Tab');
    await length.fill('');
    await length.fill('249');
    await length.press('Tab');
    expect(await how.inputValue()).toBe('with the slide');
  }, 60_000);

  test('the solid is cut, shaded and turned with the keyboard, and the wheel scrolls past it', async () => {
    await openSample(page, 'ferry pilot');
    const canvas = page.locator('#solid canvas'), picture = (): Promise<Buffer> => canvas.screenshot();
    const scrolled = (): Promise<number> => page.evaluate<number>('window.scrollY');
    const whole = await picture();
    await canvas.hover();
    const before = await scrolled();
    await page.mouse.wheel(0, -120);
    await expect.poll(scrolled, { message: 'the wheel scrolls the page as long as the solid was not touched' }).toBeLessThan(before);
    expect(Buffer.compare(await picture(), whole)).toBe(0);
    await page.selectOption('[aria-label="cut"]', 'x');
    await page.waitForTimeout(300);
    const cut = await picture();
    await canvas.focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowLeft');
    await page.waitForTimeout(300);
    const turned = await picture(), there = await scrolled();
    await canvas.hover();
    await page.mouse.wheel(0, -120);
    await expect.poll(async () => Buffer.compare(await picture(), turned), { message: 'once it was touched the wheel brings it nearer' }).not.toBe(0);
    expect(await scrolled()).toBe(there);
    await page.getByRole('button', { name: 'thickness', exact: true }).click();
    await page.waitForTimeout(300);
    const shaded = await picture();
    expect([whole, cut, turned, shaded].every((one, i, all) => i === 0 || Buffer.compare(one, all[i - 1]!) !== 0)).toBe(true);
    expect(complaints).toEqual([]);
  }, 60_000);
});
