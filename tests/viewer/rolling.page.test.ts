import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import type { Point } from '../../src/geometry/point.ts';
import { frameAt, laid, type Place } from '../../src/walk/frame.ts';
import { forePlace, laidOrdinary } from '../../src/walk/ordinaryShape.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import type { FigureRow, WalkShown } from '../../viewer/desk/protocol.ts';
import { outcomeOf } from '../../viewer/desk/outcome.ts';
import { walkShown } from '../../viewer/desk/walkShown.ts';
import { lengthWords } from '../../viewer/keep/lengths.ts';
import { later, STANCE_TIME } from '../../viewer/parts/rolling/clock.ts';
import { ownRolling } from '../../viewer/parts/clientWords.ts';
import { reachOf, scaleOver } from '../../viewer/parts/rolling/reach.ts';
import { readIn } from '../../viewer/parts/rolling/readout.ts';
import { transformOf } from '../../viewer/parts/rolling/soleDrawn.ts';
import { SAMPLES } from '../exports/jobs.ts';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const known = new Map<string, WalkShown>();
const shownOf = (name: string): WalkShown => {
  const before = known.get(name);
  if (before) return before;
  const made = design(SAMPLES[name]!);
  if (!made.ok) throw new Error('the sample is made');
  const shown = walkShown(made.design).walking!;
  known.set(name, shown);
  return shown;
};

/** A place as SVG reads the text of its transform, by its own rules: turn first, then move; y down. */
function throughSvg(text: string, [x, up]: Point): Point {
  const [, across, down, turned] = /translate\((\S+) (\S+)\)rotate\((\S+)\)/.exec(text)!.map(Number) as [number, number, number, number], angle = (turned * Math.PI) / 180, y = -up;
  return [x * Math.cos(angle) - y * Math.sin(angle) + across, -(x * Math.sin(angle) + y * Math.cos(angle) + down)];
}
const near = ([x, z]: Point): Point => [expect.closeTo(x, 2) as number, expect.closeTo(z, 2) as number];

describe('what is shown of a step', () => {
  test('SVG lays a shoe where the stages lay it, and what bends bends alike', () => {
    const place: Place = { turn: 0.31, x: 41.2, z: 17.9 };
    for (const point of [[0, 0], [120, 40], [290, -8]] as const) expect(throughSvg(transformOf(place), point)).toEqual(near(laid(place, point)));
    const { walking: { shoes: [walk] } } = shownOf('ferry-pilot');
    for (const share of [0, 0.4, 1]) {
      const { place: at } = frameAt(walk!.ordinary, share), parts = laidOrdinary(walk!.shape, at), fore = forePlace(walk!.shape, at);
      walk!.shape.fore.forEach((point, i) => expect(throughSvg(transformOf(fore), point)).toEqual(near(parts.fore[i]!)));
      walk!.shape.rear.forEach((point, i) => expect(throughSvg(transformOf(at), point)).toEqual(near(parts.rear[i]!)));
    }
  });

  test('stance takes its time, four times that shown slowly; it stands a while at its end and begins anew, or runs once', () => {
    const fast = { slow: false, once: false }, from = (share: number) => ({ share, stood: 0 });
    expect(later(from(0), STANCE_TIME / 2, fast).share).toBeCloseTo(0.5, 12);
    expect(later(from(0), STANCE_TIME / 2, { ...fast, slow: true }).share).toBeCloseTo(0.125, 12);
    expect(later(from(0.9), 5, fast)).toEqual({ share: 1, stood: 0 });
    expect([later(from(1), 0.2, fast), later({ share: 1, stood: 0.5 }, 0.2, fast), later({ share: 1, stood: 50 }, 1, { ...fast, once: true }).share]).toEqual([{ share: 1, stood: 0.2 }, from(0), 1]);
  });

  test('both shoes are drawn at one scale that holds them at every moment, and heights stand between round lines', () => {
    const { walking } = shownOf('ferry-pilot'), { from, to, high } = reachOf(walking);
    for (const { own } of walking.shoes) for (let i = 0; i <= 100; i += 3) {
      const { pivot, contact } = frameAt(own, i / 100);
      expect(pivot[0] > from && pivot[0] < to && contact[0] > from && contact[0] < to && pivot[1] < high).toBe(true);
    }
    expect(scaleOver([884.2, 921], 10)).toEqual({ from: 880, to: 930, lines: [880, 890, 900, 910, 920, 930] });
    expect(scaleOver([900, 900], 10)).toMatchObject({ from: 900, to: 910 });
  });

  test('what is read off a moment is the frame\'s, lengths in the unit shown', () => {
    const { walking: { shoes } } = shownOf('ferry-pilot'), frame = frameAt(shoes[1]!.own, 0.5), [, pivot, , lever] = readIn(frame, 'mm', false), inches = readIn(frame, 'in', false)[1]!;
    expect([pivot, lever]).toEqual([`${frame.pivot[1].toFixed(1)} mm`, `${(frame.contact[0] - frame.pivot[0]).toFixed(1)} mm`]);
    // An inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    expect(parseFloat(inches) * 25.4).toBeCloseTo(frame.pivot[1], 1);
    expect([lengthWords(-25.4, 'in'), lengthWords(1000, 'mm', 0), readIn({ ...frame, touches: 'front corner' }, 'mm', true)[5]]).toEqual(['-1.000 in', '1000 mm', 'the ball']);
  });

  test('figures come for each column in the order of the step, a shoe that bends is told alone, and a client is told without promise', () => {
    const { shoes: [left, right], differences } = shownOf('ferry-pilot'), labels = shownOf('baker').shoes[0]!.figures.map(({ label }) => label);
    expect([left!.columns, right!.columns, left!.cut, right!.cut!.outline.startsWith('M')]).toEqual([['this shoe'], ['this shoe', 'ordinary'], undefined, true]);
    // Only the ordinary shoe in the baker's place turns over its back edge.
    expect(labels.findIndex((label) => label.startsWith('Turns over the back'))).toBeLessThan(labels.findIndex((label) => label.startsWith('Turns over its front')));
    expect(new Set(labels).size).toBe(labels.length);
    const hip = 'Hip above the floor at heel contact', valueOf = (rows: readonly FigureRow[]): number => parseFloat(rows.find(({ label }) => label === hip)!.cells[0]!);
    expect(Math.abs(valueOf(left!.figures) - valueOf(right!.figures) - valueOf(differences))).toBeLessThan(0.15);
    expect(ownRolling(shownOf('ferry-pilot'))!.lanes.map(({ which }) => which)).toEqual(['own', 'ordinary']);
    expect(ownRolling(shownOf('baker'))!.lanes.map(({ which }) => which)).toEqual(['own']);
  });

  test('the walk is worked out where it is asked for and the hand rests, and for no step of a drag', () => {
    const sheet = readFileSync('samples/market-gardener/sheet.json', 'utf8'), paper = { width: 320, height: 172 };
    const walkingAt = (chordGap: number, extras: object): boolean => {
      const { outcome } = outcomeOf({ sheet, paper, chordGap }, [], extras);
      return outcome.kind === 'shown' && outcome.shown.walking !== undefined;
    };
    expect([walkingAt(2, { walk: walkShown }), walkingAt(0, {}), walkingAt(0, { walk: walkShown })]).toEqual([false, false, true]);
  });

  test('a pasted table is a field of many lines', () => {
    expect(fieldsOfSheet().filter(({ kind }) => kind === 'lines').map(({ path }) => path)).toEqual(['left.foot.walk.table', 'right.foot.walk.table']);
  });
});

describe.skipIf(noBrowser)('rolling in a browser', () => {
  let bench: Bench, page: Page, complaints: readonly string[];
  beforeAll(async () => {
    bench = await openBench('no solids');
    ({ page, complaints } = await openPage(bench));
    await openSample(page, 'ferry pilot');
    await page.locator('#rolling').scrollIntoViewIfNeeded();
    await page.locator('.lane .body').first().waitFor();
    await settled(page);
  }, 60_000);
  afterAll(async () => { await bench?.close(); });

  const slider = () => page.getByRole('slider', { name: 'share of stance' });
  const said = (): Promise<string> => page.locator('.scrub output').textContent().then((text) => text ?? '');
  const shareNow = async (): Promise<number> => Number.parseInt(await said(), 10);
  const read = async (row: string): Promise<readonly string[]> => page.getByRole('table', { name: 'right shoe at this moment' }).getByRole('row', { name: row }).getByRole('cell').allTextContents();
  const press = (name: string): Promise<void> => page.locator('#rolling').getByRole('button', { name, exact: true }).click();

  test('it begins held, is scrubbed by keys, and the numbers follow', async () => {
    expect([await page.locator('.lane').count(), await said()]).toEqual([2, '0 % of stance, heel contact']);
    await page.waitForTimeout(150);
    expect(await shareNow()).toBe(0);
    await slider().focus();
    for (const [key, share] of [['ArrowRight', 1], ['PageUp', 11], ['ArrowLeft', 10], ['End', 100], ['PageDown', 90], ['Home', 0]] as const) {
      await page.keyboard.press(key);
      expect([key, await shareNow()]).toEqual([key, share]);
    }
    await press('mid-stance');
    expect([await said(), await slider().getAttribute('aria-valuetext'), await page.locator('.phases [aria-current]').allTextContents()]).toEqual(['50 % of stance, mid-stance', '50 % of stance, mid-stance', ['mid-stance']]);
    const { walking: { shoes } } = shownOf('ferry-pilot'), walk = shoes.find(({ side }) => side === 'right')!, own = readIn(frameAt(walk.own, 0.5), 'mm', false), ordinary = readIn(frameAt(walk.ordinary, 0.5), 'mm', true);
    expect([await read('Hip above the floor'), await read('Roll')]).toEqual([[own[2], ordinary[2]], [own[0], ordinary[0]]]);
  }, 60_000);

  test('it plays until it is held; what is not wanted is left away', async () => {
    const before = await page.locator('.lane .shoe').last().getAttribute('transform');
    await press('Play');
    await expect.poll(shareNow).not.toBe(50);
    await press('Hold');
    const held = await said();
    await page.waitForTimeout(150);
    expect([await said(), await page.locator('.lane .shoe').last().getAttribute('transform') === before]).toEqual([held, false]);
    const ghost = page.locator('.lane .ordinary').first();
    expect(await ghost.isVisible()).toBe(true);
    await page.getByRole('checkbox', { name: 'ordinary shoe' }).uncheck();
    await page.getByRole('checkbox', { name: 'push' }).uncheck();
    expect([await ghost.isVisible(), await page.locator('.lane .push').first().isVisible(), await page.locator('.lane .leg').last().isVisible()]).toEqual([false, false, true]);
    await page.getByRole('checkbox', { name: 'ordinary shoe' }).check();
  }, 60_000);

  test('in inches all that is said is in inches, and the moment stays', async () => {
    await press('push-off');
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('in');
    await settled(page);
    expect(await shareNow()).toBe(85);
    expect((await read('Ankle pivot above the floor'))[0]).toMatch(/^\d\.\d{3} in$/);
    expect(await page.locator('#rolling').textContent()).not.toMatch(/\d\s?mm\b/);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('mm');
    await settled(page);
  }, 60_000);

  test('the pair of another job takes its place', async () => {
    await openSample(page, 'baker');
    await expect.poll(() => page.locator('.lane h3').allTextContents()).toEqual(['Left shoe: rolls', 'Right shoe: rolls']);
    await openSample(page, 'ferry pilot');
    await expect.poll(() => page.locator('.lane h3').first().textContent()).toBe('Left shoe: bends at the ball');
  }, 60_000);

  test('a pasted walk drives the roll: its source is told, and a wrong line stays to be mended', async () => {
    const table = page.locator('textarea[name="right.foot.walk.table"]');
    await table.evaluate((field: HTMLTextAreaElement) => { for (let box = field.closest('details'); box; box = box.parentElement!.closest('details')) box.open = true; });
    await table.fill('0\t-17\n20\t-2\n50\t8\n80\t24\n100\t46');
    await table.press('Tab');
    await settled(page);
    await expect.poll(() => page.locator('.roll-words').textContent()).toContain('Right: walk as in its table.');
    await table.fill('0\t-17\n20\tfast\n50\t8\n80\t24\n100\t46');
    await settled(page);
    expect(await page.locator('.message').textContent()).toMatch(/line 2 has "fast"; got a text of 5 lines/);
    expect([await table.getAttribute('aria-invalid'), await table.inputValue()]).toEqual(['true', '0\t-17\n20\tfast\n50\t8\n80\t24\n100\t46']);
    await table.fill('');
    await settled(page);
  }, 60_000);

  test('the client sees the pair walk, held where motion is not wanted and moved on by a press; access has no serious fault', async () => {
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    const serious = async (within: string): Promise<readonly string[]> => {
      const { violations } = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string }[] }, string>((host) => (globalThis as unknown as { axe: { run: (host: string, how: object) => never } }).axe.run(host, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] }), within);
      return violations.filter(({ impact }) => ['serious', 'critical'].includes(impact)).map(({ id }) => id);
    };
    expect(await serious('#rolling')).toEqual([]);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.getByRole('button', { name: 'Show the client' }).click();
    const dialog = page.getByRole('dialog'), cycle = (): Promise<string | null> => page.locator('.walked').getAttribute('data-cycle');
    await dialog.getByRole('button', { name: 'How they roll' }).click();
    await page.locator('.pair .body').first().waitFor();
    const first = await cycle();
    await page.waitForTimeout(150);
    expect([await cycle(), await page.locator('.pair .tag').allTextContents()]).toEqual([first, ['yours', 'ordinary']]);
    await dialog.getByRole('button', { name: 'Walk', exact: true }).click();
    expect(Number(await cycle())).toBeGreaterThan(Number(first));
    expect(await dialog.evaluate((node) => node.outerHTML)).not.toMatch(/\b(K-207|ferry|rocker|better|improves?|relie[fv]\w*|less pain)\b/i);
    expect(await serious('.client')).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await page.emulateMedia({ reducedMotion: null });
    expect(complaints).toEqual([]);
  }, 60_000);
});
