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
