import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { build, preview, type PreviewServer } from 'vite';

const PLACES = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'];
const place = PLACES.find((one) => existsSync(one));

/** A browser is needed; on a desk without one these tests are left out with a line, under CI they fail. */
export const noBrowser = place === undefined && !process.env.CI;
if (noBrowser) console.log(`No browser at ${PLACES.join(' or ')}: the tests of the bench view are left out.`);

export interface Bench { readonly browser: Browser; readonly address: string; readonly close: () => Promise<void> }

/** Test files run side by side, so each process builds the page for itself, once. */
const outDir = resolve(`dist/viewer-tested-${process.env.VITEST_POOL_ID ?? 1}`);
let built: Promise<unknown> | undefined;
const page = { configFile: 'viewer/vite.config.ts', logLevel: 'error', build: { outDir, emptyOutDir: true } } as const;

/** Solids are drawn by software. The page round them is not put together by way of it too, for that takes many times as long. */
const SOFTWARE = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-gpu-compositing'], NO_SOLIDS = ['--disable-3d-apis'];

/** The built page, served from this machine, and a browser that draws solids in software; one that draws none is much faster. */
export async function openBench(solids: 'solids' | 'no solids' = 'solids'): Promise<Bench> {
  if (place === undefined) throw new Error(`the bench view must be tested in a browser, and there is none at ${PLACES.join(' or ')}`);
  await (built ??= build({ ...page, mode: 'production' }));
  const server: PreviewServer = await preview({ ...page, preview: { port: 0, host: '127.0.0.1' } });
  const browser = await chromium.launch({ executablePath: place, args: [...(solids === 'solids' ? SOFTWARE : NO_SOLIDS), '--no-sandbox'] });
  return { browser, address: server.resolvedUrls!.local[0]!, close: async () => { await browser.close(); await server.close(); } };
}

export interface Watched { readonly page: Page; readonly complaints: readonly string[]; readonly elsewhere: readonly string[] }

/** The browser's own reading back of each frame, since it puts the page together without a card. */
const READ_BACK = /GPU stall due to ReadPixels/;

/** A page that notes what the console complains of and every request that leaves it. */
export async function openPage({ browser, address }: Bench, size = { width: 1040, height: 720 }, more: BrowserContextOptions = {}): Promise<Watched> {
  const context = await browser.newContext({ viewport: size, acceptDownloads: true, ...more }), page = await context.newPage();
  const complaints: string[] = [], elsewhere: string[] = [];
  page.on('console', (line) => { if (['error', 'warning'].includes(line.type()) && !READ_BACK.test(line.text())) complaints.push(line.text()); });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => { if (!request.url().startsWith(address) && !/^(blob|data):/.test(request.url())) elsewhere.push(request.url()); });
  await page.goto(address);
  await settled(page);
  return { page, complaints, elsewhere };
}

/** Until the newest answer is shown, fine. */
export async function settled(page: Page): Promise<void> {
  // What was just typed is asked for in the next turn.
  await page.waitForTimeout(50);
  await page.waitForFunction('["shown", "faults", "troubles"].includes(document.documentElement.dataset.shown) && document.documentElement.dataset.rested === "true"', null, { timeout: 30_000 });
}

export async function openSample(page: Page, name: string): Promise<void> {
  await page.selectOption('[aria-label="begin a new sheet"]', name);
  await page.waitForFunction(`document.querySelector('[aria-label="begin a new sheet"]').value === ''`);
  await page.waitForTimeout(150);
  await settled(page);
}
