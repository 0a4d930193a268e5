/** What arbors show, what joins them beside depths, and the ± of depths: added, changed and deleted in the slip. */
import { expect, test } from '@playwright/test';
import { BenchPage, modifier } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

test('what an arbor shows: added by its period, told with its error, changed, refused in words, deleted, undone', async ({
  page,
}) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Centre' }).click();
  await bench.slip.getByText('What it shows').click();
  const more = bench.slip.getByLabel('Period of something more to show');
  await more.fill('16');
  await more.press('Enter');
  await expect(bench.slip.getByRole('alert')).toContainText('Should turn once in: found “16”, expected a period');
  await more.fill('16 s');
  await more.press('Enter');
  // 44 teeth turn 60: once in 12 s times 60/44, which is 16.3636… s.
  const shown = bench.slip.getByRole('region', { name: /^Shown:/ });
  await expect(shown).toContainText('16.3636');
  await expect(shown).toContainText('loses');
  await shown.getByLabel('May be off by, ppm').fill('100');
  await shown.getByLabel('May be off by, ppm').press('Enter');
  await expect(shown).toContainText('more than it may be off');
  await shown.getByLabel('Sense wanted').selectOption('clockwise');
  await expect(shown).toContainText('the wrong way: clockwise is wanted');
  await shown.getByLabel('Should turn once in').fill('11/15 turns');
  await shown.getByLabel('Should turn once in').press('Enter');
  await expect(shown).toContainText('exact');
  await shown.getByLabel('What is shown is called').fill('Counter');
  await shown.getByLabel('What is shown is called').press('Enter');
  await expect(bench.slip.getByRole('region', { name: 'Shown: Counter' })).toBeVisible();
  expect(await seriousFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Layout blue' }).click();
  expect(await seriousFaults(page)).toEqual([]);
  await shown.getByRole('button', { name: /^Delete/ }).click();
  await expect(shown).toHaveCount(0);
  await page.keyboard.press(`${modifier}+z`);
  await expect(shown).toHaveCount(1);
});

test('two arbors are joined by a worm, then by an arm, from what is offered', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Crank' }).click();
  await bench.train.getByRole('button', { name: 'Counter pipe' }).click({ modifiers: ['Shift'] });
  await expect(bench.slip).toContainText('2 chosen');
  await bench.slip.getByText('Worm, contrate, arm, pin').click();
  // One start on a wheel of 72, turned once in 12 s: once in 864 s, 14.4 min.
  const worm = bench.slip.getByRole('button', { name: /^Worm on Crank turns .*72/ });
  await expect(worm).toContainText('14.4 min');
  await worm.click();
  await expect(bench.train.getByRole('button', { name: 'Counter pipe' })).toContainText('14.4 min');
  await bench.train.getByRole('button', { name: 'Counter pipe' }).click();
  const joined = bench.slip.getByRole('region', { name: /^Worm on Crank/ });
  await joined.getByLabel('Starts of the worm').fill('2');
  await joined.getByLabel('Starts of the worm').press('Enter');
  await expect(bench.train.getByRole('button', { name: 'Counter pipe' })).toContainText('7.2 min');
  await joined.getByLabel('Hand of the worm').selectOption('left');
  await joined.getByLabel('Starts of the worm').fill('0');
  await joined.getByLabel('Starts of the worm').press('Enter');
  await expect(bench.slip.getByRole('alert')).toContainText('Starts of the worm must be more than 0');
  await joined.getByLabel('Starts of the worm').press('Escape');
  await joined.getByRole('button', { name: /^Delete/ }).click();
  await expect(joined).toHaveCount(0);
  await expect(bench.train.getByRole('button', { name: 'Counter pipe' })).toContainText('not driven');
  await bench.train.getByRole('button', { name: 'Crank' }).click();
  await bench.train.getByRole('button', { name: 'Swing' }).click({ modifiers: ['Shift'] });
  await bench.slip.getByText('Worm, contrate, arm, pin').press('Enter');
  await bench.slip.getByRole('button', { name: 'Arm on Crank carries Swing' }).press('Enter');
  await bench.train.getByRole('button', { name: 'Swing' }).click();
  const arm = bench.slip.getByRole('region', { name: 'Arm on Crank carries Swing' });
  await expect(arm).toBeVisible();
  await page.keyboard.press(`${modifier}+z`);
  await expect(arm).toHaveCount(0);
});

test('the ± of a measured and of a held depth; which of them counts stays as it is', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Middle' }).click();
  const measured = bench.slip.getByRole('textbox', { name: /± of the measured$/ });
  await expect(measured).toHaveValue('0.020');
  await measured.fill('0.05');
  await measured.press('Enter');
  await expect(measured).toHaveValue('0.050');
  await expect(bench.slip.getByRole('radio', { name: 'measured' })).toBeChecked();
  const held = bench.slip.getByRole('textbox', { name: /^Depth .*, held$/ });
  await held.fill('38.5');
  await held.press('Enter');
  const own = bench.slip.getByRole('textbox', { name: /± of the held$/ });
  await own.fill('0.01');
  await own.press('Enter');
  await expect(own).toHaveValue('0.010');
  await expect(measured).toHaveValue('0.050');
  await own.fill('');
  await own.press('Enter');
  await expect(own).toHaveValue('');
});

test('a hand on an arbor is added, sized and deleted; a pipe is fixed to its arbor', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const pipe = bench.train.getByRole('button', { name: 'Counter pipe' });
  await pipe.click();
  await bench.slip.getByText('Hands on it, how it turns').click();
  await bench.slip.getByLabel('Turns', { exact: true }).selectOption({ label: 'with the arbor it rides on' });
  // As its arbor: 12 s times 60/44.
  await expect(pipe).toContainText('16.3636');
  await bench.slip.getByRole('button', { name: 'Add a hand' }).click();
  const reach = bench.slip.getByRole('textbox', { name: 'hand 1, farthest from it' });
  await reach.fill('0');
  await reach.press('Enter');
  await expect(bench.slip.getByRole('alert')).toContainText('farthest from it must be more than 0');
  await reach.fill('31');
  await reach.press('Enter');
  await expect(reach).toHaveValue('31.000');
  expect(await seriousFaults(page)).toEqual([]);
  await bench.slip.getByRole('button', { name: 'Delete hand 1' }).click();
  await expect(reach).toHaveCount(0);
  await bench.slip.getByLabel('Rides on').selectOption({ label: 'no arbor' });
  await expect(pipe).toContainText('not driven');
  await page.keyboard.press(`${modifier}+z`);
  await expect(pipe).toContainText('16.3636');
});
