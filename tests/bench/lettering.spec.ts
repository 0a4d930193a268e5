/** Lettering that is painted in patches while something is dragged is the picture that painting all of it gives. */
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';

/** The pixels of the canvas with the lettering. */
const lettering = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    await frame();
    const canvas = document.querySelectorAll('[role="application"] canvas')[1];
    if (!(canvas instanceof HTMLCanvasElement)) throw new Error('The page has no lettering.');
    return canvas.toDataURL();
  });

/** A font that comes in has everything painted anew. */
const paintAll = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.fonts.dispatchEvent(new Event('loadingdone')));

test('patches give the same picture as the whole', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const from = await bench.placeOf('Swing');
  const start = await bench.pixelOf(from);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  const seen = new Set<string>();
  for (const [dx, dy] of [
    [9, 4],
    [16, 12],
    [40, -22],
    [-35, 18],
    [-80, -51],
  ] as const) {
    await page.mouse.move(start.x + dx, start.y + dy, { steps: 4 });
    const inPatches = await lettering(page);
    await paintAll(page);
    expect(await lettering(page)).toBe(inPatches);
    seen.add(inPatches);
  }
  expect(seen.size).toBeGreaterThan(2);
  await page.mouse.up();
});
