/**
 * Speed of the bench in Chromium, on the built page.
 *
 * Goals (issue 3): with 200 arbors and all teeth a drag step (solve, update, draw calls) within 4 ms of script at the
 * median and 8 ms at the 95th percentile; 1,000 arbors drag without a pause over 50 ms; memory flat over 10,000 drag
 * steps; first paint of the demo within 1.5 s.
 *
 * Script and the longest task (the first step, the snaps and the release among them) are processor time of the page's
 * thread, as the browser tells it: other programs do not count. Pauses and first paint are times on the clock and grow
 * on a busy machine, so its load is printed beside them. WebGL is drawn by the processor, in threads that compete with
 * the page; with a graphics card they do not.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CDPSession, chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';
import config from '../../build/playwright.config.mts';
import { apart, BenchPage } from '../bench/benchPage.ts';
import { LongestTask } from './longestTask.ts';
import { foldedTrain, longTrain, TRAIN_MODULE } from './longTrain.ts';

const STEPS = 120;
const MANY_STEPS = 10_000;

/** Script run so far, ms, told by the browser. */
async function scriptMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN);
}

const quantile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) * part)] ?? Number.NaN;

/** Pitch on screen from which the bench draws every tooth at full strength, CSS pixels (`teethShown` in its shaders). */
const ALL_TEETH_PX = 9;

type Layout = 'folded' | 'long';

async function openTrain(
  page: Page,
  layout: Layout,
  arbors: number,
  loose: number,
): Promise<{ bench: BenchPage; swings: string }> {
  const bench = new BenchPage(page);
  await page.goto('./');
  const path = join(mkdtempSync(join(tmpdir(), 'bench-')), 'train.json');
  writeFileSync(path, layout === 'folded' ? foldedTrain(arbors, loose) : longTrain(arbors, loose));
  await page.waitForFunction(() => / · /.test(document.title));
  await bench.openFile(path);
  await page.waitForFunction(
    (title) => document.title.includes(title),
    layout === 'folded' ? `Folded train of ${arbors}` : `Long train of ${arbors}`,
  );
  return { bench, swings: `a${arbors - loose}` };
}

/** Places of the pointer round the arbor that swings. */
const circleAbout = ({ x, y }: { x: number; y: number }, index: number): { x: number; y: number } => ({
  x: x + 14 * Math.sin(index / 9),
  y: y + 14 * (1 - Math.cos(index / 9)),
});

async function dragSteps(page: Page, layout: Layout, arbors: number): Promise<string> {
  const { bench, swings } = await openTrain(page, layout, arbors, 5);
  await page.getByRole('slider').first().fill('1');
  if (layout === 'folded') {
    const { scale } = await bench.view();
    const pitch = Math.PI * TRAIN_MODULE * scale;
    if (pitch < ALL_TEETH_PX) throw new Error(`A pitch is ${pitch} px on screen: not all teeth are drawn.`);
  }
  const place = await bench.placeOf(swings);
  const pixel = await bench.pixelOf(place);
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const tasks = await LongestTask.watch(page);
  await page.evaluate(() => {
    const pauses: number[] = [];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) pauses.push(entry.duration);
    }).observe({ type: 'longtask' });
    Object.assign(window, { pauses });
  });
  await page.mouse.move(pixel.x, pixel.y);
  await page.mouse.down();
  await page.mouse.move(pixel.x + 6, pixel.y);
  const script: number[] = [];
  for (let step = 0; step < STEPS; step++) {
    const before = await scriptMs(session);
    const to = circleAbout(pixel, step);
    await page.mouse.move(to.x, to.y);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    script.push((await scriptMs(session)) - before);
  }
  await page.mouse.up();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const longestTask = await tasks.end();
  const pauses = await page.evaluate(() => (window as unknown as { pauses: number[] }).pauses); // set above
  const moved = await bench.placeOnSlip();
  if (!(apart(moved, place) > 0.01)) throw new Error(`${swings} did not move: nothing was timed.`);
  const longest = Math.max(0, ...pauses);
  const name = `${String(arbors).padStart(5)} arbors${layout === 'folded' ? ', all teeth drawn' : ''}`;
  const times = `script ${quantile(script, 0.5).toFixed(2)} ms at the median, ${quantile(script, 0.95).toFixed(2)} ms at the 95th percentile`;
  const onClock = pauses.length > 0 ? `${pauses.length}, the longest ${longest.toFixed(0)} ms` : 'none';
  return `${name}: ${times}; longest task ${longestTask.toFixed(1)} ms; pauses over 50 ms on the clock: ${onClock}; load ${loadNow()}`;
}

const loadNow = (): string => (loadavg()[0] ?? Number.NaN).toFixed(1);

/** Heap after collecting garbage, MB. */
async function heapMb(session: CDPSession): Promise<number> {
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  return usedSize / 2 ** 20;
}

async function memory(page: Page): Promise<string> {
  const { bench, swings } = await openTrain(page, 'long', 200, 5);
  const { x, y } = await bench.pixelOf(await bench.placeOf(swings));
  const session = await page.context().newCDPSession(page);
  const drag = (steps: number): Promise<void> =>
    page.evaluate(
      async ({ x, y, steps }) => {
        const sheet = document.querySelector('[role="application"]');
        if (!(sheet instanceof HTMLElement)) throw new Error('The page has no bench.');
        // Made events have no pointer that could be captured.
        sheet.setPointerCapture = () => undefined;
        const at = { pointerId: 1, button: 0, bubbles: true };
        sheet.dispatchEvent(new PointerEvent('pointerdown', { ...at, clientX: x, clientY: y }));
        for (let step = 0; step < steps; step++) {
          const to = { clientX: x + 6 + 14 * Math.sin(step / 9), clientY: y + 14 * (1 - Math.cos(step / 9)) };
          sheet.dispatchEvent(new PointerEvent('pointermove', { ...at, ...to }));
          if (step % 20 === 0) await new Promise((done) => requestAnimationFrame(done));
        }
        window.dispatchEvent(new Event('blur'));
        sheet.dispatchEvent(new PointerEvent('pointerup', { ...at, clientX: x, clientY: y }));
      },
      { x, y, steps },
    );
  await drag(MANY_STEPS / 10);
  const before = await heapMb(session);
  await drag(MANY_STEPS);
  const after = await heapMb(session);
  return `memory over ${MANY_STEPS} drag steps: ${before.toFixed(1)} MB before, ${after.toFixed(1)} MB after`;
}

async function firstPaint(page: Page): Promise<string> {
  await page.goto('./');
  await page.waitForFunction(() => /Moons/.test(document.title));
  const { paint, demo } = await page.evaluate(() => ({
    paint: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
    demo: performance.now(),
  }));
  return `first paint ${paint.toFixed(0)} ms, the demo stands at ${demo.toFixed(0)} ms after the start of the page`;
}

export async function run(): Promise<void> {
  const configFile = fileURLToPath(new URL('../../build/vite.renderer.config.mts', import.meta.url));
  await build({ configFile, logLevel: 'error' });
  const server = await preview({ configFile, logLevel: 'error', preview: { host: '127.0.0.1', port: 0 } });
  const baseURL = server.resolvedUrls?.local[0] ?? '';
  const options = config.projects?.find(({ name }) => name === 'bench')?.use?.launchOptions ?? {};
  const browser = await chromium.launch(options);
  console.log(`load of the machine over the last minute: ${loadNow()}`);
  try {
    for (const measure of [
      firstPaint,
      (page: Page) => dragSteps(page, 'folded', 200),
      (page: Page) => dragSteps(page, 'long', 1000),
      memory,
    ]) {
      const context = await browser.newContext({ baseURL, viewport: { width: 1440, height: 900 } });
      console.log(await measure(await context.newPage()));
      await context.close();
    }
  } finally {
    await browser.close();
    await server.close();
  }
}
