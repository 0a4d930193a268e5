/** Sheets, steps, readings, changes, errors and fits in the window, on the tests' own scene. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';

const DEMO = fileURLToPath(new URL('../../demo-data/tide-dial.json', import.meta.url));

async function openDemo(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(DEMO);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Tide dial');
  return bench;
}

test('sheets: a page is previewed as it is printed; paper and correction change it; all is written with PDF and one zip', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openDemo(page);
  await page.getByRole('button', { name: 'Sheets', exact: true }).click();
  const sheets = page.getByRole('region', { name: 'Sheets' });
  await expect(sheets.getByText(/Page 1 of 2, A4/)).toBeVisible({ timeout: 30_000 });
  const picture = sheets.getByRole('img');
  await expect(picture).toBeVisible();
  const size = () => picture.evaluate((img: HTMLImageElement) => img.naturalHeight / img.naturalWidth);
  await expect.poll(size).toBeCloseTo(Math.SQRT2, 2);
  await sheets.getByLabel('Paper').selectOption('Letter');
  await expect(sheets.getByText(/Letter/).last()).toBeVisible();
  await expect.poll(size).toBeCloseTo(11 / 8.5, 2);

  await sheets.getByText('My printer is not true').click();
  await sheets.getByLabel('X bar measured').fill('5.9');
  await sheets.getByLabel('Y bar measured').fill('150');
  await sheets.getByRole('button', { name: 'Correct for it' }).click();
  await expect(sheets.getByText(/X bar:.*150\.000 mm long/)).toBeVisible();
  await sheets.getByLabel('X bar measured').fill('149.4');
  await sheets.getByRole('button', { name: 'Correct for it' }).click();
  await expect(sheets.getByText(/corrected for your printer/)).toBeVisible();

  const zip = page.waitForEvent('download');
  await sheets.getByRole('button', { name: /one zip/ }).click();
  const handed = await zip;
  expect(handed.suggestedFilename()).toBe('tide-dial-handover.zip');
  // A zip file begins with these two letters (its published format).
  expect(
    readFileSync(await handed.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');

  await sheets.getByRole('button', { name: /other ways/ }).click();
  await sheets.getByLabel('Way').selectOption('rotary');
  await expect(sheets.getByText(/Rotary table 90:1/)).toBeVisible();
  await sheets.getByLabel('Turns of the handle').selectOption('40:1');
  await expect(sheets.getByText(/Rotary table 40:1/)).toBeVisible();
});

test('steps: with more room, by keys; a tick is undone; another datum; carried to the other plate', async ({
  page,
}) => {
  const bench = await openDemo(page);
  await page.getByRole('button', { name: 'Steps', exact: true }).click();
  const steps = page.getByRole('region', { name: 'Marking-out steps' });
  await expect(bench.train).toBeHidden();
  await steps.getByText('Step 1 of').click();
  await page.keyboard.press('PageDown');
  await expect(steps.getByText(/Step 2 of \d+$/)).toBeVisible();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('Enter');
  await expect(steps.getByText(/Step 2 of/)).toBeVisible();
  await page.keyboard.press('PageUp');
  await expect(steps.getByText(/ticked off/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(steps.getByText(/ticked off/)).toBeHidden();

  await steps.getByLabel('Datum').selectOption('pair');
  await expect(steps.getByText(/the base line points from it to/)).toBeVisible();
  for (const button of await steps.getByRole('button').all()) {
    expect((await button.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44);
  }
  await steps.getByRole('button', { name: 'Carry to another plate' }).click();
  await expect(steps.getByText(/before they come apart/)).toBeVisible();
});

test('a reading is kept, used in one action, its consequences shown, undone; a slip of unit is asked about', async ({
  page,
}) => {
  const bench = await openDemo(page);
  await bench.sheet.focus();
  await page.keyboard.press('Shift+R');
  const made = page.getByRole('region', { name: 'As made' });
  const row = made.getByRole('row', { name: /Day arbor 44 : 84 Tide arbor/ });
  await row.getByRole('button', { name: /44 : 84/ }).click();
  await made.getByLabel('Taken').selectOption('over');
  await made.getByLabel('First pin').fill('4');
  await made.getByLabel('Second pin').fill('6');
  await made.getByLabel('The gauge shows').fill('43.5');
  await made.getByRole('button', { name: 'Keep the reading' }).click();
  // 43.5 − (4 + 6) / 2
  await expect(row).toContainText('38.500');
  await expect(row).toContainText('calculated');
  await row.getByRole('button', { name: 'Use it' }).click();
  await expect(row.getByRole('cell', { name: 'measured', exact: true })).toBeVisible();
  await expect(made.getByText('What it changed')).toBeVisible();
  await expect(made.getByText(/Tide arbor moves 0\.\d+ mm along/)).toBeVisible();
  await made.getByRole('button', { name: 'Undo it' }).click();
  await expect(row.getByRole('cell', { name: 'calculated', exact: true })).toBeVisible();

  // 38.5 mm taken as inches.
  await made.getByLabel('Taken').selectOption('direct');
  await made.getByLabel('The gauge shows').fill('977.9');
  await made.getByRole('button', { name: 'Keep the reading' }).click();
  await expect(made.getByText(/Did you mean 38.500 mm/)).toBeVisible();
  await made.getByRole('button', { name: 'Yes, 38.500 mm' }).click();
  await expect(made.getByText(/Did you mean/)).toBeHidden();

  await made.getByLabel('What was measured').selectOption('place');
  await made.getByRole('combobox', { name: 'Hole', exact: true }).selectOption({ label: 'Tide arbor' });
  await made.getByLabel('x as drilled').fill('-6');
  await made.getByLabel('y as drilled').fill('-37.5');
  await made.getByRole('button', { name: 'It is drilled there' }).click();
  await expect(made.getByText(/Tide arbor is .* off its place/)).toBeVisible();
  await expect(made.getByText(/Eccentric bush/)).toBeVisible();
});

test('changes, errors before cutting, and fits', async ({ page }) => {
  test.setTimeout(120_000);
  const bench = await openDemo(page);
  await bench.sheet.focus();
  await page.keyboard.press('Shift+R');
  const made = page.getByRole('region', { name: 'As made' });
  await made.getByRole('button', { name: 'Changes' }).click();
  await made.getByLabel('An earlier file').setInputFiles(DEMO);
  await expect(made.getByText('Nothing changed')).toBeVisible();

  await made.getByRole('button', { name: 'Before cutting' }).click();
  await made.getByLabel('Trials').fill('9');
  await made.getByRole('button', { name: 'Try all errors' }).click();
  await expect(made.getByText(/Trials must be at least 10\. 2000 still holds/)).toBeVisible();
  await made.getByLabel('Trials').fill('50000');
  await made.getByRole('button', { name: 'Try all errors' }).click();
  await made.getByRole('button', { name: 'Stop' }).click();
  await expect(made.getByText('Stopped.')).toBeVisible();
  await made.getByLabel('Trials').fill('60');
  await made.getByRole('button', { name: 'Try all errors' }).click();
  // The lunar depth only checks: it keeps no trial from being planted.
  await expect(made.getByText('60 of 60 trials could be planted', { exact: false })).toBeVisible({ timeout: 60_000 });
  await expect(made.getByRole('table', { name: 'Rules that only check' })).toContainText('Lunar-day depth');
  await expect(made.getByText(/^0\.030 mm on the hole of Day arbor/)).toBeVisible();
  await expect(made.getByText(/^moves .* by 0\.030 mm$/).first()).toBeVisible();

  await made.getByRole('button', { name: 'Fits' }).click();
  await made.getByRole('textbox', { name: 'Size' }).fill('8');
  await page.keyboard.press('Enter');
  await made.getByRole('combobox', { name: 'Shaft', exact: true }).selectOption('g6');
  // ISO 286: 8 H7 is 8.000 to 8.015, 8 g6 is 7.986 to 7.995.
  await expect(made.getByText('8.000 to 8.015 mm')).toBeVisible();
  await expect(made.getByText('7.986 to 7.995 mm')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(made).toBeHidden();
});
