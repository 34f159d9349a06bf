import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Figure } from '../../src/checks/figures.ts';
import { design } from '../../src/design.ts';
import { ordinarySole } from '../../viewer/desk/ordinary.ts';
import type { ShoeShown } from '../../viewer/desk/protocol.ts';
import { besideOrdinary, ownSoles, sentence } from '../../viewer/parts/clientWords.ts';
import { SAMPLES } from '../exports/jobs.ts';
import { noBrowser, openBench, openPage, openSample, type Bench } from './browser.ts';

const figure = (key: 'seatHeight' | 'soleWeight', value: number): Figure => ({ key, label: '', value, unit: key === 'seatHeight' ? 'mm' : 'g', digits: 1, estimated: false });
const shoe = (side: 'left' | 'right', high: number, ordinary?: number): ShoeShown => ({
  side, kind: ordinary === undefined ? 'match' : 'rocker', figures: [figure('seatHeight', high), figure('soleWeight', 193.6)], stiffener: 0, solids: [], ...(ordinary === undefined ? {} : { ordinary: { solids: [], seatHeight: ordinary } }),
});

describe('what a client is told', () => {
  test('what the sole does, how high it is and how heavy, in whole millimetres or tenths of an inch', () => {
    expect(sentence(shoe('right', 45.6, 32), 'mm')).toBe('Right: the sole rolls for the joint that must not bend. It is 46\u00A0mm high under the heel and weighs 194\u00A0g.');
    expect(sentence(shoe('left', 6.3), 'in')).toBe('Left: 0.2\u00A0inches are added under your own shoe, so that both feet stand as they should. What is added weighs 194\u00A0g.');
    expect(sentence(shoe('left', 0), 'mm')).toBe('Left: nothing is put under this shoe.');
  });

  test('the difference is the one between the two heights that are said', () => {
    // 46.4 less 31.6 is nearer to 15, but 46 and 32 are said.
    expect(besideOrdinary([shoe('left', 6), shoe('right', 46.4, 31.6)], 'mm')).toMatchObject({
      tags: { right: 'yours\n46\u00A0mm', left: 'ordinary\n32\u00A0mm' },
      line: 'Your right sole beside an ordinary one of the same outline: yours is 14\u00A0mm higher under the heel.',
    });
    expect(besideOrdinary([shoe('right', 30, 32)], 'mm')!.line).toContain('yours is 2\u00A0mm lower');
    expect(besideOrdinary([shoe('right', 32.1, 31.9)], 'mm')!.line).toContain('both are equally high');
    expect(besideOrdinary([shoe('left', 6), shoe('right', 6)], 'mm')).toBeUndefined();
  });

  test('a sole that is alone is spoken of alone', () => {
    expect(ownSoles([shoe('left', 0), shoe('right', 46, 32)], 'mm')).toMatchObject({ name: 'Your right sole.', tags: { right: 'right\n46\u00A0mm' } });
    expect(ownSoles([shoe('left', 6), shoe('right', 46, 32)], 'mm').name).toBe('Your left and your right sole.');
  });

  test.each(['ferry-pilot', 'baker'])('the ordinary sole of %s is as high at the seat as is said, measured on its mesh', (name) => {
    const made = design(SAMPLES[name]!);
    if (!made.ok) throw new Error('the sample is made');
    for (const one of made.design.shoes.filter(({ kind }) => kind === 'rocker')) {
      const plain = ordinarySole(one, 0.3)!, { positions } = plain.solids.whole, near: number[] = [];
      for (let i = 0; i < positions.length; i += 3) if (Math.abs(positions[i]! - one.last.seatLength / 2) < 4) near.push(positions[i + 2]!);
      expect(Math.abs(Math.max(...near) - plain.seatHeight)).toBeLessThan(1);
    }
  });
});

describe.skipIf(noBrowser)('the client view in a browser', () => {
  /** Drawn by software, so a small picture is a quick one. */
  const SMALL = { width: 800, height: 600 };
  let bench: Bench, page: Page, complaints: readonly string[];
  beforeAll(async () => {
    bench = await openBench();
    ({ page, complaints } = await openPage(bench, SMALL));
    await openSample(page, 'ferry pilot');
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  const drawn = (): Promise<number> => page.evaluate(() => Number(document.querySelector<HTMLElement>('.client canvas')?.dataset.drawn ?? 0));
  const press = (name: string): Promise<void> => page.getByRole('dialog').getByRole('button', { name, exact: true }).click();
  const open = async (): Promise<void> => {
    await page.getByRole('button', { name: 'Show the client' }).click();
    await expect.poll(drawn).toBeGreaterThan(0);
  };
  const shut = async (): Promise<void> => {
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement!.textContent)).toBe('Show the client');
  };
  const picture = (): Promise<string> => page.locator('.client canvas').getAttribute('aria-label').then((label) => label ?? '');

  test('the client sees soles, heights and cautions in plain words, and nothing that identifies', async () => {
    const { job } = JSON.parse(readFileSync('samples/ferry-pilot/sheet.json', 'utf8')) as { job: Readonly<Record<string, string>> };
    const named = [...Object.values(job), 'K-207', 'Ropewalk', 'Varrow', 'ferry'], found = (text: string): string[] => named.filter((one) => text.toLowerCase().includes(one.toLowerCase()));
    expect(found(await page.content()).length, 'the bench itself does tell them').toBeGreaterThan(1);
    await open();
    const dialog = page.getByRole('dialog', { name: 'Your soles' });
    expect(await dialog.textContent()).toMatch(/Right: the sole rolls.*46\smm high under the heel and weighs \d+\sg/);
    expect(await picture()).toMatch(/^Your left and your right sole\. Drag the picture/);
    for (const press of [undefined, 'Beside an ordinary sole']) {
      if (press) await dialog.getByRole('button', { name: press }).click();
      // All its text, labels and titles.
      const all = `${await page.title()} ${await dialog.evaluate((node) => node.outerHTML)}`;
      expect(found(all)).toEqual([]);
      expect(all).not.toMatch(/\b(19|20)\d\d\b/);
      expect(all).not.toMatch(/\b(outsole|foam|rocker|apex|shoe as a solid)\b/i);
    }
    expect(await dialog.getByRole('status').allTextContents()).toContain('Your right sole beside an ordinary one of the same outline: yours is 14\u00A0mm higher under the heel.');
    expect(await picture()).toMatch(/^Your right sole, and an ordinary sole beside it\./);
    expect(await dialog.locator('.tag:visible').allTextContents()).toEqual(['ordinary\n32\u00A0mm', 'yours\n46\u00A0mm']);
    await shut();
    expect(complaints).toEqual([]);
  }, 60_000);

  test('the keyboard stays in the view, and the whole screen is left with it', async () => {
    await open();
    await expect.poll(() => page.evaluate(() => document.fullscreenElement === document.documentElement)).toBe(true);
    await press('Hold still');
    const seen = new Set<string>();
    for (const key of ['Tab', 'Shift+Tab']) for (let i = 0; i < 7; i++) {
      await page.keyboard.press(key);
      // Between the last and the first stands the browser's own frame, where the page has no focus.
      seen.add(await page.evaluate(() => { const on = document.activeElement!; return on === document.body || on.closest('.client') ? on.textContent!.length > 40 ? 'nothing' : on.textContent || on.tagName : `outside: ${on.outerHTML}`; }));
    }
    seen.delete('nothing');
    expect([...seen].sort()).toEqual(['Beside an ordinary sole', 'CANVAS', 'Close', 'How they roll', 'Turn', 'Your soles']);
    await shut();
    await expect.poll(() => page.evaluate(() => document.fullscreenElement)).toBe(null);
    await open();
    // As a browser does when Escape is pressed in the whole screen: the page hears nothing of the key.
    await page.waitForFunction('document.fullscreenElement !== null');
    await page.evaluate(() => document.exitFullscreen());
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement!.textContent)).toBe('Show the client');
  }, 60_000);

  test('a browser that refuses the whole screen shows the view in its window all the same', async () => {
    await page.evaluate(() => { Element.prototype.requestFullscreen = () => Promise.reject(new TypeError('refused')); });
    await open();
    expect(await page.evaluate(() => document.fullscreenElement)).toBe(null);
    expect(await page.getByRole('dialog').evaluate((node) => [node.clientWidth >= innerWidth, node.clientHeight >= innerHeight])).toEqual([true, true]);
    await shut();
  }, 60_000);

  // From here on it is refused: a window that fills the screen cannot be given another size.
  test('on a desk and on a tablet all is seen at once, on a phone it is scrolled; letters are large, and access has no serious fault', async () => {
    await open();
    await press('Hold still');
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    /** What is cut off below or beside, and letters under 18 px. */
    const faults = (): Promise<{ readonly below: string[]; readonly beside: string[]; readonly small: string[] }> => page.evaluate(() => {
      const told = [...document.querySelectorAll<HTMLElement>('.client :is(h2, p, li, button, canvas, .tag)')].filter((one) => one.checkVisibility() && (one.textContent || one.tagName === 'CANVAS'));
      const where = (is: (one: HTMLElement) => boolean): string[] => told.filter(is).map((one) => one.textContent || one.tagName);
      return {
        below: where((one) => one.getBoundingClientRect().bottom > innerHeight || one.getBoundingClientRect().top < 0),
        beside: where((one) => one.getBoundingClientRect().right > innerWidth || one.getBoundingClientRect().left < 0),
        small: where((one) => parseFloat(getComputedStyle(one).fontSize) < 18),
      };
    });
    for (const [width, height] of [[1440, 900], [1024, 768], [768, 1024]] as const) {
      await page.setViewportSize({ width, height });
      for (const which of ['Your soles', 'Beside an ordinary sole', 'How they roll']) {
        await press(which);
        await expect.poll(faults, { message: `${which} at ${width}` }).toEqual({ below: [], beside: [], small: [] });
        expect(await page.locator('.client canvas').evaluate((canvas) => canvas.clientHeight / innerHeight), `the picture at ${width} is still a picture`).toBeGreaterThan(0.35);
      }
    }
    await page.setViewportSize({ width: 390, height: 844 });
    await expect.poll(faults).toMatchObject({ beside: [], small: [] });
    expect((await faults()).below.length).toBeGreaterThan(0);
    await page.getByText('Ask before you drive').scrollIntoViewIfNeeded();
    expect((await faults()).below.some((text) => text.includes('Ask before you drive'))).toBe(false);
    const { violations } = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string }[] }>('axe.run(".client", { runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"], resultTypes: ["violations"] })');
    expect(violations.filter(({ impact }) => ['serious', 'critical'].includes(impact)).map(({ id }) => id)).toEqual([]);
    await page.setViewportSize(SMALL);
    await shut();
  }, 60_000);

  /** Frames drawn in a fifth of a second, after what was asked for is drawn. */
  const moving = async (): Promise<number> => {
    await page.waitForTimeout(100);
    const before = await drawn();
    await page.waitForTimeout(200);
    return (await drawn()) - before;
  };

  test('the soles turn until they are held, by the button or by the picture', async () => {
    await open();
    expect(await moving()).toBeGreaterThan(0);
    await press('Hold still');
    await press('Beside an ordinary sole');
    await expect.poll(moving, { message: 'what is held stays held' }).toBe(0);
    await press('Turn');
    expect(await moving()).toBeGreaterThan(0);
    await page.locator('.client canvas').click();
    await expect.poll(moving).toBe(0);
    await shut();
  }, 60_000);

  test('where motion is not wanted they stand still, and each press turns them once', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await open();
    await expect.poll(moving).toBe(0);
    expect(await page.getByRole('button', { name: 'Hold still' }).count()).toBe(0);
    const before = await page.locator('.client .tag').first().evaluate((tag) => tag.style.translate);
    await press('Turn');
    await expect.poll(moving).toBe(0);
    expect(await page.locator('.client .tag').first().evaluate((tag) => tag.style.translate)).not.toBe(before);
    await shut();
    expect(complaints).toEqual([]);
  }, 60_000);
});
