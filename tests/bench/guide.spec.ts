/** The guided build: offered at the first visit, done by hand and by the guide, left at any time. */
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';

const guide = (page: Page) => page.getByRole('complementary', { name: 'Guided build' });

async function firstVisit(page: Page): Promise<BenchPage> {
  const bench = new BenchPage(page);
  await page.goto('./');
  await expect(page).toHaveTitle(/ · Depthwright$/);
  return bench;
}

test('it is offered at the first visit and not again', async ({ page }) => {
  await firstVisit(page);
  await expect(guide(page)).toContainText('First time at this bench?');
  await guide(page).getByRole('button', { name: 'Not now' }).click();
  await expect(guide(page)).toHaveCount(0);
  await page.reload();
  await expect(page).toHaveTitle(/ · Depthwright$/);
  await expect(page.getByRole('heading', { level: 1 })).not.toBeEmpty();
  await expect(guide(page)).toHaveCount(0);
});

test('the first steps by hand, the rest by the guide, ending with four planted arbors', async ({ page }) => {
  const bench = await firstVisit(page);
  await guide(page).getByRole('button', { name: 'Build one' }).click();
  await expect(guide(page)).toContainText('Set down the drum');
  await bench.sheet.focus();
  await page.keyboard.press('a');
  const middle = await bench.pixelOf({ x: 0, y: 0 });
  await page.mouse.move(middle.x - 20, middle.y - 12);
  await page.mouse.move(middle.x, middle.y, { steps: 4 });
  await page.mouse.click(middle.x, middle.y);
  await expect(guide(page)).toContainText('Keep it there');
  await bench.slip.getByRole('button', { name: 'Held at its coordinates' }).click();
  await expect(guide(page)).toContainText('A wheel of 60');
  await bench.sheet.focus();
  await page.keyboard.press('w');
  for (const [label, value] of [
    ['Teeth', '60'],
    ['Module', '0.8'],
    ['Lower face at height', '4'],
  ] as const) {
    await bench.slip.getByLabel(label, { exact: true }).fill(value);
    await bench.slip.getByLabel(label, { exact: true }).press('Tab');
  }
  await page.mouse.move(middle.x + 3, middle.y + 2);
  await page.mouse.click(middle.x, middle.y);
  await expect(guide(page)).toContainText('Second: a pinion that meets it');
  await expect(bench.train.getByRole('listitem')).toHaveCount(1);
  const doIt = guide(page).getByRole('button', { name: 'Do it for me' });
  for (let i = 0; i < 20 && (await doIt.isVisible()); i++) await doIt.click();
  await expect(guide(page)).toContainText('A train on four arbors');
  await expect(page.getByRole('region', { name: 'State of the planting' })).toContainText('4 planted');
  await guide(page).getByRole('button', { name: 'Done' }).click();
  await expect(guide(page)).toHaveCount(0);
});

test('opening a file puts the offer away', async ({ page }) => {
  const bench = await firstVisit(page);
  await expect(guide(page)).toContainText('First time at this bench?');
  await bench.openFile(fileURLToPath(new URL('./scenes/reel.json', import.meta.url)));
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Kite reel counter');
  await expect(guide(page)).toHaveCount(0);
});

test('it can be left in the middle', async ({ page }) => {
  await firstVisit(page);
  await guide(page).getByRole('button', { name: 'Build one' }).click();
  await guide(page).getByRole('button', { name: 'Do it for me' }).click();
  await guide(page).getByRole('button', { name: 'Leave' }).click();
  await expect(guide(page)).toHaveCount(0);
  await expect(page.getByRole('status')).toContainText('under the title');
});
