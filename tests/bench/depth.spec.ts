/** How a depth runs, in the window: numbers at a typed distance, words with remedies, either wheel driving, a ring. */
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const view = (page: Page) => page.getByRole('region', { name: 'How the depth runs' });
const number = (page: Page, name: string) =>
  view(page).locator('dt', { hasText: name }).locator('xpath=following-sibling::dd[1]');

async function look(page: Page, arbor: string): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'planetShelf');
  await bench.train.getByRole('button', { name: arbor }).click();
  await bench.slip.getByRole('button', { name: 'How it runs' }).click();
  await expect(view(page)).toBeVisible();
  return bench;
}

async function setDistance(page: Page, text: string): Promise<void> {
  const field = view(page).getByLabel('Distance', { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

test('tells shake and pressure angle at a typed distance, and holds it there', async ({ page }) => {
  const bench = await look(page, 'Planet');
  await setDistance(page, '40.2');
  // 20 and 60 teeth, module 1, 20°, 0.2 mm farther apart: 0.14903 mm of backlash, 20.769°. Source: ISO 21771 formulas.
  await expect(number(page, 'Shake along the pitch line')).toHaveText('0.149 mm … 0.149 mm');
  await expect(number(page, 'Pressure angle')).toHaveText('20.77° … 20.77°');
  await expect(number(page, 'Calculated distance')).toHaveText('40.000 mm');
  await view(page).getByRole('button', { name: 'Hold it here' }).click();
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
  expect(await bench.placeOf('Planet')).toEqual({ x: 40.2, y: 0 });
});

test('says that it binds and what would cure it', async ({ page }) => {
  await look(page, 'Planet');
  await setDistance(page, '39.9');
  await expect(view(page).getByText('Binds', { exact: true })).toBeVisible();
  await expect(view(page).getByRole('list', { name: 'What a maker would say' })).toContainText('40.000');
  await setDistance(page, 'near');
  await expect(view(page).getByRole('alert')).not.toBeEmpty();
});

test('either wheel drives, and it can be turned slowly', async ({ page }) => {
  await look(page, 'Planet');
  await expect(view(page)).toContainText('Sun wheel drives');
  await view(page).getByRole('button', { name: 'The other drives' }).click();
  await expect(view(page)).toContainText('Planet wheel drives');
  const wheel = view(page).locator('path.wheel').first();
  const before = await wheel.getAttribute('transform');
  await view(page).getByRole('button', { name: 'Turn slowly' }).click();
  await expect(wheel).not.toHaveAttribute('transform', before ?? '');
});

test('a wheel in its ring: deeper is farther apart', async ({ page }) => {
  await look(page, 'Crank');
  // (60 − 18)/2 modules between the axes. Common practice.
  await expect(number(page, 'Calculated distance')).toHaveText('21.000 mm');
  await setDistance(page, '20.9');
  await expect(view(page).getByText('Binds', { exact: true })).toHaveCount(0);
  await setDistance(page, '21.1');
  await expect(view(page).getByText('Binds', { exact: true })).toBeVisible();
});

test('axe finds nothing serious, and Esc goes back', async ({ page }) => {
  const bench = await look(page, 'Planet');
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
  await expect(bench.sheet).toBeVisible();
});
