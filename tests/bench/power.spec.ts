/** What drives the movement, in the window: weight and spring with cautions, torques, pendulum, pallets. */
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const view = (page: Page) => page.getByRole('region', { name: 'What drives it' });

async function look(page: Page): Promise<void> {
  const bench = new BenchPage(page);
  await BenchPage.cameBefore(page);
  await page.goto('./');
  await bench.openFile(fileURLToPath(new URL('../../demo-data/going-train.json', import.meta.url)));
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Going train');
  await page.keyboard.press('Shift+w');
  await expect(view(page)).toBeVisible();
}

test('a weight: torque at the drum and at every arbor, run time, cautions', async ({ page }) => {
  await look(page);
  for (const [label, value] of [
    ['Weight with its pulley', '2'],
    ['Drum Ø', '48'],
    ['Cord Ø', '2'],
    ['Fall', '1570.796'],
    ['Parts of cord that carry it', '1'],
    ['Lost in the pulley', '0'],
    ['Lost in each depth', '0'],
    ['Lost in each arbor’s pivots', '0'],
  ] as const) {
    await view(page).getByLabel(label).fill(value);
    await view(page).getByLabel(label).press('Tab');
  }
  // 2 kg · 9.80665 m/s² · 25 mm = 490.3 N·mm; 1570.8 mm are ten turns of π · 50 mm, each 12 h. Statics of the pulley.
  await expect(view(page)).toContainText('10.00 turns of the drum');
  await expect(view(page)).toContainText('runs 120.00 h');
  await expect(view(page).getByRole('row').filter({ hasText: 'Great arbor' })).toContainText('490.3');
  // An arbor twelve times as fast has a twelfth of the torque.
  await expect(view(page).getByRole('row').filter({ hasText: 'Centre arbor' })).toContainText('40.86');
  await expect(view(page)).toContainText('A falling weight can hurt');
  await view(page).getByLabel('Weight with its pulley').fill('-2');
  await view(page).getByLabel('Weight with its pulley').press('Enter');
  await expect(view(page)).toContainText('Weight with its pulley: found −2');
});

test('a spring, with its own cautions', async ({ page }) => {
  await look(page);
  await view(page).getByRole('button', { name: 'Spring' }).click();
  await expect(view(page)).toContainText('each turn wound adds');
  await expect(view(page)).toContainText('A wound mainspring holds enough energy to injure');
  await view(page).getByLabel('Barrel arbor Ø').fill('60');
  await view(page).getByLabel('Barrel arbor Ø').press('Enter');
  await expect(view(page)).toContainText('Barrel arbor Ø');
});

test('pendulum and pallets for the train’s escape wheel', async ({ page }) => {
  await look(page);
  await view(page).getByLabel('Escape wheel').selectOption('Escape wheel');
  await view(page).getByLabel('Swing to either side').fill('0');
  await view(page).getByLabel('Swing to either side').press('Enter');
  // The seconds pendulum at standard gravity: 9.80665/π² m. Source: the law of the simple pendulum.
  await expect(view(page)).toContainText('3600.000 beats an hour');
  await expect(view(page)).toContainText('993.621 mm to the centre of oscillation');
  // 30 teeth over 7½ are 90°. Common practice.
  await expect(view(page)).toContainText('90.000° apart');
});

test('axe finds nothing serious, and Esc goes back', async ({ page }) => {
  await look(page);
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(view(page)).toHaveCount(0);
});
