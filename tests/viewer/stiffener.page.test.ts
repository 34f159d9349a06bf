import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { layerWords } from '../../src/checks/packWords.ts';
import { rounded } from '../../src/checks/say.ts';
import { stiffenerTable } from '../../src/command/stiffenerTable.ts';
import { designWith, type Design } from '../../src/designWith.ts';
import { readSheet } from '../../src/fitting/readSheet.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import { benchTestOf } from '../../src/making/plies/bench.ts';
import { BENT_BY } from '../../src/stiffener/bentBy.ts';
import { bentShape } from '../../src/stiffener/bentShape.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { fieldsOfSheet } from '../../viewer/desk/fields.ts';
import { packsShown } from '../../viewer/desk/packShown.ts';
import { usedIn } from '../../viewer/desk/used.ts';
import { waysShown } from '../../viewer/desk/waysShown.ts';
import { withValue, type Sheet } from '../../viewer/keep/sheet.ts';
import { noBrowser, openBench, openPage, openSample, settled, type Bench } from './browser.ts';

const gardener = readFileSync('samples/market-gardener/sheet.json', 'utf8');
function designOf(text: string): Design {
  const reading = readSheet(text), designing = reading.ok ? designWith(() => [], reading.fitting, 'careful') : undefined;
  if (!designing?.ok) throw new Error('the sheet has a shape');
  return designing.design;
}
function packIn({ shoes, fitting }: Design): Pack {
  const rocker = shoes.find((shoe) => shoe.kind === 'rocker'), pack = rocker?.kind === 'rocker' ? packFor(rocker, fitting) : undefined;
  if (!pack) throw new Error('a stiffener is wanted');
  return pack;
}
const design = designOf(gardener), pack = packIn(design);

describe('what is shown of a stiffener', () => {
  test('the shape that is drawn is that of what was assessed, held where it is held', () => {
    for (const by of BENT_BY) {
      const { shape, bend, tip } = bentShape(pack, by), { plate: { ball, heel, to }, assessed } = pack;
      const at = (x: number): number => shape.reduce((best, one) => (Math.abs(one[0] - x) < Math.abs(best[0] - x) ? one : best))[1];
      expect([by, at(ball)]).toEqual([by, expect.closeTo(0, 9)]);
      expect(by === 'bench' ? Math.max(...shape.filter(([x]) => x < ball).map(([, up]) => Math.abs(up))) : at(heel)).toBeCloseTo(0, 9);
      expect([bend, tip]).toEqual([expect.closeTo(assessed[by].bend, 9), expect.closeTo(assessed[by].tip, 9)]);
      if (by === 'bench') expect(at(to)).toBeCloseTo(tip, 9);
    }
  });

  test('the bench is drawn as its card hangs it, clamp, mass and droop', () => {
    const [shown] = packsShown(design).stiffeners ?? [], test = benchTestOf(pack)!;
    for (const hanging of [test.bare, test.finished]) {
      const { shape, clamp, at } = shown!.pack!.loads.find(({ of }) => of === hanging.of)!, up = (x: number): number => shape.reduce((best, one) => (Math.abs(one[0] - x) < Math.abs(best[0] - x) ? one : best))[2];
      expect([at, clamp?.at, clamp?.hung]).toEqual([hanging.loadAt, hanging.clampAt, `${Number(hanging.mass.toFixed(2))} kg`]);
      expect([up(hanging.loadAt) / hanging.droop, up(hanging.clampAt - 1)]).toEqual([expect.closeTo(1, 2), expect.closeTo(0, 9)]);
      // As walking bends it: the toe goes towards the foot.
      expect(Math.sign(up(at))).toBe(Math.sign(shown!.pack!.loads.find(({ of }) => of === 'walking')!.shape.at(-1)![2]));
    }
  });

  test('the ways and what decides are the command\'s own, and speak inches throughout where those are shown', () => {
    const [right] = waysShown({ sheet: gardener, lengths: 'mm' }), squeezed = (text: string): string => text.replaceAll(/\s+/g, ''), table = squeezed(stiffenerTable(design, 400));
    for (const { way, numbers } of right!.ways) expect(table).toContain(squeezed([way, ...numbers].join('')));
    for (const text of right!.decides) expect(table).toContain(squeezed(text));
    expect(right!.ways.length).toBeGreaterThan(3);
    expect(JSON.stringify(waysShown({ sheet: gardener, lengths: 'in' }))).not.toMatch(/\d mm/);
    expect(JSON.stringify(packsShown({ ...design, fitting: { ...design.fitting, units: 'in' } }))).not.toMatch(/\d mm/);
  }, 60_000);

  test('what is too soft for straight reckoning is said to be, and its shape is not told', () => {
    const soft = designOf(JSON.stringify(withValue(JSON.parse(gardener) as Sheet, 'right.order.stiffener', { plies: [{ pack: 'below' }, { pack: 'below', angle: 45 }] })));
    const [shown] = packsShown(soft).stiffeners ?? [], told = shown?.pack?.loads.find((one) => one.of === 'stumble');
    expect([told?.shape, told?.words]).toEqual([[], 'In a stumble on the tip: bends more than 30° at the ball, so far that nothing else can be told of it: it is far too soft.']);
  });

  test('a thickness alone shows no pack; each field that counts where it is empty is one of the form', () => {
    const plain = designOf(JSON.stringify(withValue(JSON.parse(gardener) as Sheet, 'right.order.stiffener', 2)));
    expect(packsShown(plain).stiffeners).toEqual([{ side: 'right', thickness: 2, massKnown: true }]);
    const used = usedIn(design), asked = new Set(fieldsOfSheet().map(({ path }) => path));
    expect([used['right.order.stiffener.wanted'], used['right.order.stiffener.cloth'], used['right.order.stiffener.thicknessAtMost']]).toEqual(['rigid', 'carbon unidirectional 300', 8]);
    for (const path of Object.keys(used).filter((one) => one.includes('.stiffener.') && !one.endsWith('.kind'))) expect(asked.has(path), path).toBe(true);
  });
});

describe.skipIf(noBrowser)('the stiffener on the page', () => {
  let bench: Bench, page: Page, complaints: readonly string[], elsewhere: readonly string[];
  beforeAll(async () => { bench = await openBench('no solids'); ({ page, complaints, elsewhere } = await openPage(bench, { width: 1440, height: 900 })); }, 120_000);
  afterAll(async () => bench?.close());
  const part = (): Locator => page.locator('#stiffener'), button = (name: string): Locator => part().getByRole('button', { name });
  const slider = (): Locator => part().getByRole('slider'), stored = (): Promise<string | null> => page.getByRole('button', { name: 'Undo' }).getAttribute('title');
  const sought = async (): Promise<void> => { await settled(page); await page.waitForFunction('document.querySelector("#stiffener").dataset.sought === "true"', null, { timeout: 60_000 }); };
  const drawn = (): Promise<string | null> => part().locator('.bent .sole').getAttribute('points');

  test('of a thickness nothing is known; a rigid one is one step away, and one step back', async () => {
    await part().scrollIntoViewIfNeeded();
    await button('Have a rigid one worked out, right shoe').waitFor();
    expect(await part().getByRole('region', { name: 'stiffener of the right shoe' }).textContent()).toMatch(/Only a thickness is told of it, \d+\.\d mm, so nothing is known of how far it bends\./);
    await button('Have a rigid one worked out, right shoe').click();
    await sought();
    expect([await part().getByRole('table').count(), await part().getByRole('region', { name: 'stiffener of the right shoe' }).getByText(/^Rigid: the ball bends/).count()]).toEqual([1, 1]);
    await page.keyboard.press('ControlOrMeta+z');
    await sought();
    expect([await part().getByRole('table').count(), await button('Have a rigid one worked out, right shoe').isVisible()]).toEqual([0, true]);
  }, 60_000);

  test('how it is laid, bends and what else would do: the same numbers as the command says', async () => {
    await openSample(page, 'market gardener');
    await sought();
    const { stiffener: { below, above }, assessed: { bench: { bend } } } = pack;
    expect([await part().locator('.layup .ply').count(), await part().locator('.layup .core').count()]).toEqual([below.length + above.length, 1]);
    expect(await part().locator('.layup').getAttribute('aria-label')).toBe(`From the last down: ${layerWords(pack, 'mm').map(({ name, thickness, angle, where }) => [name, thickness, ...(angle ? [`fibres at ${angle}`] : []), where].join(', ')).join('; ')}. ${rounded(pack.thickness, 1)} mm together.`);
    // The bench as its card has it, and walking beside it.
    const hangings = benchTestOf(pack)!, loads = await part().locator('.load').evaluateAll((all) => all.map((one) => [...one.children].map(({ textContent }) => textContent)));
    const kg = (value: number): string => `${Number(value.toFixed(2))} kg`, { walking } = pack.assessed;
    expect(loads.map(([name]) => name)).toEqual(['On the bench, finished shoe', 'On the bench, bare pack', 'Walking, where it strains most', 'A stumble on the tip']);
    expect(loads[0]).toEqual([expect.anything(), `bends ${rounded(inDegrees(bend), 2)}° (est.)`, expect.stringContaining(`${rounded(hangings.finished.moment, 1)} N·m: ${kg(hangings.finished.mass)} hung `)]);
    expect(loads[1]).toEqual([expect.anything(), `droops ${rounded(hangings.bare.droop, 2)} mm (est.)`, expect.stringContaining(`${rounded(hangings.bare.moment, 1)} N·m: ${kg(hangings.bare.mass)} hung `)]);
    expect(loads[2]).toEqual([expect.anything(), `bends ${rounded(inDegrees(walking.bend), 2)}° (est.)`, expect.stringContaining(`${rounded(walking.load.moment / 1000, 1)} N·m: `)]);
    expect(await part().locator('.truly:visible').textContent()).toContain(`clamped up to ${rounded(hangings.finished.clampAt, 0)} mm from the heel`);
    const { ways, decides } = waysShown({ sheet: gardener, lengths: 'mm' })[0]!;
    expect(await part().getByRole('table').locator('tbody tr').evaluateAll((rows) => rows.map((row) => [...row.children].map(({ textContent }) => textContent)))).toEqual(ways.map(({ way, numbers }, i) => [way, ...numbers, i === 0 ? '' : 'Take']));
    expect(await part().locator('.along').last().getAttribute('aria-label')).toContain(`most ${rounded(100 * Math.max(...pack.assessed.along.map(({ strain }) => Math.abs(strain))), 2)} %`);
    for (const text of decides) expect(await part().textContent()).toContain(text);
    expect(await part().getByRole('img').evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))).toEqual([expect.any(String), expect.stringMatching(/^Bend stiffness, .* at the ball, most /), expect.stringMatching(/^Strain of the plies in walking, .* at the ball, most /)]);
  }, 60_000);

  test('by keys: the slider draws the bend further, the load is chosen, and what it truly is does not move', async () => {
    const five = await drawn(), said = await part().locator('.truly:visible').textContent();
    await slider().focus();
    await page.keyboard.press('End');
    expect([await slider().getAttribute('aria-valuetext'), await part().locator('.truly:visible').textContent(), await drawn() === five]).toEqual(['10 times', said, false]);
    await page.keyboard.press('Home');
    expect(await slider().getAttribute('aria-valuetext')).toBe('as it is');
    const stumble = button('A stumble on the tip');
    await stumble.focus();
    await page.keyboard.press('Enter');
    expect([await stumble.getAttribute('aria-pressed'), await part().locator('.bent .clamp').count()]).toEqual(['true', 0]);
    expect(await part().locator('.truly:visible').textContent()).toMatch(/^In a stumble on the tip: bends \d\.\d\d° \(est\.\) at the ball, the tip gives way by \d\.\d mm/);
  }, 60_000);

  test('a way is taken with keys, as one step; what it falls short of stands at the part', async () => {
    const before = await stored(), rows = part().getByRole('table').locator('tbody tr'), row = rows.filter({ hasText: 'plies alone' }), way = await row.locator('th').textContent();
    await row.getByRole('button').focus();
    await page.keyboard.press('Enter');
    await sought();
    expect(await part().locator('.laid:visible').textContent().then((laid) => way?.endsWith(`: ${laid?.split(';')[0]}`))).toBe(true);
    expect([await part().locator('.judged:visible .finding.stop').count() > 0, await page.locator('[name="right.order.stiffener.core"]').inputValue()]).toEqual([true, 'none']);
    await page.keyboard.press('ControlOrMeta+z');
    await sought();
    expect([await stored(), await row.locator('th').textContent(), await part().locator('.judged:visible').count(), await page.locator('[name="right.order.stiffener.core"]').inputValue()]).toEqual([before, way, 0, '']);
  }, 60_000);

  test('a search is given up as soon as the sheet is changed, and begun anew when that is shown', async () => {
    await openSample(page, 'market gardener');
    const room = (value: string): Promise<void> => page.locator('[name="right.order.stiffener.thicknessAtMost"]').evaluate((input: HTMLInputElement, value) => { input.value = value; input.dispatchEvent(new Event('input')); input.dispatchEvent(new Event('change')); }, value);
    await room('8.6');
    await page.waitForFunction('document.querySelector("#stiffener").dataset.sought === "false" && document.documentElement.dataset.rested === "true"', null, { timeout: 30_000, polling: 20 });
    const searching = page.workers().find((worker) => worker.url().includes('waysWorker')), closed = searching?.waitForEvent('close', { timeout: 10_000 });
    await room('8.5');
    expect(await closed).toBe(searching);
    await sought();
    expect(await part().getByRole('table').locator('tbody tr').count()).toBeGreaterThan(2);
    await openSample(page, 'market gardener');
    await sought();
  }, 60_000);

  test('how stiff is one choice: degrees take the grade off the sheet, and a grade the degrees, each in one step', async () => {
    const wanted = page.locator('[name="right.order.stiffener.wanted"]'), degrees = page.locator('[name="right.order.stiffener.bendAtMost"]');
    await button('What is wanted of it').click();
    expect([await wanted.inputValue(), await degrees.isVisible()]).toEqual(['rigid', false]);
    await wanted.selectOption({ label: 'a number of degrees' });
    await settled(page);
    expect([await degrees.isVisible(), await degrees.inputValue(), await wanted.inputValue()]).toEqual([true, '1.5', '#']);
    await degrees.fill('');
    expect(await degrees.isVisible()).toBe(true);
    await degrees.pressSequentially('3');
    await settled(page);
    expect([await wanted.inputValue(), await part().locator('.laid:visible').textContent()]).toEqual(['#', expect.stringMatching(/plies|ply/)]);
    await wanted.selectOption('slight flex');
    await settled(page);
    expect([await degrees.isVisible(), await wanted.inputValue()]).toEqual([false, 'slight flex']);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect([await degrees.inputValue(), await wanted.inputValue()]).toEqual(['3', '#']);
    await openSample(page, 'market gardener');
    await sought();
  }, 60_000);

  test('on a phone nothing is cut off, and letters of the pictures can be read', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await sought();
    const smallest = (all: Element[]): number => Math.min(...all.map((text) => {
      const svg = (text as SVGTextElement).ownerSVGElement!;
      return parseFloat(getComputedStyle(text).fontSize) * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    }));
    expect(await part().locator('svg text').evaluateAll(smallest)).toBeGreaterThanOrEqual(11);
    expect(await part().locator('*').evaluateAll((all) => all.filter((one) => one.getClientRects().length > 0 && (one.getBoundingClientRect().right > innerWidth || one.scrollWidth > one.clientWidth + 1) && one instanceof HTMLElement && !/^(inline|contents)/.test(getComputedStyle(one).display)).map((one) => one.className))).toEqual([]);
    expect(await part().locator('svg text').evaluateAll((all) => all.filter((text) => { const a = text.getBoundingClientRect(), b = (text as SVGTextElement).ownerSVGElement!.getBoundingClientRect(); return a.left < b.left - 1 || a.right > b.right + 1; }).map(({ textContent }) => textContent))).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
    await sought();
  }, 60_000);

  test('the form switches between a thickness and what is wanted, with the mouse, and undo brings back all that was told', async () => {
    const before = await stored(), known = page.locator('details', { hasText: 'What is known of it' }).last().locator('select.either');
    await button('What is wanted of it').click();
    expect(await page.evaluate('document.activeElement.name')).toBe('right.order.stiffener.wanted');
    expect(await page.locator('[name="right.order.stiffener"]').isVisible()).toBe(false);
    await known.selectOption({ label: 'its thickness alone' });
    await settled(page);
    expect([await page.locator('[name="right.order.stiffener"]').isVisible(), await page.locator('[name="right.order.stiffener.wanted"]').isVisible(), await part().locator('.layup:visible').count()]).toEqual([true, false, 0]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await sought();
    expect([await page.locator('[name="right.order.stiffener.thicknessAtMost"]').inputValue(), await known.inputValue(), await stored()]).toEqual(['8', 'group', before]);
    // Its thickness as found stays where no more than that is to be told.
    await button('Go by its thickness alone').click();
    await settled(page);
    expect(Number(await page.locator('[name="right.order.stiffener"]').inputValue())).toBeCloseTo(pack.thickness, 1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await sought();
  }, 60_000);

  test('in inches no millimetre is left, and nothing keeps anybody out', async () => {
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('in');
    await sought();
    expect(await part().innerText()).not.toMatch(/\d\s?mm\b/);
    await page.getByRole('combobox', { name: 'lengths shown in' }).selectOption('mm');
    await sought();
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
    const { violations } = await page.evaluate<{ readonly violations: readonly { readonly id: string; readonly impact: string }[] }>(() => (globalThis as unknown as { axe: { run: (host: string, how: object) => never } }).axe.run('#stiffener', { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] }));
    expect([violations, complaints, elsewhere]).toEqual([[], [], []]);
    const small = await part().locator('button:visible, input:visible').evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 44).length);
    expect([small, await part().evaluate((host) => host.scrollWidth - host.clientWidth)]).toEqual([0, 0]);
  }, 60_000);
});
