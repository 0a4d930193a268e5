/** Room between parts in the window: findings and their cures, safe places, plantings, the trial, gaps and end shake. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const fixture = (name: string): string => fileURLToPath(new URL(`../fixtures/${name}.json`, import.meta.url));
const demo = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}.json`, import.meta.url));
const findings = (page: Page) => page.getByRole('region', { name: 'Findings' });

async function opened(page: Page, path: string): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(path);
  await expect(page.getByRole('heading', { level: 1 })).not.toContainText('Reel');
  return bench;
}

async function fromMenu(page: Page, words: string): Promise<void> {
  await page.getByRole('button', { name: /movement menu/ }).click();
  await page.getByRole('menuitem', { name: words }).click();
}

test('a finding is shown, cured by the remedy that is offered, and undone', async ({ page }) => {
  await opened(page, fixture('pillarFoulsWheel'));
  const found = findings(page).getByRole('button', {
    name: /Upper moon wheel and Pillar upper right foul by 0\.905 mm/,
  });
  const remedy = findings(page).getByRole('button', { name: /^Turn Pillar upper right by \+1\d\.\d° about/ });
  // Tried while the window stood idle: told with the finding, and there when the finding is chosen.
  await expect(remedy).toBeVisible({ timeout: 15_000 });
  await remedy.click();
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  await page.keyboard.press('Control+z');
  await found.click();
  await expect(found).toHaveAttribute('aria-pressed', 'true');
  const ask = findings(page).getByRole('button', { name: 'Remedies' });
  // The button goes by itself when the cures are found first.
  await expect(async () => {
    if (await ask.isVisible()) await ask.click({ timeout: 1000 });
    await expect(remedy).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 30_000 });
  expect(await seriousFaults(page)).toEqual([]);
  await remedy.click();
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  await page.keyboard.press('Control+z');
  await expect(found).toBeVisible();
});

test('an accepted finding goes, is taken back, and comes back by itself when the gap changes', async ({ page }) => {
  const bench = await opened(page, fixture('pillarFoulsWheel'));
  const found = findings(page).getByRole('button', { name: /Pillar upper right foul/ });
  await found.click();
  const accept = async () => {
    await findings(page).getByRole('button', { name: 'Accept…' }).click();
    await expect(findings(page).getByRole('button', { name: 'Accept', exact: true })).toBeDisabled();
    await findings(page).getByLabel('Reason').fill('the pillar is filed away there');
    await page.keyboard.press('Enter');
    await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  };
  await accept();
  await fromMenu(page, 'Gaps and end shake');
  const accepted = page.getByRole('region', { name: 'Accepted' });
  await expect(accepted).toContainText('the pillar is filed away there');
  await accepted.getByRole('button', { name: /^Take back/ }).click();
  await page.keyboard.press('Escape');
  await expect(found).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  // A thicker pillar is another gap, and another matter.
  await bench.tap({ x: 56, y: 62 });
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Pillar upper right');
  await bench.slip.getByLabel('Diameter').fill('8.5');
  await page.keyboard.press('Enter');
  await expect(findings(page)).toContainText(/Pillar upper right foul by 1\.155 mm/);
});

test('where a loose part is safe is drawn and told', async ({ page }) => {
  const bench = await opened(page, fixture('looseStud'));
  await bench.train.getByRole('button', { name: 'Minute-wheel stud' }).click();
  await expect(page.getByText('The green band shows where Minute-wheel stud clears everything.')).toBeVisible();
  await expect(page.locator('svg path.band').first()).toBeAttached();
  await page.keyboard.press('Escape');
  await expect(page.locator('svg path.band')).toHaveCount(0);
});

test('a post on its circle is slid to where it clears everything, from the menu', async ({ page }) => {
  const bench = await opened(page, fixture('pillarFoulsWheel'));
  await expect(findings(page)).toContainText('foul by 0.905 mm');
  const corner = { x: 56, y: 62 };
  await bench.tap(corner);
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Pillar upper right');
  await expect(page.locator('svg path.band').first()).toBeAttached();
  const pixel = await bench.pixelOf(corner);
  await page.mouse.click(pixel.x, pixel.y, { button: 'right' });
  await page.getByRole('menuitem', { name: 'Slide to a safe place' }).click();
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  const undo = page.getByRole('button', { name: 'undo' });
  await undo.click();
  await expect(findings(page)).toContainText('foul by 0.905 mm');
  await expect(undo).toBeDisabled();
});

test('slower checks come when the window is idle', async ({ page }) => {
  await opened(page, fixture('mixedModules'));
  // The contact of every pair is asked in a worker, a moment after the last change.
  await expect(findings(page)).toContainText('the pitches of Callisto driver and Callisto wheel differ', {
    timeout: 20_000,
  });
});

test('plantings are searched with parts held still, stopped, shown as pictures, and taken as one step', async ({
  page,
}) => {
  const bench = await opened(page, fixture('looseStud'));
  const before = await bench.placeOf('Minute-wheel stud');
  await fromMenu(page, 'Find a planting');
  const view = page.getByRole('region', { name: 'Finding a planting' });
  await expect(view.getByRole('checkbox', { name: 'Minute-wheel stud' })).not.toBeChecked();
  await view.getByRole('button', { name: 'Search' }).click();
  const take = view.getByRole('button', { name: 'Take planting 1' });
  await expect(take).toBeVisible({ timeout: 60_000 });
  await expect(view.getByRole('img').first()).toHaveAttribute('aria-label', /^Planting 1\. Every gap is kept/);
  // The plates of the going train are straight-sided: their outlines are in the picture.
  await expect(view.getByRole('img').first().locator('path.plate')).toHaveCount(2);
  expect(await seriousFaults(page)).toEqual([]);
  await take.click();
  await expect(view).toHaveCount(0);
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  const after = await bench.placeOf('Minute-wheel stud');
  // Still at its depth from the dial centre: the search keeps every rule.
  expect(Math.hypot(after.x, after.y)).toBeCloseTo(Math.hypot(before.x, before.y), 2);
  await page.keyboard.press('Control+z');
  expect(await bench.placeOf('Minute-wheel stud')).toEqual(before);
});

test('the trial tells whether the train runs and how far arbors lean; it can be stopped', async ({ page }) => {
  await opened(page, demo('moons-of-jupiter'));
  await fromMenu(page, 'Does it run');
  const view = page.getByRole('region', { name: 'Trial of the train' });
  await view.getByLabel('Turns of the drive').fill('50');
  await view.getByRole('button', { name: 'Try it' }).click();
  await expect(view.getByRole('progressbar', { name: 'Turned' })).toBeVisible();
  await view.getByRole('button', { name: 'Stop' }).click();
  await expect(view.getByRole('progressbar')).toHaveCount(0);
  await view.getByLabel('Turns of the drive').fill('0.3');
  await view.getByRole('button', { name: 'Try it' }).click();
  await expect(view.getByRole('status')).toContainText(/^It runs: 0\.4\d turns of Winding spindle/, {
    timeout: 60_000,
  });
  // 43 teeth into 86: half a turn, the other way.
  const day = view.getByRole('row').filter({ hasText: 'Day arbor' });
  await expect(day.getByRole('cell').first()).toHaveText('−0.50000');
  await expect(day).toContainText('°');
  await expect(view.getByRole('listitem').first()).toContainText('weight');
  expect(await seriousFaults(page)).toEqual([]);
});

test('the trial of a depth that is too close names the pair, and shows the place', async ({ page }, info) => {
  // 48 into 12 cycloidal, 0.3 module too close: it binds, which the contact of the true teeth tells as well.
  const bearings = [-5, 8].map((at) => ({ at, bore: 1.02, pivot: 1, length: 2 }));
  const wheel = { size: { module: 1 }, form: 'cycloidal', level: 0, thickness: 2 };
  const path = info.outputPath('tooClose.json');
  const movement = {
    format: 'depthwright-movement',
    version: 2,
    title: 'A tight depth',
    arbors: [0, 1, 2].map((i) => ({ id: `A${i}`, name: `Arbor ${i}`, at: [i * 29.7, 0], diameter: 2, bearings })),
    wheels: [
      { ...wheel, id: 'w', name: 'Wheel', arbor: 'A0', teeth: 48 },
      { ...wheel, id: 'p', name: 'Pinion', arbor: 'A1', teeth: 12 },
    ],
    rules: [
      ...[0, 1, 2].map((i) => ({ id: `h${i}`, kind: 'held', point: `A${i}`, at: [i * 29.7, 0] })),
      { id: 'd', kind: 'depth', wheels: ['w', 'p'], use: 'held', held: 29.7 },
    ],
  };
  writeFileSync(path, JSON.stringify(movement));
  const bench = await opened(page, path);
  await fromMenu(page, 'Does it run');
  const view = page.getByRole('region', { name: 'Trial of the train' });
  await view.getByRole('button', { name: 'Try it' }).click();
  await expect(view.getByRole('status')).toContainText(/^It does not run: /, { timeout: 60_000 });
  await expect(view).toContainText(/It stops at Wheel and Pinion, the drive at −?\d+\.\d+°\./);
  await view.getByRole('button', { name: 'Show the place' }).click();
  await expect(view).toHaveCount(0);
  // Both arbors of the pair are chosen and in sight, the third is not.
  for (const name of ['Arbor 0', 'Arbor 1']) {
    await expect(bench.train.getByRole('button', { name })).toHaveAttribute('aria-pressed', 'true');
  }
  await expect(bench.train.getByRole('button', { name: 'Arbor 2' })).not.toHaveAttribute('aria-pressed', 'true');
  const box = await bench.sheet.boundingBox();
  for (const x of [0, 29.7]) {
    const pixel = await bench.pixelOf({ x, y: 0 });
    expect(pixel.x).toBeGreaterThan(box?.x ?? Number.NaN);
    expect(pixel.x).toBeLessThan((box?.x ?? 0) + (box?.width ?? Number.NaN));
  }
});

test('two wheels of one axis at one level are told by what their levels share, and one press cures it', async ({
  page,
}) => {
  await opened(page, fixture('sharedLevel'));
  await expect(findings(page)).toContainText(
    'Day wheel and Day driver stand in each other: their levels overlap by 2.000 mm.',
  );
  await findings(page)
    .getByRole('button', { name: /^Move Day wheel and Crank wheel up by 2\.980 mm/ })
    .click({ timeout: 20_000 });
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  await page.keyboard.press('Control+z');
  await expect(findings(page)).toContainText('their levels overlap by 2.000 mm');
});

test('least gaps and tolerances are set where the stacks are told', async ({ page }) => {
  await opened(page, demo('going-train'));
  await fromMenu(page, 'Gaps and end shake');
  const view = page.getByRole('region', { name: 'Gaps and end shake' });
  const row = (name: string) =>
    view.getByRole('region', { name: 'End shake' }).getByRole('row').filter({ hasText: name });
  // One length of ±0.02 and plates of ±0.05 leave 0.2 − 0.07 at worst.
  await expect(row('Pallet arbor')).toContainText('0.130 to 0.270');
  await expect(row('Hour pipe')).toContainText('Collar on Cannon pipe');
  await view.getByLabel('± of the distance of the plates').fill('0.15');
  await page.keyboard.press('Enter');
  await expect(row('Pallet arbor')).toContainText('0.030 to 0.370');
  await view.getByLabel('Least gap side by side').fill('8');
  await page.keyboard.press('Enter');
  await expect(findings(page)).not.toContainText('Nothing fouls, nothing is too close.');
  await expect(findings(page).getByRole('listitem').first()).toContainText('wanted 8.000 mm');
  await page.getByRole('button', { name: 'undo' }).click();
  await expect(findings(page)).toContainText('Nothing fouls, nothing is too close.');
  await view.getByRole('button', { name: 'Add a pair of kinds' }).click();
  await view.getByLabel('First kind of pair 1').selectOption('wheel');
  await view.getByLabel('Second kind of pair 1').selectOption('arbor');
  await view.getByLabel('Gap side by side of wheel and arbor').fill('9');
  await page.keyboard.press('Enter');
  await expect(findings(page).getByRole('listitem').first()).toContainText('wanted 9.000 mm');
  await expect(view.getByRole('region', { name: 'Taking apart' }).getByRole('listitem').first()).not.toBeEmpty();
  for (const look of ['Layout blue', 'Paper']) {
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole('button', { name: look }).click();
  }
  // Esc leaves a field first, then the view.
  await view.getByLabel('Least gap one above the other').focus();
  await page.keyboard.press('Escape');
  await expect(view).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(view).toHaveCount(0);
});
