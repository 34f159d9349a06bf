import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { designWith, type Design } from '../../src/designWith.ts';
import { inInches } from '../../src/checks/say.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import { linearSpread } from '../../src/spread/linear.ts';
import { sampledSpread } from '../../src/spread/sampled.ts';
import { agreementWords, againWords, counted, tellingOf } from '../../src/spread/words.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { spreadShown, triedShown } from '../../viewer/desk/spreadShown.ts';
import { TRIED, tryVariants } from '../../viewer/desk/tryVariants.ts';
import { usedIn } from '../../viewer/desk/used.ts';
import { withValue, type Sheet } from '../../viewer/keep/sheet.ts';
import { bandDrawn } from '../../viewer/parts/spread/bandDrawn.ts';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const sheetOf = (name: string): Sheet => JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8')) as Sheet;
function designOf(sheet: Sheet): Design {
  const reading = readSheet(JSON.stringify(sheet)), designing = reading.ok ? designWith(() => [], reading.fitting, 'quick') : undefined;
  if (!designing?.ok) throw new Error('the sheet has a shape');
  return designing.design;
}
const ferrySheet = sheetOf('ferry-pilot'), ferry = designOf(ferrySheet), FOUR = ['pivot drop at heel strike', 'standing point', 'toe spring of the shoe', 'seat height'];

describe('what is shown of the spread', () => {
  test('the command\'s own sentence, four results first, the measures by what they decide, each with its field', () => {
    const spreads = linearSpread(ferry);
    spreadShown(ferry, ferrySheet).forEach(({ kind, again, results, measures, rest }, i) => {
      const { named, rest: counts } = tellingOf(spreads[i]!);
      expect([again, rest, measures.map(({ share }) => share)]).toEqual([againWords(ferry.fitting, spreads[i]!), counts, named.map(({ share }) => share)]);
      expect(measures.map(({ share }) => share)).toEqual([...measures.map(({ share }) => share)].sort((a, b) => b - a));
      if (kind === 'rocker') expect(results.filter(({ first }) => first).map(({ label }) => label)).toEqual(FOUR);
      const asked = new Set(fieldsOfSheet().map(({ path }) => path));
      for (const { path } of measures) expect(asked.has(path), path).toBe(true);
    });
  });

  test('a measure worked out from another leads to the one that was taken', () => {
    const { right } = ferrySheet as { readonly right: { readonly foot: Sheet } }, { pivotHeight: _, ...foot } = right.foot;
    const bone = { ...ferrySheet, right: { ...right, foot: { ...foot, malleolusHeight: { value: 70, accuracy: 9 } } } } as Sheet;
    const paths = spreadShown(designOf(bone), bone).flatMap(({ measures }) => measures.map(({ path }) => path));
    expect(paths).toContain('right.foot.malleolusHeight');
    expect(paths).not.toContain('right.foot.pivotHeight');
  });

  test('the band lies about the ground face as drawn, on the paper the shoe stands on', () => {
    const shown = spreadShown(ferry, ferrySheet), right = shown.find(({ side }) => side === 'right')!, shoe = ferry.shoes.find(({ side }) => side === 'right')!;
    if (shoe.kind !== 'rocker') throw new Error('the right shoe rolls');
    for (const [along, low, high] of right.band!) { const ground = heightAt(shoe.rocker.face, along); expect(low <= ground && ground <= high).toBe(true); }
    const { shade, edges } = bandDrawn(shown, [{ side: 'left', view: { zero: [0, 0], scale: 1 } }, { side: 'right', view: { zero: [100, 80], scale: 0.5 } }]), [along, low] = right.band![0]!;
    expect(shade.match(/<path/g)).toHaveLength(1);
    expect(edges).toContain(`M${(100 + along / 2).toFixed(2)} ${(80 - low / 2).toFixed(2)}L`);
    expect(bandDrawn(shown, [])).toEqual({ shade: '', edges: '' });
  });

  test('variants are tried in slices that can be stopped, and come to what they come to at once', async () => {
    const few = { ...TRIED, samples: 60 }, told: number[] = [];
    let clock = 0, stopped = false;
    const trying = { tell: ({ done }: { readonly done: number }) => { told.push(done); }, stopped: () => stopped, pause: () => Promise.resolve(), now: () => (clock += 50) };
    expect(await tryVariants(ferry, trying, few)).toEqual(sampledSpread(ferry, few));
    expect(told).toEqual([40]);
    stopped = true;
    expect(await tryVariants(ferry, trying, few)).toBeUndefined();
  });

  test('it is said how the variants agree with the quick answer, and where they do not', () => {
    const spread = linearSpread(ferry).find(({ kind }) => kind === 'rocker')!, sample = sampledSpread(ferry, { samples: 400, seed: 1, every: 400 }).find(({ side }) => side === spread.side)!;
    expect(agreementWords(spread, sample, 2000)).toMatch(/^2,000 variants agree with the quick answer: no spread differs by more than \d+ %\.$/);
    const wider = { ...sample, noShape: 0.021, results: sample.results.map((one) => (one.key === 'standingPoint' ? { ...one, deviation: 2 * one.deviation } : one)) };
    expect(agreementWords(spread, wider, 2000)).toMatch(/^2,000 variants differ from the quick answer, most in the standing point: ± 1\d\.\d mm and not ± 6\.\d mm\. Go by the variants: .* 2\.1 % of the variants leave no shape\.$/);
    expect(agreementWords(spread, { ...sample, results: [], noShape: 1 }, 300)).toBe('300 variants were tried, and none has a shape. 100.0 % of the variants leave no shape.');
    expect([counted(60), counted(12345678)]).toEqual(['60', '12,345,678']);
  });

  test('how surely counts where nothing is typed is told for each measure that decides a shape, and only for those', () => {
    const used = usedIn(ferry), at = (field: string) => used[`right.${field}.accuracy`];
    // Taken twice; ankle pivot ±4 mm, hip ±10 mm, as the trade says, two standard deviations each.
    expect([at('foot.pivotForward'), at('foot.heelPlates.hipAhead'), at('foot.strikeAngle')]).toEqual([2 / Math.SQRT2, 5, expect.closeTo(1.5, 12)]);
    expect([at('foot.ankleAngle'), at('foot.toeOffAngle'), used['wearer.mass.accuracy']]).toEqual([undefined, undefined, undefined]);
    expect(usedIn(designOf(withValue(ferrySheet, 'right.foot.pivotForward', { value: 63, accuracy: 0.4 })))['right.foot.pivotForward.accuracy']).toBe(2);
    const fields = new Map(fieldsOfSheet().map((field) => [field.path, field]));
    expect([fields.get('right.foot.pivotForward')?.accuracy, fields.get('wearer.mass')?.accuracy]).toEqual([true, undefined]);
  });
});

describe.skipIf(noBrowser)('which measure matters, in a browser', () => {
  let bench: Bench, page: Page, complaints: readonly string[];
  beforeAll(async () => {
    bench = await openBench('no solids');
    ({ page, complaints } = await openPage(bench));
    await openSample(page, 'ferry pilot');
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  const part = () => page.locator('#spread'), begin = () => part().getByRole('button', { name: 'Try 2,000 variants' }), cancel = () => part().getByRole('button', { name: 'Cancel' }), said = () => part().getByRole('status');
  const looked = async (): Promise<void> => { await settled(page); await page.waitForFunction('document.querySelector("#spread").dataset.looked === "true"'); };
  const focusedName = (): Promise<string | null> => page.evaluate('document.activeElement.getAttribute("name")');
  const nobr = (text: string | null): string => (text ?? '').replace(/\u00A0/g, ' ');
  const bands = () => page.locator('.band-edges path');

  test('it is loaded when it comes near, and tells each shoe in the command\'s words', async () => {
    expect(await page.locator('.sureness article').count()).toBe(0);
    await part().scrollIntoViewIfNeeded();
    await looked();
    expect((await page.locator('.again').allTextContents()).map(nobr)).toEqual(linearSpread(ferry).map((spread) => againWords(ferry.fitting, spread)));
    const right = part().getByRole('table', { name: 'How sure the right shoe is' });
    expect(await right.getByRole('rowheader').allTextContents()).toEqual(FOUR);
    expect(nobr(await right.getByRole('row', { name: 'standing point' }).textContent())).toMatch(/^standing point134\.2 mm± 6\.3 mm$/);
  }, 60_000);

  test('a measure leads to its field, by a press and by Enter', async () => {
    const first = part().getByRole('list', { name: 'measures of the right shoe by what they decide' }).getByRole('button').first();
    await first.click();
    expect(await focusedName()).toBe('right.foot.heelPlates.hipAhead');
    await part().getByRole('button', { name: /^pitch of the last 24\.0/ }).focus();
    await page.keyboard.press('Enter');
    expect(await focusedName()).toBe('right.last.pitch');
  }, 60_000);

  test('many variants are tried by a key, come to what the stages come to, and stay when the unit shown changes', async () => {
    await begin().focus();
    await page.keyboard.press('Enter');
    await page.locator('.agreement').first().waitFor();
    const tried = triedShown(ferry, sampledSpread(ferry), TRIED.samples);
    expect((await page.locator('.agreement').allTextContents()).map(nobr)).toEqual(tried.map(({ agreement }) => agreement));
    await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('Try 2,000 variants');
    const span = part().getByRole('table', { name: 'How sure the right shoe is' }).getByRole('row', { name: 'standing point' }).getByRole('cell').last(), { low, high } = tried[1]!.spans.find(({ key }) => key === 'standingPoint')!;
    expect(nobr(await span.textContent())).toBe(`${low.toFixed(1)} to ${high.toFixed(1)} mm`);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('in');
    await looked();
    expect(nobr(await span.textContent())).toBe(`${(low / 25.4).toFixed(3)} to ${(high / 25.4).toFixed(3)} in`);
    expect((await page.locator('.again').allTextContents()).map(nobr)).toEqual(linearSpread(ferry).map((spread) => inInches(againWords(ferry.fitting, spread)!)));
    expect(nobr(await part().textContent())).not.toMatch(/\d mm\b/);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('mm');
    await looked();
  }, 60_000);

  test('the band is laid into the drawing, goes while a pin moves and comes back when the hand rests', async () => {
    const tick = page.getByRole('checkbox', { name: 'how far the ground face may lie off' }), box = (): Promise<string | null> => bands().last().getAttribute('d');
    expect([await bands().count(), await page.locator('.band-legend').isVisible()]).toEqual([0, false]);
    await tick.focus();
    await page.keyboard.press('Space');
    await expect.poll(() => bands().count()).toBe(2);
    expect(await page.locator('.band-legend').textContent()).toContain('nine times in ten');
    const before = await box(), left: number[] = [];
    await page.exposeFunction('bandLeft', (many: number) => { left.push(many); });
    // Looked at right where the drawing has just been put anew for a key that was pressed.
    await page.evaluate('new MutationObserver((_, seen) => { if (!document.querySelector(".band-edges").childElementCount) { bandLeft(0); seen.disconnect(); } }).observe(document.querySelector(".band-edges"), { childList: true })');
    await page.locator('.pin').first().focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => left).toEqual([0]);
    await looked();
    await expect.poll(() => bands().count()).toBe(2);
    expect(await box()).not.toBe(before);
    expect([await page.locator('.agreement').count(), await said().textContent()]).toEqual([0, 'The sheet has changed: what was tried was of the sheet before.']);
    await page.keyboard.press('Control+z');
    await looked();
    await tick.uncheck();
    expect(await bands().count()).toBe(0);
  }, 60_000);

  test('how surely a measure was taken is typed beside it, is undone, and is told wrong in its own place', async () => {
    const field = page.locator('input[name="right.foot.pivotForward"]'), box = page.locator('input[name="right.foot.pivotForward.accuracy"]'), stands = part().getByRole('button', { name: /^ankle pivot forward of the heel back/ }).locator('.stands');
    await field.evaluate((input: HTMLElement) => { input.closest('details')!.open = true; });
    expect([await box.getAttribute('placeholder'), await page.locator('input[name="right.foot.toeOffAngle.accuracy"]').isVisible()]).toEqual(['1.414', false]);
    await box.fill('3');
    await box.press('Tab');
    await looked();
    expect(nobr(await stands.textContent())).toBe('63.0 ± 3.0 mm');
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('in');
    await looked();
    expect([await box.inputValue(), await box.locator('xpath=following-sibling::*').textContent()]).toEqual(['0.118', 'in']);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('mm');
    await looked();
    await box.fill('none');
    await settled(page);
    expect([await box.getAttribute('aria-invalid'), await field.getAttribute('aria-invalid')]).toEqual(['true', null]);
    expect(await page.locator('.message').textContent()).toContain('Right foot, heel to ankle pivot, give or take must be a length in mm; got "none".');
    await field.focus();
    await page.locator('.message').getByRole('button', { name: 'Go there' }).click();
    expect(await focusedName()).toBe('right.foot.pivotForward.accuracy');
    await box.fill('');
    await box.press('Tab');
    await looked();
    expect(nobr(await stands.textContent())).toBe('63.0 ± 1.4 mm');
    for (let steps = 0; steps < 3 && await box.inputValue() !== '3'; steps++) { await page.getByRole('button', { name: 'Undo' }).click(); await settled(page); }
    await looked();
    expect([await box.inputValue(), nobr(await stands.textContent())]).toEqual(['3', '63.0 ± 3.0 mm']);
  }, 60_000);

  test('what is being tried is cancelled by a key, and stops by itself when the sheet changes', async () => {
    await openSample(page, 'baker');
    await looked();
    expect(await page.locator('.sureness h3').allTextContents()).toEqual(['Left shoe: rolls', 'Right shoe: rolls']);
    await begin().focus();
    await page.keyboard.press('Enter');
    expect(await part().getByRole('progressbar').isVisible()).toBe(true);
    await page.keyboard.press('Enter');
    expect([await said().textContent(), await begin().isVisible(), await cancel().isVisible(), await part().getByRole('progressbar').count()]).toEqual(['Cancelled: the quick answer stands.', true, false, 0]);
    await begin().click();
    await page.waitForFunction('document.querySelector("#spread progress").value > 0');
    const pitch = page.locator('input[name="left.last.pitch"]');
    await pitch.evaluate((input: HTMLElement) => { input.closest('details')!.open = true; });
    await pitch.fill('15');
    await looked();
    expect([await said().textContent(), await begin().isVisible()]).toEqual(['The sheet has changed: what was tried was of the sheet before.', true]);
    expect(nobr(await part().getByRole('button', { name: /^pitch of the last/ }).first().locator('.stands').textContent())).toBe('15.0 ± 0.50 mm');
    // Neither of the two comes in late.
    await page.waitForTimeout(400);
    expect(await page.locator('.agreement').count()).toBe(0);
  }, 60_000);

  test('access has no serious fault, and nothing is complained of', async () => {
    await page.getByRole('checkbox', { name: 'how far the ground face may lie off' }).check();
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    for (const within of ['#spread', '.banding', '.row:has(input[name="left.foot.pivotForward"])']) {
      const { violations } = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string }[] }, string>((host) => (globalThis as unknown as { axe: { run: (host: string, how: object) => never } }).axe.run(host, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] }), within);
      expect(violations.filter(({ impact }) => ['serious', 'critical'].includes(impact)).map(({ id }) => id), within).toEqual([]);
    }
    expect(complaints).toEqual([]);
  }, 60_000);
});
