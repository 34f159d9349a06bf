// What the bench view costs in a browser: node tests/bench/view.mjs (npm run bench runs it last).
// From a key pressed on a pin of the drawing until drawing, numbers, checks and solids of the new shoe are there.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';

const place = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find((one) => existsSync(one));
if (!place) { console.log('\nThe bench view: no browser here, so it was not measured.'); process.exit(0); }
await build({ configFile: 'viewer/vite.config.ts', mode: 'production', logLevel: 'error' });
const server = await preview({ configFile: 'viewer/vite.config.ts', preview: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
const browser = await chromium.launch({ executablePath: place, args: ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--no-sandbox', '--js-flags=--expose-gc'] });
const address = server.resolvedUrls.local[0], page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
const loaded = new Set();
page.on('response', (response) => loaded.add(new URL(response.url()).pathname));
await page.goto(address);
await page.waitForFunction('document.documentElement.dataset.shown === "shown"');
const first = await page.evaluate('performance.getEntriesByName("first-contentful-paint")[0]?.startTime');
const drawn = await page.evaluate('performance.now()');
await page.waitForTimeout(1500);

const ofBuild = (path) => { const file = join('dist/viewer', path === '/' ? 'index.html' : path); return existsSync(file) && statSync(file).isFile() ? gzipSync(readFileSync(file)).length : 0; };
const kilobytes = [...loaded].reduce((sum, path) => sum + ofBuild(path), 0) / 1000;
console.log(`\nThe bench view: ${kilobytes.toFixed(0)} kB gzipped until the first shoe stands there (wanted: under 350), first paint after ${first?.toFixed(0)} ms, shoe drawn after ${drawn.toFixed(0)} ms`);

/**
 * Steps of one pin by the arrow keys, wall times in ms. With a pause the page has painted before the next step: drawing the
 * solid in software, which takes all cores here and is no script of ours, is not waited for.
 */
const drag = (label, steps, pause = 0) => page.evaluate(async ([name, count, ms]) => {
  const root = document.documentElement, pin = document.querySelector(`.pin[aria-label="${name}"]`), times = [];
  const shown = () => new Promise((done) => {
    const watch = new MutationObserver(() => { if (root.dataset.shown !== 'working') { watch.disconnect(); done(performance.now()); } });
    watch.observe(root, { attributes: true, attributeFilter: ['data-shown'] });
  });
  for (let i = 0; i < count; i++) {
    await new Promise((next) => requestAnimationFrame(() => setTimeout(next, ms)));
    const until = shown(), then = performance.now();
    performance.mark('a step of the pin');
    pin.dispatchEvent(new KeyboardEvent('keydown', { key: Math.floor(i / 40) % 2 ? 'ArrowLeft' : 'ArrowRight', bubbles: true }));
    times.push(await until - then);
  }
  return times;
}, [label, steps, pause]);

const share = (times, part) => [...times].sort((a, b) => a - b)[Math.floor(times.length * part)];
const inWords = (times) => `half under ${share(times, 0.5).toFixed(1)} ms, 95 of 100 under ${share(times, 0.95).toFixed(1)} ms`;
const open = async (sample) => { await page.selectOption('[aria-label="begin a new sheet"]', sample); await page.waitForTimeout(1500); };
const heap = async () => { await page.waitForTimeout(600); return page.evaluate(() => { globalThis.gc?.(); return performance.memory.usedJSHeapSize / 1e6; }); };

/** What each thread did meanwhile: the events of a name on the threads whose own name begins so, in order. */
async function traced(act) {
  const session = await browser.newBrowserCDPSession(), events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  await session.send('Tracing.start', { traceConfig: { includedCategories: ['devtools.timeline', 'blink.user_timing'] }, transferMode: 'ReportEvents' });
  await act();
  const ended = new Promise((done) => session.once('Tracing.tracingComplete', done));
  await session.send('Tracing.end');
  await ended;
  const threads = new Map(events.filter(({ name }) => name === 'thread_name').map(({ pid, tid, args }) => [`${pid} ${tid}`, args.name]));
  const on = (thread, names) => events.filter(({ ph, name, pid, tid }) => ph === 'X' && names.includes(name) && (threads.get(`${pid} ${tid}`) ?? '').startsWith(thread)).sort((a, b) => a.ts - b.ts);
  return { events, on };
}

/**
 * How long our own script ran for each step, by the clock of its thread, ms: the page's for the key, the worker's for the
 * shoe, the page's for the answer, one after the other. What the browser lays out and paints is not in it, nor is waiting.
 */
async function scriptOf(act) {
  const { events, on } = await traced(act);
  const page = on('CrRendererMain', ['HandlePostMessage']), keys = on('CrRendererMain', ['EventDispatch']).filter(({ args }) => args.data?.type === 'keydown'), worker = on('DedicatedWorker', ['HandlePostMessage']);
  // The answer is taken up before the worker has quite done with the question.
  const after = (list, { ts }) => list.find((event) => event.ts > ts);
  return events.filter(({ name }) => name === 'a step of the pin').map((step) => {
    const key = after(keys, step), asked = after(worker, step), told = asked && after(page, asked);
    return key && told ? (key.tdur + asked.tdur + told.tdur) / 1000 : NaN;
  }).filter(Number.isFinite);
}

console.log('From a step of the apex to drawing, checks and solids of the new shoe');
for (const sample of ['market gardener', 'ferry pilot', 'baker']) {
  await open(sample);
  await drag('right apex', 150);
  let wall = [];
  const script = await scriptOf(async () => { wall = await drag('right apex', 200, 100); });
  console.log(`  ${sample.padEnd(16)} our own script ${inWords(script)} (wanted: 16); by the clock on the wall ${inWords(wall)}`);
}
await page.evaluate(() => document.getElementById('rolling').scrollIntoView());
await page.waitForSelector('.lane .body');
await page.getByRole('button', { name: 'Play', exact: true }).click();
const frames = (await traced(() => page.waitForTimeout(8000))).on('CrRendererMain', ['FireAnimationFrame']).map(({ tdur }) => tdur / 1000);
await page.getByRole('button', { name: 'Hold', exact: true }).click();
console.log(`  a frame of rolling, two shoes: our own script ${inWords(frames)} (wanted: 8), ${frames.length} frames in 8 s`);
await page.evaluate(() => window.scrollTo(0, 0));
const before = await heap();
await drag('right apex', 500);
const between = await heap();
await drag('right apex', 500);
console.log(`  memory of the page: ${before.toFixed(1)} MB, after 500 steps ${between.toFixed(1)} MB, after 1,000 ${(await heap()).toFixed(1)} MB`);
await browser.close();
await server.close();
