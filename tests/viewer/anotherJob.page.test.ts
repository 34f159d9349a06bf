import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const jobs = (page: Page) => page.getByRole('combobox', { name: 'job', exact: true });
const part = (page: Page, name: string) => page.locator('#solid').getByRole('checkbox', { name, exact: true });
const flat = (page: Page) => page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat');
const downloaded = async (page: Page, act: () => Promise<unknown>): Promise<{ readonly name: string; readonly files: string[] }> => {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: 60_000 }), act()]);
  return { name: download.suggestedFilename(), files: Object.keys(unzipSync(readFileSync(await download.path()))) };
};

describe.skipIf(noBrowser)('nothing of one job passes for another\'s', () => {
  let bench: Bench, page: Page, complaints: readonly string[];
  beforeAll(async () => {
    bench = await openBench();
    ({ page, complaints } = await openPage(bench));
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  test('a job without a shape shows none, and nothing can be done with the one before', async () => {
    await openSample(page, 'ferry pilot');
    expect([await page.locator('.finding').count() > 3, await page.locator('.pin').count() > 3, await page.locator('.figures td').count() > 30]).toEqual([true, true, true]);
    await page.selectOption('[aria-label="begin a new sheet"]', 'blank');
    await page.waitForFunction('document.documentElement.dataset.shown === "faults"');
    await settled(page);
    for (const gone of ['.finding', '.pin', '.figures td', '.side-drawing text', '.still text']) expect([gone, await page.locator(gone).count()]).toEqual([gone, 0]);
    await page.getByRole('button', { name: 'Show the client' }).click();
    await page.getByRole('button', { name: 'Lay this under' }).click();
    expect([await page.getByRole('dialog').count(), await page.locator('.ghost path').count()]).toEqual([0, 0]);
    expect(await page.getByRole('button', { name: 'Save as one zip' }).isDisabled()).toBe(true);
  }, 60_000);

  test('files keep the number of the job they were made for, and only those asked for are told', async () => {
    await openSample(page, 'market gardener');
    const other = await jobs(page).locator('option').evaluateAll((options) => (options as HTMLOptionElement[]).find(({ textContent }) => textContent === 'K-207')!.value);
    for (const kind of ['outlines, DXF', 'drawing, numbers and job sheet']) await page.getByRole('checkbox', { name: kind }).uncheck();
    const { name, files } = await downloaded(page, async () => { await page.getByRole('button', { name: 'Save as one zip' }).click(); await jobs(page).selectOption(other); });
    expect([name, files.length, files.every((file) => /^K-204_(left|right)_\w+\.stl$/.test(file))]).toEqual(['K-204.zip', 6, true]);
    await settled(page);
    expect(await page.locator('.made li').count()).toBe(0);
    await downloaded(page, () => page.getByRole('button', { name: 'Save as one zip' }).click());
    // This one orders moulds in two halves: they are among the solids, by shoe and thing.
    expect((await page.locator('.made li').allTextContents()).filter((line) => /_mould-[a-z-]+\.stl, \d+ kB$/.test(line))).toHaveLength(6);
    expect(await page.locator('.made summary').allTextContents()).toEqual(expect.arrayContaining([expect.stringMatching(/^Left shoe, sole: 3 files, \d+ kB$/), expect.stringMatching(/^Left shoe, mould: 3 files/), expect.stringMatching(/^Right shoe, sole: 3 files/), expect.stringMatching(/^Right shoe, mould: 3 files/)]));
    expect(await page.locator('.files [role=status]').textContent()).toMatch(/^\d\d files made, [\d.]+ (kB|MB)\.$/);
  }, 90_000);

  test('moulds that are ticked come back with a sheet that orders them', async () => {
    await openSample(page, 'ferry pilot');
    for (const name of ['foam', 'outsole']) await part(page, name).uncheck();
    await part(page, 'mould').check();
    await settled(page);
    const seen = (): Promise<string> => page.locator('#solid canvas').screenshot().then((picture) => picture.toString('base64')), mould = await seen();
    await openSample(page, 'market gardener');
    const nothing = await seen();
    expect([await part(page, 'mould').count(), nothing === mould]).toEqual([0, false]);
    await openSample(page, 'ferry pilot');
    await expect.poll(async () => await seen() === nothing, { message: 'the mould is there again' }).toBe(false);
    for (const name of ['foam', 'outsole']) await part(page, name).check();
    await part(page, 'mould').uncheck();
  }, 60_000);

  test('Escape takes back what the hand moved, and nothing that was done before', async () => {
    await openSample(page, 'market gardener');
    await flat(page).fill('18');
    await flat(page).press('Tab');
    await settled(page);
    const head = (await page.getByRole('slider', { name: 'right apex' }).locator('.head').boundingBox())!, [x, y] = [head.x + head.width / 2, head.y + head.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    // Across its rail: the pin stays where it is.
    await page.mouse.move(x, y - 40, { steps: 4 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await settled(page);
    expect([await flat(page).inputValue(), await page.getByRole('button', { name: 'Redo' }).isDisabled()]).toEqual(['18', true]);
  }, 60_000);

  test('the strike point can be drawn to its least and back again', async () => {
    await openSample(page, 'market gardener');
    const pin = page.getByRole('slider', { name: 'right strike point' }), least = Number(await pin.getAttribute('aria-valuemin'));
    await page.locator('[name="right.foot.strikeAngle"]').fill(String(least));
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBe(least);
    await pin.focus();
    await page.keyboard.press('ArrowLeft');
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeGreaterThan(least);
  }, 60_000);

  test('what has not been measured is left out with a press, and asked for no more', async () => {
    await page.selectOption('[aria-label="begin a new sheet"]', 'blank');
    await page.waitForFunction('document.documentElement.dataset.shown === "faults"');
    await settled(page);
    const lines = page.locator('.message li'), plates = lines.filter({ hasText: 'Left foot, height of the plates: nothing is there yet.' });
    const before = await lines.count();
    await plates.getByRole('button', { name: 'Leave Left foot, heel plates out' }).click();
    await expect.poll(() => lines.count()).toBe(before - 3);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => lines.count()).toBe(before);
  }, 60_000);

  test('a stop is taken on a name, told as taken, and given back', async () => {
    await openSample(page, 'ferry pilot');
    await page.locator('.group', { has: page.getByText('The client', { exact: true }) }).locator('summary').click();
    const count = page.locator('.count'), risk = page.getByRole('checkbox', { name: 'open wound' });
    await risk.check();
    await expect.poll(() => count.textContent()).toMatch(/^1 stop, /);
    await page.getByText('Go on all the same').click();
    await page.locator('form.take').getByLabel('your name').fill('B. Bench');
    await page.locator('form.take').getByLabel('why').fill('released on paper');
    await page.getByRole('button', { name: 'Take this stop on my name' }).click();
    await expect.poll(() => count.textContent()).toMatch(/^no stops left, 1 taken on a name/);
    await settled(page);
    await page.getByRole('button', { name: 'No longer' }).click();
    await expect.poll(() => count.textContent()).toMatch(/^1 stop, /);
    await risk.uncheck();
    await expect.poll(() => count.textContent()).toMatch(/^no stops, /);
  }, 60_000);

  test('the drawing is printed on the paper that goes on A4, and the page is as before', async () => {
    await openSample(page, 'market gardener');
    await page.evaluate(() => { window.print = () => { document.body.dataset.printed = document.querySelector('.side-drawing')!.getAttribute('viewBox')!; }; });
    await page.getByRole('button', { name: 'Print the drawing' }).click();
    await page.waitForFunction('document.body.dataset.printed !== undefined');
    expect(await page.evaluate('document.body.dataset.printed')).toBe('0 0 260 185');
    await expect.poll(() => page.locator('.side-drawing').getAttribute('viewBox')).toBe('0 0 320 172');
  }, 60_000);

  test('on paper there are no pins, and a millimetre is a millimetre', async () => {
    await page.setViewportSize({ width: 980, height: 800 });
    await settled(page);
    await page.emulateMedia({ media: 'print' });
    const [width, box] = await page.locator('.side-drawing').evaluate((svg) => [svg.getBoundingClientRect().width, svg.getAttribute('viewBox')] as const);
    expect([Math.round(width / (96 / 25.4)), box]).toEqual([260, '0 0 260 185']);
    expect(await page.locator('.pin').first().isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    expect(complaints).toEqual([]);
  }, 60_000);
});
