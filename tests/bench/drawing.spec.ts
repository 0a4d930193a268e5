/** The drawing itself: it stands after a lost graphics context, it is sharp at two pixels to one, and it pans and zooms. */
import { expect, test } from '@playwright/test';
import { BenchPage, modifier } from './benchPage.ts';

/** Pixels of the line canvas that carry ink. */
async function inked(bench: BenchPage): Promise<number> {
  const shot = await bench.sheet.screenshot();
  return bench.page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const paint = canvas.getContext('2d');
    if (!paint) return -1;
    paint.drawImage(image, 0, 0);
    const { data } = paint.getImageData(0, 0, image.width, image.height);
    let count = 0;
    for (let i = 0; i < data.length; i += 4) {
      if ((data[i] ?? 0) + (data[i + 1] ?? 0) + (data[i + 2] ?? 0) < 450) count++;
    }
    return count;
  }, shot.toString('base64'));
}

test('a lost graphics context is rebuilt', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await expect.poll(() => inked(bench)).toBeGreaterThan(2000);
  const before = await inked(bench);
  await page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const lose = canvas?.getContext('webgl2')?.getExtension('WEBGL_lose_context');
    lose?.loseContext();
    setTimeout(() => lose?.restoreContext(), 50);
  });
  await expect.poll(() => inked(bench), { timeout: 5000 }).toBe(before);
});

test('the wheel zooms about the pointer, dragging the sheet moves it, F fits', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const fitted = await bench.view();
  // Wheel events come on whole pixels.
  const exact = await bench.pixelOf({ x: 30, y: 20 });
  const at = { x: Math.round(exact.x), y: Math.round(exact.y) };
  await page.mouse.move(at.x, at.y);
  await page.mouse.wheel(0, -400);
  await expect.poll(async () => (await bench.view()).scale).toBeGreaterThan(1.5 * fitted.scale);
  const still = await bench.pixelOf({ x: 30, y: 20 });
  // The place was off the whole pixel by this much, and is now by as much as the zoom has grown it.
  const grown = (await bench.view()).scale / fitted.scale;
  expect(still.x - at.x).toBeCloseTo((exact.x - at.x) * grown, 2);
  expect(still.y - at.y).toBeCloseTo((exact.y - at.y) * grown, 2);

  const empty = await bench.pixelOf({ x: 10, y: -30 });
  await page.mouse.move(empty.x, empty.y);
  await page.mouse.down();
  await page.mouse.move(empty.x + 80, empty.y - 40, { steps: 4 });
  await page.mouse.up();
  const moved = await bench.pixelOf({ x: 10, y: -30 });
  expect([moved.x - empty.x, moved.y - empty.y].map(Math.round)).toEqual([80, -40]);

  await bench.sheet.focus();
  await page.keyboard.press('f');
  await expect.poll(() => bench.view()).toEqual(fitted);
});

test('Shift and a frame choose several; they are measured, copied and pasted', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.down('Shift');
  // An empty corner inside the drum to another: around Middle and Post 1.
  await bench.drag({ x: 12, y: 60 }, { x: 60, y: 22 });
  await page.keyboard.up('Shift');
  await expect(bench.slip.getByRole('heading', { name: '2 chosen' })).toBeVisible();
  await expect(bench.slip.getByText('Centres apart')).toBeVisible();
  await bench.sheet.focus();
  await page.keyboard.press(`${modifier}+c`);
  await page.keyboard.press(`${modifier}+v`);
  await expect(bench.slip.getByRole('heading', { name: '2 chosen' })).toBeVisible();
  await expect(bench.train.getByRole('button', { name: 'Middle' })).toHaveCount(2);
  await page.keyboard.press(`${modifier}+z`);
  await expect(bench.train.getByRole('button', { name: 'Middle' })).toHaveCount(1);
});

test('two fingers zoom and move the sheet', async ({ browser }) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 1280, height: 840 } });
  const page = await context.newPage();
  const bench = await BenchPage.open(page, 'reel');
  const before = await bench.view();
  const middle = await bench.pixelOf({ x: 0, y: 0 });
  const touch = await context.newCDPSession(page);
  const fingers = (apart: number) =>
    [-1, 1].map((side, id) => ({ x: middle.x + side * apart, y: middle.y, id, radiusX: 1, radiusY: 1 }));
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(60) });
  for (const apart of [80, 100, 120]) {
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
  }
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect.poll(async () => (await bench.view()).scale / before.scale).toBeCloseTo(2, 1);
  await context.close();
});
