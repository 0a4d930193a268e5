/** Finding counts, in the window: one train, several hands, none, a train checked, own periods. */
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const view = (page: Page) => page.getByRole('region', { name: 'Finding counts' });

async function look(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.sheet.focus();
  await page.keyboard.press('n');
  await expect(view(page)).toBeVisible();
  return bench;
}

async function fill(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(values)) await view(page).getByLabel(label, { exact: true }).fill(value);
}

test('finds a known best train and takes it into the movement as one step', async ({ page }) => {
  const bench = await look(page);
  // Four gears of 12 to 60 for 1/6.931: 16 x 19 / (43 x 49) is the only best. E. Sandgren 1990 (from memory; confirmed
  // by exhaustive search).
  await fill(page, {
    'Turns once in': '12 s',
    'must turn once in': '83.172 s',
    Stages: '2',
    'Driving teeth': '12-60',
    'Driven teeth': '12-60',
  });
  await view(page).getByLabel('Name of the hand').fill('Slow hand');
  await view(page).getByRole('button', { name: 'Search' }).click();
  const first = view(page).getByRole('row').nth(1);
  await expect(first).toContainText('6.930921053');
  await expect(first).toContainText(/4[39]\/1[69] x 4[39]\/1[69]/);
  await first.getByRole('button', { name: 'Take it' }).click();
  await expect(view(page)).toHaveCount(0);
  await expect(bench.train.getByRole('button')).toHaveCount(7);
  await expect(bench.train).toContainText('1.386184211 min');
  await page.keyboard.press('Control+z');
  await expect(bench.train.getByRole('button')).toHaveCount(5);
});

test('says that there is none, and what the limits reach', async ({ page }) => {
  await look(page);
  await fill(page, { 'Turns once in': '12 s', 'must turn once in': '100 d', Stages: '2' });
  await view(page).getByRole('button', { name: 'Search' }).click();
  await expect(view(page)).toContainText('None: 2 stages within these limits reach ratios');
  await fill(page, { 'must turn once in': '-3 d', 'Largest prime': 'small' });
  await view(page).getByRole('button', { name: 'Search' }).click();
  await expect(view(page)).toContainText('Period of the last arbor: found "-3 d"');
  await expect(view(page)).toContainText('"small" is no number');
});

test('finds one train for two hands that share a stage', async ({ page }) => {
  const bench = await look(page);
  await view(page).getByRole('button', { name: 'Several hands' }).click();
  await fill(page, {
    'Turns once in': '1 h',
    'Hand 1': 'Twelve',
    'Period of hand 1': '12 h',
    'Hand 2': 'Day',
    'Period of hand 2': '24 h',
  });
  await view(page).getByLabel('Stages of hand 1').selectOption('1');
  await view(page).getByLabel('Stages of hand 2').selectOption('1');
  await view(page).getByRole('button', { name: 'Search' }).click();
  const first = view(page).getByRole('article').first();
  await expect(first).toContainText('Twelve');
  await expect(first.getByText('12, exact')).toBeVisible();
  await expect(first.getByText('24, exact')).toBeVisible();
  await first.getByRole('button', { name: 'Take it' }).click();
  await expect(bench.train.getByRole('button')).toHaveCount(8);
});

test('checks a typed train against a typed target, digit by digit', async ({ page }) => {
  await look(page);
  await view(page).getByRole('button', { name: 'Check a train' }).click();
  // 269/10 x 26/9 x 94/20 is 164359/450, the year of 365 d 5 h 48 min 48 s exactly. R. Willis, Principles of Mechanism, 1841.
  await view(page).getByLabel('Train').fill('269/10 x 26/9 x 94/20');
  await view(page).getByLabel('against').fill('24 h to 31556928 s');
  await view(page).getByRole('button', { name: 'Check it' }).click();
  await expect(view(page)).toContainText('164359/450 is exactly');
  await view(page).getByLabel('against').fill('365.25');
  await view(page).getByRole('button', { name: 'Check it' }).click();
  await expect(view(page).locator('dd').last()).toHaveText('4');
});

test('lists periods with their sources, and the maker’s own', async ({ page }) => {
  await look(page);
  await view(page).getByRole('button', { name: 'Periods' }).click();
  const synodic = view(page).getByRole('row').filter({ hasText: 'synodicMonth' });
  await expect(synodic).toContainText('29.530588853 d');
  const own = view(page).getByRole('form', { name: 'Own period' });
  await own.getByLabel('Short name').fill('marketWeek');
  await own.getByLabel('Name', { exact: true }).fill('Market week');
  await own.getByLabel('Value').fill('8');
  await own.getByRole('button', { name: 'Add it' }).click();
  await expect(own.getByRole('alert')).toContainText('source');
  await own.getByLabel('Source').fill('our own example');
  await own.getByRole('button', { name: 'Add it' }).click();
  await expect(view(page).getByRole('row').filter({ hasText: 'marketWeek' })).toContainText('8 d');
  await view(page).getByRole('button', { name: 'One train' }).click();
  await fill(page, { 'Turns once in': '12 h', 'must turn once in': 'marketWeek', Stages: '1-2' });
  await view(page).getByRole('button', { name: 'Search' }).click();
  await expect(view(page)).toContainText('the best is 16 = 16, exact');
});

test('axe finds nothing serious in any part, and Esc goes back', async ({ page }) => {
  await look(page);
  for (const part of ['One train', 'Several hands', 'Check a train', 'Periods']) {
    await view(page).getByRole('button', { name: part }).click();
    expect(await seriousFaults(page)).toEqual([]);
  }
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
});
