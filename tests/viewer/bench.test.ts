import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import { filesFor } from '../../src/exports/fileSet.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { loadBooleans } from '../../src/making/booleans.ts';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const SAMPLES = readdirSync('samples', { withFileTypes: true }).filter((entry) => entry.isDirectory()).map(({ name }) => name);
const sheetOf = (name: string): string => readFileSync(`samples/${name}/sheet.json`, 'utf8');

describe.skipIf(noBrowser)('the bench view in a browser', () => {
  let bench: Bench;
  beforeAll(async () => { bench = await openBench(); }, 60_000);
  afterAll(async () => { await bench?.close(); });

  test('every sample: drawing, solid, checks and figures show, nothing complains and nothing leaves the page', async () => {
    const { page, complaints, elsewhere } = await openPage(bench);
    for (const name of SAMPLES) {
      await openSample(page, name.replace(/-/g, ' '));
      expect([name, await page.locator('html').getAttribute('data-shown')]).toEqual([name, 'shown']);
      const reference = (JSON.parse(sheetOf(name)) as { job: { reference: string } }).job.reference;
      expect(await page.getByRole('combobox', { name: 'job', exact: true }).locator('option:checked').textContent()).toBe(reference);
      expect(await page.locator('.side-drawing text').count()).toBeGreaterThan(15);
      expect(await page.locator('.finding').count()).toBeGreaterThan(3);
      expect(await page.locator('.figures td').count()).toBeGreaterThan(30);
      await page.waitForFunction('Number(document.querySelector("#solid canvas")?.dataset.drawn ?? 0) > 0', null, { timeout: 30_000 });
      expect((await page.locator('#solid canvas').screenshot()).length).toBeGreaterThan(4_000);
      expect([name, complaints, elsewhere]).toEqual([name, [], []]);
    }
    await page.context().close();
  }, 60_000);

  test('the apex is dragged: numbers, checks and mesh follow, and one undo takes it all back', async () => {
    const { page, complaints } = await openPage(bench);
    await openSample(page, 'market gardener');
    const pin = page.getByRole('slider', { name: 'right apex' }), before = Number(await pin.getAttribute('aria-valuenow'));
    const build = page.getByRole('row', { name: /^Build: tread plane/ }).locator('td'), built = await build.textContent(), box = (await pin.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(box.x + box.width / 2 + 2 * i, box.y + box.height / 2);
    await page.mouse.up();
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeGreaterThan(before + 1);
    expect(await build.textContent()).not.toBe(built);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeCloseTo(before, 6);
    expect(await build.textContent()).toBe(built);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 60_000);

  test('arrow keys move a pin by a millimetre, with shift by a tenth', async () => {
    const { page } = await openPage(bench);
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
    await page.context().close();
  }, 60_000);

  test('a bad value is told beside its field, the last good drawing stays grey, and a decimal comma is taken', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    const length = page.locator('.group', { has: page.getByText('Right foot', { exact: true }) }).getByLabel('foot length');
    await length.fill('24,9');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('faults');
    expect(await page.locator('.message').textContent()).toContain('right.foot.length');
    expect(await length.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.side-drawing').getAttribute('class')).toContain('stale');
    expect(await page.locator('.side-drawing text').count()).toBeGreaterThan(15);
    await length.fill('249,5');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('shown');
    expect(await page.locator('.message').textContent()).toBe('');
    await page.context().close();
  }, 60_000);

  test('measures that leave no shape offer values that work, and one of them does', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    await page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('apex', { exact: true }).fill('46');
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('troubles');
    await page.locator('.message').getByRole('button', { name: /^Try / }).first().click();
    await settled(page);
    expect(await page.locator('html').getAttribute('data-shown')).toBe('shown');
    await page.context().close();
  }, 60_000);

  test('work outlasts a reload, undo with it, and the page opens without a network', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    await page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat').fill('18');
    await settled(page);
    await page.waitForTimeout(600);
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await page.waitForFunction('navigator.serviceWorker.controller !== null');
    await page.context().setOffline(true);
    await page.reload();
    await settled(page);
    const flat = page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat');
    expect(await flat.inputValue()).toBe('18');
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await flat.inputValue()).not.toBe('18');
    await page.context().close();
  }, 60_000);

  test.each(['ferry-pilot', 'bookbinder'])('the files of %s are the command\'s, byte for byte, though another engine reckons them', async (name) => {
    const { page, complaints } = await openPage(bench);
    await openSample(page, name.replace(/-/g, ' '));
    const [download] = await Promise.all([page.waitForEvent('download', { timeout: 60_000 }), page.getByRole('button', { name: 'Save as one zip' }).click()]);
    const got = unzipSync(readFileSync(await download.path()));
    const reading = readSheet(sheetOf(name));
    if (!reading.ok) throw new Error('the sample is read');
    const made = design(reading.fitting);
    if (!made.ok) throw new Error('the sample is made');
    const files = filesFor(made.design, await loadBooleans());
    expect(Object.keys(got).sort()).toEqual(files.map((file) => file.name).sort());
    expect(files.filter((file) => Buffer.compare(got[file.name]!, file.bytes) !== 0).map((file) => file.name)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 90_000);

  test('a version laid under shows as a ghost, and what has changed since is listed', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    await page.getByRole('button', { name: 'Lay this under' }).click();
    await page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat').fill('18');
    await settled(page);
    const table = page.getByRole('table', { name: 'Changed since the version laid under' });
    expect(await table.getByRole('row', { name: /standing flat/ }).first().textContent()).toMatch(/18/);
    expect(await table.getByRole('row', { name: /right: Seat height/ }).count()).toBe(1);
    expect(await page.locator('.ghost path').count()).toBeGreaterThan(2);
    await page.context().close();
  }, 60_000);

  test('numbers are shown and typed in inches, and the sheet keeps its millimetres', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    const length = page.locator('.group', { has: page.getByText('Right foot', { exact: true }) }).getByLabel('foot length');
    await page.selectOption('[aria-label="lengths shown in"]', 'in');
    expect(Number(await length.inputValue())).toBeLessThan(12);
    expect(await page.getByRole('row', { name: /^Seat height/ }).first().textContent()).toMatch(/\d\.\d{3} in/);
    await length.fill('9,8');
    await length.press('Tab');
    await settled(page);
    await page.selectOption('[aria-label="lengths shown in"]', 'mm');
    expect(Number(await length.inputValue())).toBeCloseTo(248.92, 6);
    await page.context().close();
  }, 60_000);

  test('a measure that is cleared and typed anew is still taken as it was', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    const row = page.locator('.group', { has: page.getByText('Right foot', { exact: true }) }).locator('.row', { has: page.getByLabel('foot length') });
    const how = row.getByLabel('how it was taken'), length = row.getByLabel('foot length');
    await how.fill('with the slide');
    await how.press('Tab');
    await length.fill('');
    await length.fill('249');
    await length.press('Tab');
    expect(await how.inputValue()).toBe('with the slide');
    await page.context().close();
  }, 60_000);

  test('the solid is cut, shaded and turned with the keyboard, and the wheel scrolls past it', async () => {
    const { page, complaints } = await openPage(bench);
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
    await page.context().close();
  }, 60_000);

  test('no serious fault of access, and nothing wider than the screen, from a desk to a phone', async () => {
    const { page } = await openPage(bench);
    await openSample(page, 'market gardener');
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    for (const [width, height] of [[1440, 900], [1024, 768], [768, 1024], [390, 844]] as const) {
      await page.setViewportSize({ width, height });
      const found = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string; readonly nodes: readonly { readonly html: string }[] }[] }>('axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"] })');
      expect([width, found.violations.filter(({ impact }) => ['serious', 'critical'].includes(impact)).map(({ id, nodes }) => [id, nodes[0]!.html])]).toEqual([width, []]);
      expect([width, await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth')]).toEqual([width, true]);
    }
    await page.context().close();
  }, 60_000);
});
