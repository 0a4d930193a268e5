/** Everyone can use it: no serious fault found by axe in either look, complete use by keyboard, reduced motion. */
import { expect, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

for (const look of ['Paper', 'Layout blue'] as const) {
  test(`axe finds nothing serious: ${look}`, async ({ page }) => {
    const bench = await BenchPage.open(page, 'reel');
    if (look === 'Layout blue') await page.getByRole('button', { name: look }).click();
    await expect(page.locator('html')).toHaveAttribute('data-look', look === 'Paper' ? 'paper' : 'layoutBlue');
    await bench.train.getByRole('button', { name: 'Middle' }).click();
    for (const face of ['chosen', 'set down', 'keys'] as const) {
      if (face === 'set down') {
        await bench.sheet.focus();
        await page.keyboard.press('p');
        await expect(bench.slip.getByRole('heading', { name: 'Post' })).toBeVisible();
      }
      if (face === 'keys') {
        await page.keyboard.press('Escape');
        await page.keyboard.press('?');
        await expect(page.getByRole('dialog')).toBeVisible();
      }
      expect(await seriousFaults(page), face).toEqual([]);
    }
  });
}

test('an arbor is set down, moved and deleted by keyboard alone', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.sheet.focus();
  await page.keyboard.press('a');
  const slip = bench.slip;
  await slip.getByLabel('Name').fill('Idle');
  await slip.getByLabel('Name').press('Tab');
  await slip.getByLabel('x', { exact: true }).fill('50');
  await slip.getByLabel('x', { exact: true }).press('Enter');
  await slip.getByLabel('y', { exact: true }).fill('1 3/4 in');
  await slip.getByLabel('y', { exact: true }).press('Enter');
  await slip.getByRole('button', { name: 'Set it down' }).press('Enter');
  // 1 3/4 inches are 44.45 mm.
  expect(await bench.placeOf('Idle')).toEqual({ x: 50, y: 44.45 });
  await bench.sheet.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  expect(await bench.placeOf('Idle')).toEqual({ x: 50.1, y: 45.45 });
  await bench.sheet.focus();
  await page.keyboard.press('Delete');
  await expect(bench.train.getByRole('button', { name: 'Idle' })).toHaveCount(0);
});

test('nonsense in a value field says what is accepted, keeps the old value and plants nothing', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const before = await bench.placeOf('Middle');
  const field = bench.slip.getByRole('textbox', { name: 'Distance from Crank', exact: true });
  await field.fill('6o mm');
  expect(await bench.placeOnSlip()).toEqual(before);
  await field.press('Enter');
  await expect(bench.slip.getByRole('alert')).toContainText('12 + 0.35');
  expect(await bench.placeOnSlip()).toEqual(before);
  await field.press('Escape');
  await expect(field).toHaveValue('64.500');
  await expect(page.getByRole('button', { name: 'undo' })).toBeDisabled();
});

test('a file that cannot be read leaves the open movement untouched', async ({ page }, info) => {
  const bench = await BenchPage.open(page, 'reel');
  const path = info.outputPath('broken.json');
  await import('node:fs/promises').then(({ writeFile }) =>
    writeFile(path, '{"format": "depthwright-movement", "version": 2, "arbors": [{}]}'),
  );
  await bench.openFile(path);
  await expect(bench.told).toContainText('cannot be opened');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Kite reel counter');
});

test('in a small window everything in the header stays within it, whatever the movement is called', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('Escape');
  const title = bench.slip.getByLabel('Title', { exact: true });
  await title.fill('A reel counter with a very long name that fits no window of this size');
  await title.press('Tab');
  for (const look of ['Layout blue', 'Paper']) {
    for (const button of await page.getByRole('banner').getByRole('button').all()) {
      const box = await button.boundingBox();
      expect(box && box.x >= 0 && box.x + box.width <= 1024, (await button.textContent()) ?? '').toBe(true);
    }
    await page.getByRole('button', { name: look }).click();
  }
});
