/** How a wheel is cut, in the window: numbers, dividing, arms, the maker's plates, the check-off list, files. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const view = (page: Page) => page.getByRole('region', { name: 'How the wheel is cut' });
const number = (page: Page, name: string) =>
  view(page).getByLabel('Cutting numbers').locator('dt', { hasText: name }).locator('xpath=following-sibling::dd[1]');

async function look(page: Page, arbor: string): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: arbor }).click();
  await page.keyboard.press('k');
  await expect(view(page)).toBeVisible();
  return bench;
}

test('blank, dividing and list of a wheel of 44', async ({ page }) => {
  await look(page, 'Crank');
  // Blank (44 + 2) · 0.8, pitch circle 44 · 0.8. ISO 53 addendum of one module.
  await expect(number(page, 'Blank Ø')).toHaveText('36.800 mm');
  await expect(number(page, 'Pitch circle Ø')).toHaveText('35.200 mm');
  // 40/44 = 10/11: 30 holes on 33. Source: index tables of plate set A (rows derived from 40/N).
  await expect(view(page).getByRole('list', { name: 'Ways to divide' })).toContainText('40:1, simple: 30 holes on 33');
  const list = view(page).getByRole('region', { name: 'Check-off list' });
  await expect(list.getByRole('listitem')).toHaveCount(45);
  // A tooth of 44 is 360/44 = 8.1818° = 8° 10′ 55″ to the second.
  await expect(list.getByRole('listitem').nth(1)).toContainText('8° 10′ 55″');
  await expect(list.getByRole('listitem').last()).toContainText('360° 00′ 00″');
  await expect(view(page)).toContainText('eye protection');
});

test('arms are proposed, put in as one step of undo, and drawn', async ({ page }) => {
  await look(page, 'Crank');
  await expect(view(page).getByRole('img')).toHaveAccessibleName(/0 openings/);
  await view(page).getByRole('button', { name: 'Cut the arms' }).click();
  await expect(view(page).getByRole('img')).toHaveAccessibleName(/4 openings/);
  await view(page).getByLabel('Arms', { exact: true }).fill('5');
  await view(page).getByLabel('Arms', { exact: true }).press('Enter');
  await expect(view(page).getByRole('img')).toHaveAccessibleName(/5 openings/);
  await view(page).getByRole('button', { name: 'Leave it solid' }).click();
  await expect(view(page).getByRole('img')).toHaveAccessibleName(/0 openings/);
});

test('the maker’s own plates count, and are kept for the next time', async ({ page }) => {
  const bench = await look(page, 'Crank');
  await view(page).getByText('My heads and plates').click();
  await view(page).getByLabel('Circles of their plates, a stroke between plates').fill('20 21 / 23');
  await view(page).getByLabel('Plain plates on the spindle').fill('88');
  await view(page).getByLabel('Plain plates on the spindle').press('Tab');
  const ways = view(page).getByRole('list', { name: 'Ways to divide' });
  await expect(ways).toContainText('Direct: every second hole of the 88 circle.');
  await expect(ways).not.toContainText('33');
  await view(page).getByLabel('Change wheels').fill('24 and 32');
  await view(page).getByLabel('Change wheels').press('Tab');
  await expect(view(page).getByRole('alert')).toContainText('"and"');
  await page.keyboard.press('Escape');
  await bench.sheet.focus();
  await page.keyboard.press('k');
  await view(page).getByText('My heads and plates').click();
  await expect(view(page).getByLabel('Plain plates on the spindle')).toHaveValue('88');
});

test('a setting tells how many teeth it gives', async ({ page }) => {
  await look(page, 'Crank');
  const setting = view(page).getByRole('group', { name: 'What a setting gives' });
  await setting.getByLabel('holes').fill('30');
  await setting.getByLabel('on a circle of').fill('33');
  await page.keyboard.press('Enter');
  await expect(view(page)).toContainText('This setting gives 44 teeth.');
});

test('outline and numbers are saved', async ({ page }) => {
  await look(page, 'Crank');
  const files: Record<string, string> = {};
  page.on('download', async (download) => {
    files[download.suggestedFilename()] = readFileSync(await download.path(), 'utf8');
  });
  await view(page)
    .getByRole('button', { name: /Save outline/ })
    .click();
  await expect.poll(() => Object.keys(files).length).toBe(3);
  const text = Object.entries(files).find(([name]) => name.endsWith('cutting.txt'))?.[1] ?? '';
  expect(text).toContain('blank Ø 36.800');
  expect(text).toContain('closes');
  const dxf = Object.entries(files).find(([name]) => name.endsWith('.dxf'))?.[1] ?? '';
  expect(dxf.trimEnd().endsWith('EOF')).toBe(true);
});

test('axe finds nothing serious, and Esc goes back', async ({ page }) => {
  await look(page, 'Crank');
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
});
