/** The slip: numbers of the movement, of arbors, wheels, posts and rules, edited in place. Scenes are our own. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage, modifier, numberOf } from './benchPage.ts';

/** The movement as it would be saved now. */
async function saved(page: Page): Promise<Record<string, unknown>> {
  const saving = page.waitForEvent('download');
  await page.keyboard.press(`${modifier}+s`);
  return JSON.parse(readFileSync(await (await saving).path(), 'utf8')) as Record<string, unknown>; // just written by the page
}

async function type(bench: BenchPage, label: string, value: string): Promise<void> {
  const field = bench.slip.getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press('Tab');
}

test('title, revision, drive and limits of a movement, from the slip while nothing is chosen', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('Escape');
  await type(bench, 'Title', 'Reel of the west shed');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Reel of the west shed');
  await type(bench, 'Revision', 'C');
  await expect(page.getByLabel('Title block')).toContainText('rev C');
  await bench.slip.getByLabel('Driven by').selectOption({ label: 'Crank' });
  await type(bench, 'Period of the drive', '2,5');
  await bench.slip.getByLabel('Unit of the period').selectOption({ label: 'seconds' });
  await expect(bench.train.getByRole('button', { name: /^.*Crank/ })).toContainText('2.5 s');
  await type(bench, 'Least gap to walls and plates', '1/16 in');
  expect(await saved(page)).toMatchObject({
    title: 'Reel of the west shed',
    revision: 'C',
    drive: { arbor: expect.any(String), period: { value: 2.5, unit: 's' } },
    limits: { wallGap: 1.5875 },
  });
  for (let i = 0; i < 7; i++) await page.keyboard.press(`${modifier}+z`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Kite reel counter');
});

test('sizes and bearings of an arbor, an optional one left open again', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Swing' }).click();
  await type(bench, 'Diameter', '4.2');
  await type(bench, 'End shake', '0.15');
  // Typing one end never moves the other; an end left open is derived.
  const to = await bench.slip.getByLabel('To height').inputValue();
  await type(bench, 'From height', '1');
  await expect(bench.slip.getByLabel('To height')).toHaveValue(to);
  await type(bench, 'From height', '');
  await expect(bench.slip.getByLabel('To height')).toHaveValue(to);
  await type(bench, 'To height', '');
  await expect(bench.slip.getByLabel('To height')).toHaveValue('');
  const before = await bench.slip.getByRole('region', { name: /^Bearing / }).count();
  await bench.slip.getByRole('button', { name: 'Add a bearing' }).click();
  await type(bench, `Bearing ${before + 1}, pivot`, '1.5');
  await type(bench, `Bearing ${before + 1}, hole`, '1.52');
  const { arbors } = (await saved(page)) as { arbors: { name?: string; bearings?: unknown[] }[] };
  const swing = arbors.find(({ name }) => name === 'Swing');
  expect(swing).toMatchObject({ diameter: 4.2, endShake: 0.15 });
  expect(swing).not.toHaveProperty('levels');
  expect(swing?.bearings?.at(-1)).toMatchObject({ pivot: 1.5, bore: 1.52 });
  await bench.slip.getByRole('button', { name: `Delete bearing ${before + 1}` }).click();
  await expect(bench.slip.getByRole('region', { name: /^Bearing / })).toHaveCount(before);
});

test('the ± of a rule, what a wheel was cut to, and the arbor that it goes onto', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Crank' }).click();
  const pm = bench.slip.getByRole('textbox', { name: /^± of the/ }).first();
  await pm.fill('0.02');
  await pm.press('Enter');
  await expect(bench.slip).toContainText('Place good to');
  await pm.fill('');
  await pm.press('Enter');
  await expect(pm).toHaveValue('');
  await bench.sheet.focus();
  await page.keyboard.press(`${modifier}+f`);
  await page.keyboard.type('wheel of 60 on Centre');
  await page.keyboard.press('Enter');
  // Module 0.8 is 31.75 teeth to an inch of diameter: 25.4 / 0.8, by definition.
  await bench.slip.getByLabel('Size of the teeth as').selectOption({ label: 'Diametral pitch' });
  await expect(bench.slip.getByRole('textbox', { name: 'Diametral pitch' })).toHaveValue('31.75');
  await bench.slip.getByText('More of this wheel').click();
  await type(bench, 'Tip diameter as cut', '49.5');
  const tips = bench.slip.locator('dt', { hasText: /^tips$/ }).locator('xpath=following-sibling::dd[1]');
  await expect.poll(async () => numberOf((await tips.textContent()) ?? '')).toBe(49.5);
  // It is in depth with a wheel there: refused in words, and the choice shows what holds.
  const arbor = bench.slip.getByLabel('On the arbor');
  const selected = arbor.locator('option:checked');
  await arbor.selectOption({ label: 'Swing' });
  await expect(bench.told).toContainText('expected');
  await expect(selected).toHaveText('Centre');
  await arbor.selectOption({ label: 'Counter pipe' });
  await expect(bench.slip.getByRole('button', { name: /^on / })).toHaveText('on Counter pipe');
});

test('the number that is offered for a disagreement plants the point when it is entered', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(fileURLToPath(new URL('../fixtures/arcsDoNotReach.json', import.meta.url)));
  const planting = page.getByRole('region', { name: 'State of the planting' });
  await expect(planting).toContainText('contested');
  const [, offered = ''] = /at least ([\d.]+) mm from Escape/.exec((await planting.textContent()) ?? '') ?? [];
  await bench.train.getByRole('button', { name: 'Third arbor' }).click();
  await expect(bench.slip).toContainText('Contested: its rules disagree.');
  const measured = bench.slip.getByRole('textbox', { name: 'Depth with Escape pinion, measured' });
  await measured.fill(offered);
  await measured.press('Enter');
  await expect(planting).not.toContainText('contested');
  await expect(planting).not.toContainText('loose');
  await expect(planting).toContainText('13 planted');
});
