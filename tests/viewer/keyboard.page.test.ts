import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { weldedStl } from '../../src/geometry/stlMesh.ts';
import type { Mesh } from '../../src/geometry/mesh.ts';
import { mirrored, valueAt, type Sheet } from '../../viewer/keep/sheet.ts';
import { noBrowser, openBench, openPage, settled, type Bench } from './browser.ts';

interface At { readonly name: string; readonly text: string; readonly tag: string; readonly shut: boolean }
const WHERE = `(() => { const at = document.activeElement; return { name: at.getAttribute('name') ?? '', text: (at.ariaLabel ?? at.labels?.[0]?.textContent ?? at.textContent ?? '').trim(), tag: at.tagName, shut: at.tagName === 'SUMMARY' && !at.parentElement.open }; })()`;

/** Tab after Tab until something is reached that is asked for; fails where the page has no such place. */
async function tabTo(page: Page, text: string): Promise<void> {
  for (let i = 0; i < 400; i++) {
    await page.keyboard.press('Tab');
    if ((await page.evaluate<At>(WHERE)).text === text) return;
  }
  throw new Error(`Tab never reaches "${text}"`);
}

/** The sample has its rocker on the right, the blank sheet on the left. */
const sheet = mirrored(JSON.parse(readFileSync('samples/ferry-pilot/sheet.json', 'utf8')) as Sheet);
function typedFor(path: string): string | undefined {
  if (path === 'units') return 'mm';
  const value = valueAt(sheet, path) as { readonly value?: number } | number | string | undefined;
  if (value === undefined) return undefined;
  // A date is typed month, day, year, as the browser's own field asks for it.
  if (path === 'job.date' || path === 'job.prescribed') return String(value).replace(/^(\d+)-(\d+)-(\d+)$/, '$2$3$1');
  return String(typeof value === 'object' ? value.value : value);
}

describe.skipIf(noBrowser)('with keys alone', () => {
  let bench: Bench;
  beforeAll(async () => { bench = await openBench('no solids'); }, 60_000);
  afterAll(async () => { await bench?.close(); });

  test('from an empty sheet to a zip whose solids are whole', async () => {
    const { page, complaints } = await openPage(bench);
    await tabTo(page, 'begin a new sheet');
    await page.keyboard.type('e');
    await page.waitForTimeout(200);
    await settled(page);
    const asked = new Set(await page.locator('.message li').evaluateAll((lines) => lines.map((line) => line.getAttribute('data-path')!)));
    expect(asked.size).toBeGreaterThan(15);
    for (let i = 0; i < 400 && asked.size > 0; i++) {
      await page.keyboard.press('Tab');
      const { name, text, shut } = await page.evaluate<At>(WHERE);
      if (shut) await page.keyboard.press('Enter');
      if (text === 'asked: none') { await page.keyboard.press('Enter'); asked.delete('wearer.risks'); }
      const words = asked.has(name) ? typedFor(name) : undefined;
      if (words !== undefined) { await page.keyboard.type(words); asked.delete(name); }
    }
    expect([...asked]).toEqual([]);
    await page.keyboard.press('Tab');
    await settled(page);
    expect([await page.locator('html').getAttribute('data-shown'), await page.locator('.message').textContent()]).toEqual(['shown', '']);
    for (let left = await page.locator('.finding.stop:not(.taken)').count(); left > 0; left--) {
      await tabTo(page, 'Go on all the same');
      await page.keyboard.press('Enter');
      await tabTo(page, 'your name');
      await page.keyboard.type('Bench hand');
      await tabTo(page, 'why');
      await page.keyboard.type('tried with keys');
      await page.keyboard.press('Enter');
      await settled(page);
      expect(await page.evaluate('document.activeElement.className')).toBe('count');
    }
    await tabTo(page, 'pictures, SVG');
    await page.keyboard.press('Space');
    await tabTo(page, 'Save as one zip');
    const [download] = await Promise.all([page.waitForEvent('download', { timeout: 30_000 }), page.keyboard.press('Enter')]);
    const files = Object.entries(unzipSync(readFileSync(await download.path()))), solids = files.filter(([name]) => name.endsWith('.stl'));
    expect(files.filter(([name]) => name.endsWith('.svg'))).toEqual([]);
    expect(solids.length).toBeGreaterThan(1);
    for (const [name, bytes] of solids) expect([name, openEdges(weldedStl(bytes))]).toEqual([name, 0]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 60_000);
});

/** Edges that are not gone along as often one way as the other: none where the mesh is closed. */
function openEdges({ triangles }: Mesh): number {
  const edges = new Map<string, number>(), add = (edge: string, by: number): void => { edges.set(edge, (edges.get(edge) ?? 0) + by); };
  for (let f = 0; f < triangles.length; f += 3) for (let i = 0; i < 3; i++) {
    const from = triangles[f + i]!, to = triangles[f + (i + 1) % 3]!;
    if (from < to) add(`${from} ${to}`, 1); else add(`${to} ${from}`, -1);
  }
  return [...edges.values()].filter((n) => n !== 0).length;
}
