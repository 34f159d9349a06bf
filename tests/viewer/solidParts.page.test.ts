import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const solid = (page: Page) => page.locator('#solid');
const canvas = (page: Page) => page.locator('#solid canvas');
const drawn = async (page: Page): Promise<number> => Number(await canvas(page).getAttribute('data-drawn'));
/** What the canvas shows once it has been drawn anew. */
async function pictureAfter(page: Page, act: () => Promise<unknown>): Promise<string> {
  const before = await drawn(page);
  await act();
  await page.waitForFunction(`Number(document.querySelector('#solid canvas').dataset.drawn) > ${before}`);
  await page.waitForTimeout(150);
  return picture(page);
}
const picture = async (page: Page): Promise<string> => (await canvas(page).screenshot()).toString('base64');

/** A small picture is drawn sooner by a browser without a card. */
const SMALL = { width: 560, height: 600 };

describe.skipIf(noBrowser)('the solid in a browser', () => {
  let bench: Bench, page: Page, complaints: readonly string[], elsewhere: readonly string[];
  beforeAll(async () => {
    bench = await openBench();
    ({ page, complaints, elsewhere } = await openPage(bench, SMALL, { hasTouch: true }));
  }, 120_000);
  afterAll(async () => { await bench?.close(); });

  test('a foot stands in it, moulds and lids lie round it where the sheet orders them, and each follows the sheet', async () => {
    await openSample(page, 'market gardener');
    const part = (name: string) => solid(page).getByRole('checkbox', { name, exact: true });
    expect([await part('mould').count(), await solid(page).getByText('Beside the sole').isVisible()]).toEqual([0, false]);
    await openSample(page, 'ferry pilot');
    const bare = await picture(page), foot = await pictureAfter(page, async () => { await part('foot').check(); await settled(page); });
    expect(foot).not.toBe(bare);
    await page.evaluate(`{ const waits = document.querySelector('#solid .waits'); window.said = []; new MutationObserver(() => window.said.push(waits.textContent)).observe(waits, { childList: true }); }`);
    const mould = await pictureAfter(page, async () => { await part('mould').check(); await settled(page); });
    expect(mould).not.toBe(foot);
    expect([await page.evaluate('window.said[0]'), await page.evaluate('window.said.at(-1)'), await solid(page).locator('.waits').textContent()]).toEqual(['Being worked out: mould.', '', '']);
    expect(await pictureAfter(page, async () => { await part('lid').check(); await settled(page); })).not.toBe(mould);
    expect(await canvas(page).getAttribute('aria-label')).toContain('foam and outsole and foot and mould and lid');
    const pin = page.getByRole('slider', { name: 'right seat height' });
    const showOnly = async (...shown: readonly string[]): Promise<void> => {
      for (const name of ['foam', 'outsole', 'foot', 'mould', 'lid']) await part(name).setChecked(shown.includes(name));
      await settled(page);
    };
    for (const alone of ['foot', 'mould', 'lid']) {
      await showOnly(alone);
      const before = await picture(page);
      await pin.focus();
      expect([alone, await pictureAfter(page, async () => { for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowUp'); await settled(page); }) !== before]).toEqual([alone, true]);
    }
    await showOnly('foam', 'outsole');
    expect([complaints, elsewhere]).toEqual([[], []]);
  }, 60_000);

  test('with keys alone the way between two places is measured, in mm and in inches', async () => {
    await openSample(page, 'market gardener');
    const told = page.locator('.measured'), view = solid(page).getByRole('button', { name: 'above' });
    await view.press('Enter');
    await solid(page).getByRole('button', { name: 'inner side' }).press('Enter');
    await solid(page).getByRole('button', { name: 'measure' }).press('Enter');
    expect(await told.textContent()).toContain('press Enter');
    await canvas(page).focus();
    await page.keyboard.press('Enter');
    expect(await told.textContent()).toBe('Now the other place.');
    for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowLeft');
    await page.keyboard.press('Enter');
    const [, way, along] = /^([\d.]+) mm from place to place: ([\d.]+) along/.exec((await told.textContent())!) ?? [];
    expect(Number(along)).toBeGreaterThan(20);
    expect(Number(way)).toBeGreaterThanOrEqual(Number(along));
    await page.selectOption('[aria-label="lengths shown in"]', 'in');
    const [, inches] = /^([\d.]+) in from place/.exec((await told.textContent())!) ?? [];
    expect(Number(inches) * 25.4).toBeCloseTo(Number(way), 0);
  }, 60_000);

  test('one finger turns it, two come nearer, and a finger drags a pin; the page stays where it is', async () => {
    await page.setViewportSize({ width: 768, height: 1024 });
    await openSample(page, 'market gardener');
    const session = await page.context().newCDPSession(page);
    type Places = readonly (readonly [number, number])[];
    const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', places: Places): Promise<void> => {
      await session.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(([x, y], id) => ({ x, y, id })) });
    };
    const stroke = async (steps: readonly Places[]): Promise<void> => {
      await touch('touchStart', steps[0]!);
      for (const step of steps) await touch('touchMove', step);
      await touch('touchEnd', []);
    };
    await canvas(page).scrollIntoViewIfNeeded();
    const box = (await canvas(page).boundingBox())!, [x, y] = [box.x + box.width / 2, box.y + box.height / 2], top = await page.evaluate('window.scrollY');
    const still = await picture(page), turned = await pictureAfter(page, () => stroke([0, 20, 40, 60].map((by) => [[x + by, y]])));
    expect(turned).not.toBe(still);
    expect(await pictureAfter(page, () => stroke([0, 20, 40, 60].map((by) => [[x - 30 - by, y], [x + 30 + by, y]])))).not.toBe(turned);
    expect(await page.evaluate('window.scrollY')).toBe(top);
    const pin = page.getByRole('slider', { name: 'right apex' });
    await pin.scrollIntoViewIfNeeded();
    const head = (await pin.locator('.head').boundingBox())!, at = [head.x + head.width / 2, head.y + head.height / 2] as const, before = Number(await pin.getAttribute('aria-valuenow')), low = await page.evaluate('window.scrollY');
    await stroke([0, 6, 12, 18, 24].map((by) => [[at[0] + by, at[1]]]));
    await settled(page);
    expect(Number(await pin.getAttribute('aria-valuenow'))).toBeGreaterThan(before + 1);
    expect(await page.evaluate('window.scrollY')).toBe(low);
    expect(complaints).toEqual([]);
  }, 60_000);
});
