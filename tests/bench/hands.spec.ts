/** Fingers, pen and trackpad, as the browser hands them on. The scene is our own invention. */
import { type Browser, type CDPSession, expect, type Page, test } from '@playwright/test';
import { apart, BenchPage } from './benchPage.ts';

async function withTouch(browser: Browser): Promise<{ bench: BenchPage; page: Page; input: CDPSession }> {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 1280, height: 840 } });
  const page = await context.newPage();
  const bench = await BenchPage.open(page, 'reel');
  return { bench, page, input: await context.newCDPSession(page) };
}

const finger = ({ x, y }: { x: number; y: number }) => [{ x, y, id: 1, radiusX: 4, radiusY: 4 }];

test('a long press chooses what lies there and opens its menu; the finger that lifts moves nothing', async ({
  browser,
}) => {
  const { bench, page, input } = await withTouch(browser);
  const place = await bench.placeOf('Swing');
  await bench.train.getByRole('button', { name: 'Centre' }).click();
  const at = await bench.pixelOf(place);
  await input.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: finger(at) });
  // A finger is never quite still.
  await input.send('Input.dispatchTouchEvent', {
    type: 'touchMove',
    touchPoints: finger({ x: at.x + 2, y: at.y - 1 }),
  });
  const menu = page.getByRole('menu');
  await expect(menu).toBeVisible();
  await expect(menu).toContainText('Swing');
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Swing');
  await input.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect(menu).toBeVisible();
  await page.keyboard.press('Escape');
  expect(apart(await bench.placeOf('Swing'), place)).toBe(0);
  await page.context().close();
});

test('a finger drags what is loose, and moves the sheet where nothing lies', async ({ browser }) => {
  const { bench, page, input } = await withTouch(browser);
  const place = await bench.placeOf('Swing');
  const from = await bench.pixelOf(place);
  const to = await bench.pixelOf({ x: -place.x * 0.9, y: place.y });
  // All at once: a finger that waits between two of them would ask for the menu.
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: { x: number; y: number }) =>
    input.send('Input.dispatchTouchEvent', { type, touchPoints: at ? finger(at) : [] });
  const onTheWay = [1, 2, 3, 4, 5, 6, 7, 8].map((i) => ({
    x: from.x + ((to.x - from.x) * i) / 8,
    y: from.y + ((to.y - from.y) * i) / 8,
  }));
  await Promise.all([touch('touchStart', from), ...onTheWay.map((at) => touch('touchMove', at)), touch('touchEnd')]);
  await expect(page.getByRole('button', { name: 'undo' })).toBeEnabled();
  expect(apart(await bench.placeOf('Swing'), place)).toBeGreaterThan(5);
  const before = await bench.view();
  const corner = await bench.sheet.boundingBox();
  const empty = { x: (corner?.x ?? 0) + 12, y: (corner?.y ?? 0) + 40 };
  await Promise.all([
    touch('touchStart', empty),
    touch('touchMove', { x: empty.x + 30, y: empty.y + 40 }),
    touch('touchMove', { x: empty.x + 60, y: empty.y + 80 }),
    touch('touchEnd'),
  ]);
  await expect.poll(async () => (await bench.view()).centre.x - before.centre.x).toBeLessThan(-30 / before.scale);
  await page.context().close();
});

test('two fingers on a trackpad move the sheet, pinched they zoom; the wheel of a mouse zooms', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const input = await page.context().newCDPSession(page);
  const at = await bench.pixelOf({ x: 10, y: 5 });
  await page.mouse.move(at.x, at.y);
  const start = await bench.view();
  const scroll = (deltaX: number, deltaY: number, modifiers = 0) =>
    input.send('Input.dispatchMouseEvent', { type: 'mouseWheel', ...at, deltaX, deltaY, modifiers });
  // Slow at first, then fast: one movement of the fingers.
  await Promise.all([4, 12, 60, 90, 14].map((step) => scroll(0, step)));
  await expect.poll(async () => (start.centre.y - (await bench.view()).centre.y) * start.scale).toBeCloseTo(180, 6);
  const panned = await bench.view();
  expect(panned.scale).toBe(start.scale);
  await scroll(25, -10);
  expect((await bench.view()).scale).toBe(start.scale);
  // Ctrl is how the browser tells a pinch; 2 is Ctrl.
  for (const step of [-6, -8, -10]) await scroll(0, step, 2);
  const pinched = await bench.view();
  expect(pinched.scale / start.scale).toBeCloseTo(Math.exp(0.24), 6);
  await page.waitForTimeout(300); // the hand leaves the trackpad for the mouse
  await page.mouse.wheel(0, -120);
  await expect.poll(async () => (await bench.view()).scale / pinched.scale).toBeCloseTo(Math.exp(120 * 0.0016), 6);
});

test('a pen drags what is loose like any pointer, and its rest opens the menu', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const input = await page.context().newCDPSession(page);
  const place = await bench.placeOf('Swing');
  const from = await bench.pixelOf(place);
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', x: number, y: number) =>
    input.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      pointerType: 'pen',
      force: 0.5,
    });
  // All at once: a pen that waits between two of them would ask for the menu.
  await Promise.all([
    pen('mousePressed', from.x, from.y),
    ...[1, 2, 3, 4, 5, 6].map((i) => pen('mouseMoved', from.x - 12 * i, from.y + 3 * i)),
    pen('mouseReleased', from.x - 72, from.y + 18),
  ]);
  await expect(page.getByRole('button', { name: 'undo' })).toBeEnabled();
  const there = await bench.placeOf('Swing');
  expect(apart(there, place)).toBeGreaterThan(5);
  const at = await bench.pixelOf(there);
  await pen('mousePressed', at.x, at.y);
  await expect(page.getByRole('menu')).toContainText('Swing');
  await pen('mouseReleased', at.x, at.y);
});

test('a right press chooses and opens the menu; the menu key keeps what is chosen', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const at = await bench.pixelOf(await bench.placeOf('Middle'));
  await bench.train.getByRole('button', { name: 'Centre' }).click();
  await page.mouse.click(at.x, at.y, { button: 'right' });
  await expect(page.getByRole('menu')).toContainText('Middle');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('menu')).toHaveCount(0);
  await bench.sheet.focus();
  await page.keyboard.press('Shift+F10');
  await expect(page.getByRole('menu')).toContainText('Middle');
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Middle');
});
