import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';
import type { Page } from 'playwright-core';

const flat = (page: Page) => page.locator('.group', { has: page.getByText('Right order', { exact: true }) }).getByLabel('standing flat');
const jobsOn = (page: Page): Promise<string[]> => page.getByRole('combobox', { name: 'job', exact: true }).locator('option').allTextContents();

describe.skipIf(noBrowser)('one job in two tabs', () => {
  let bench: Bench;
  beforeAll(async () => { bench = await openBench('no solids'); }, 60_000);
  afterAll(async () => { await bench?.close(); });

  test('the tab that is behind asks whose is to stay, and overwrites nothing', async () => {
    const { page: one } = await openPage(bench);
    await openSample(one, 'market gardener');
    await one.waitForTimeout(500);
    const two = await one.context().newPage();
    await two.goto(bench.address);
    await settled(two);
    const before = (await jobsOn(two)).length;
    await flat(one).fill('18');
    const asked = two.getByRole('dialog', { name: 'This job was changed in another tab' });
    await asked.waitFor();
    await two.keyboard.press('Escape');
    await two.keyboard.press('Escape');
    expect(await asked.isVisible()).toBe(true);
    await asked.getByRole('button', { name: 'Take the other tab\'s' }).click();
    await settled(two);
    expect([await flat(two).inputValue(), (await jobsOn(two)).length]).toEqual(['18', before]);

    await flat(two).fill('19');
    await one.getByRole('dialog').waitFor();
    await one.getByRole('button', { name: 'Keep mine as a copy' }).click();
    await settled(one);
    expect([await flat(one).inputValue(), (await jobsOn(one)).length]).toEqual(['18', before + 1]);
    await one.waitForTimeout(500);
    expect([await flat(two).inputValue(), await two.getByRole('dialog').count()]).toEqual(['19', 0]);

    // Whoever keeps his own keeps its undo, and what was being typed gives way to what is taken.
    expect(await one.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
    const shared = await jobsOn(two);
    await one.getByRole('combobox', { name: 'job', exact: true }).selectOption({ index: 1 });
    await settled(one);
    await flat(two).focus();
    await one.getByRole('button', { name: 'Remove', exact: true }).click();
    await asked.waitFor();
    await asked.getByRole('button', { name: 'Take the other tab\'s' }).click();
    await settled(two);
    expect((await jobsOn(two)).length).toBe(shared.length - 1);
    expect(await two.locator('html').getAttribute('data-shown')).toBe('shown');
    await one.context().close();
  }, 60_000);
});
