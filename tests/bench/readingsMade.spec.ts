/** What comes back from the metal, with real pointer and keys: readings of every kind, what they change, states compared, moves on the bench. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { BenchPage, modifier } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const TRAIN = fileURLToPath(new URL('../../demo-data/going-train.json', import.meta.url));

async function opened(page: Page): Promise<{ bench: BenchPage; made: Locator }> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(TRAIN);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Going train');
  await bench.sheet.focus();
  await page.keyboard.press('Shift+R');
  const made = page.getByRole('region', { name: 'As made' });
  await expect(made.getByRole('heading', { level: 2 })).toBeFocused();
  return { bench, made };
}

async function read(made: Locator, what: string, of: RegExp, shows: string): Promise<void> {
  await made.getByLabel('What was measured').selectOption({ label: what });
  const choice = made.getByRole('combobox', { name: 'Of', exact: true });
  const label = (await choice.getByRole('option').allTextContents()).find((text) => of.test(text));
  await choice.selectOption({ label: label ?? 'no such size' });
  await made.getByLabel('The gauge shows').fill(shows);
  await made.getByLabel('Gauge', { exact: true }).fill('Micrometer');
  await made.getByLabel('±').fill('0.01');
  await made.getByLabel('Day').fill('2026-03-01');
  await made.getByRole('button', { name: 'Keep the reading' }).click();
}

test('a depth: entered by keys, used, its moves seen on the bench, undone', async ({ page }) => {
  const { bench, made } = await opened(page);
  const row = made.getByRole('row', { name: /Third arbor 60 : 8 Escape arbor/ });
  await expect(row).toContainText('25.530');
  await row.getByRole('button', { name: /60 : 8/ }).click();
  await made.getByLabel('Taken').selectOption('between');
  await made.getByLabel('The gauge shows').focus();
  await page.keyboard.type('25,57');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.type('0.02');
  await page.keyboard.press('Enter');
  await made.getByRole('button', { name: 'Keep the reading' }).click();
  // Two readings of equal ±, on the going train's own 25.53: their mean.
  await expect(row).toContainText('25.550');
  await row.getByRole('button', { name: 'Use it' }).click();
  await expect(made.getByText('What it changed')).toBeVisible();
  await expect(made.getByText(/25\.530 → 25\.550/)).toBeVisible();
  await expect(made.getByText(/Third arbor moves 0\.0\d\d mm along/)).toBeVisible();
  await expect(made.getByRole('img', { name: /1 place moved, shown \d+ times as far/ })).toBeVisible();

  await made.getByRole('button', { name: 'Show them on the bench' }).click();
  await expect(made).toBeHidden();
  const moved = page.getByRole('region', { name: 'What moved' });
  await expect(moved).toContainText(/Third arbor 0\.0\d\d/);
  expect(await seriousFaults(page)).toEqual([]);
  await moved.getByRole('combobox').selectOption('1000');
  // The arrow is 1000 times the move, in the bench's own pixels per millimetre.
  const amount = Number(/Third arbor (0\.\d+)/.exec((await moved.textContent()) ?? '')?.[1]);
  const arrow = page.locator('svg line[marker-end="url(#moved)"]');
  const length = await arrow.evaluate((line: SVGLineElement) =>
    Math.hypot(line.x2.baseVal.value - line.x1.baseVal.value, line.y2.baseVal.value - line.y1.baseVal.value),
  );
  const { scale } = await bench.view();
  expect(Math.abs(length / (1000 * scale) - amount)).toBeLessThan(0.0006);
  await moved.getByRole('button', { name: 'Hide the arrows' }).click();
  await expect(moved).toBeHidden();

  await bench.sheet.focus();
  await page.keyboard.press(`${modifier}+z`);
  await page.keyboard.press('Shift+R');
  await expect(row.getByRole('button', { name: 'Use it' })).toBeVisible();
});

test('sizes: a tip, a pivot and its hole are read, used, told, and the drawing comes back', async ({ page }) => {
  const { made } = await opened(page);
  await read(made, 'a diameter over the tips', /^Third wheel, over the tips$/, '46.6');
  const tips = made.getByRole('row', { name: /Third wheel, over the tips/ }).first();
  await expect(tips).toContainText('46.600');
  await tips.getByRole('button', { name: 'Use it' }).click();
  await expect(made.getByText('What it changed')).toBeVisible();
  const back = tips.getByRole('button', { name: 'As drawn' });
  await expect(back).toBeVisible();

  // 1.83 as drawn for the hole; 1.9 lets the arbor move (1.9 − 1.8) / 2 in that plate.
  await read(made, 'a hole or bore', /^Third arbor, hole in Back plate$/, '1.9');
  await made
    .getByRole('row', { name: /Third arbor, hole in Back plate/ })
    .first()
    .getByRole('button', { name: 'Use it' })
    .click();
  await expect(made.getByText(/Third arbor: side shake 0\.\d+ mm before, 0\.\d+ mm after/)).toBeVisible();

  // A pivot that does not go in: refused in words, kept as a reading.
  await read(made, 'the diameter of a pivot or body', /^Third arbor, pivot in Back plate$/, '1.95');
  const pivot = made.getByRole('row', { name: /Third arbor, pivot in Back plate/ }).first();
  await pivot.getByRole('button', { name: 'Use it' }).click();
  await expect(made.getByRole('alert')).toContainText('bore');
  await expect(pivot).toContainText('1.950');

  await back.click();
  await expect(back).toBeHidden();
  await expect(tips.getByRole('button', { name: 'Use it' })).toBeVisible();
  expect(await seriousFaults(page)).toEqual([]);
});

test('the slip shows sizes as made beside the drawing; a bearing takes only its own readings along', async ({
  page,
}) => {
  const { bench, made } = await opened(page);
  await read(made, 'a hole or bore', /^Third arbor, hole in Back plate$/, '1.85');
  await read(made, 'a hole or bore', /^Third arbor, hole in Front plate$/, '1.86');
  await page.keyboard.press('Escape');
  await bench.train.getByRole('button', { name: /Third arbor/ }).click();
  const back = bench.slip.getByRole('radiogroup', { name: 'Third arbor, hole in Back plate' });
  const front = bench.slip.getByRole('radiogroup', { name: 'Third arbor, hole in Front plate' });
  await expect(front.getByRole('radio', { name: 'as drawn' })).toBeChecked();
  await expect(front).toContainText(/1\.830.*1\.860\s*± 0\.010/s);
  await front.getByRole('radio', { name: 'measured' }).click();
  await expect(front.getByRole('radio', { name: 'measured' })).toBeChecked();
  await expect(bench.slip.getByLabel('Bearing 2, hole')).toHaveValue('1.860');
  expect(await seriousFaults(page)).toEqual([]);

  await bench.slip.getByRole('button', { name: 'Delete bearing 1' }).click();
  await expect(page.getByText('The reading of that bearing went with it')).toBeVisible();
  await expect(back).toBeHidden();
  await expect(front).toContainText(/1\.830.*1\.860/s);
  await front.getByRole('radio', { name: 'as drawn' }).click();
  await expect(bench.slip.getByLabel('Bearing 1, hole')).toHaveValue('1.830');
});

test('the place of a hole is read twice, doubted, drilled afresh, and taken back', async ({ page }) => {
  const { made } = await opened(page);
  await made.getByLabel('What was measured').selectOption('place');
  await made.getByRole('combobox', { name: 'Hole', exact: true }).selectOption({ label: 'Third arbor' });
  const drill = async (x: string, y: string) => {
    await made.getByLabel('x as drilled').fill(x);
    await made.getByLabel('y as drilled').fill(y);
    await made.getByLabel('±').fill('0.01');
    await made.getByLabel('Gauge', { exact: true }).fill('Readout');
    await made.getByRole('button', { name: 'It is drilled there' }).click();
  };
  const hole = made.getByRole('table', { name: 'Holes as drilled' }).getByRole('row', { name: /Third arbor/ });
  // Its place on the other face of the plate.
  await drill('16', '26.1');
  await expect(made.getByText(/a place seen from the other face.*Did you mean [−-]16\.000 mm, 26\.100/)).toBeVisible();
  await expect(hole).toBeVisible({ timeout: 1000 });
  await made.getByRole('button', { name: /^Yes, / }).click();
  await hole.getByRole('button', { name: 'Use it' }).click();
  await expect(hole).toContainText(/16\.000, 26\.100.*1 read/s);
  await drill('-16.04', '26.14');
  await expect(hole).toContainText(/16\.020, 26\.120.*2 read/s);
  await expect(made.getByText(/Third arbor moves 0\.028 mm along/)).toBeVisible();
  await made.getByLabel(/Plugged and drilled afresh/).check();
  await drill('-16.01', '26.11');
  await expect(hole).toContainText(/16\.010, 26\.110.*1 read/s);
  expect(await seriousFaults(page)).toEqual([]);
  await hole.getByRole('button', { name: 'Not drilled' }).click();
  await expect(hole.getByRole('button', { name: 'Use it' })).toBeVisible();
});

test('a slip is asked about; a figure that is right stands, with who said so', async ({ page }) => {
  const { made } = await opened(page);
  // 1.6 mm thick, typed in inches as if millimetres: 1.6 × 25.4.
  await read(made, 'a thickness', /^Third wheel, thick$/, '40.64');
  await expect(made.getByText(/Did you mean 1\.600 mm/)).toBeVisible();
  await made.getByRole('button', { name: 'It is right…' }).click();
  await made.getByLabel('Who says so').fill('A. Maker');
  await made.getByRole('button', { name: 'It is right as it stands' }).click();
  await expect(made.getByText(/Did you mean/)).toBeHidden();
  await expect(made.getByText(/right as it stands, A\. Maker/)).toBeVisible();
  const row = made.getByRole('row', { name: /Third wheel, thick/ }).first();
  await expect(row).toContainText('40.640');
  await made.getByRole('button', { name: 'Doubt it again' }).click();
  await made.getByRole('button', { name: 'Yes, 1.600' }).click();
  await expect(row).toContainText('1.600');

  await made.getByText('Limits of cures').click();
  await made.getByLabel('Plug and drill afresh beyond').fill('0.3');
  await page.keyboard.press('Enter');
  await expect(made.getByRole('button', { name: 'No limit of mine' })).toBeVisible();
});

test('any two states are compared: the drawing, days, now, a file; the history tells them', async ({ page }) => {
  const { made } = await opened(page);
  await made.getByRole('button', { name: 'Changes' }).click();
  await made.getByLabel('From').selectOption('drawn');
  await expect(made.getByText(/Third arbor/).first()).toBeVisible();
  await made.getByRole('combobox', { name: /^To\b/ }).selectOption({ label: 'at the end of 2026-02-14' });
  // As drawn and on the first day: one depth was measured by then, the other was not.
  await expect(made.getByText(/25\.53/)).toHaveCount(1); // in the history only
  await made.getByLabel('From').selectOption({ label: 'at the end of 2026-02-15' });
  await made.getByRole('combobox', { name: /^To\b/ }).selectOption('now');
  await expect(made.getByText('Nothing changed')).toBeVisible();

  const other = { ...(JSON.parse(readFileSync(TRAIN, 'utf8')) as object), revision: 'Z', cures: { leastWall: 1 } }; // the demo
  const file = { name: 'other.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(other)) };
  await made.getByLabel('An earlier file').setInputFiles(file);
  await expect(made.getByText('Revision: Z → A.')).toBeVisible();
  await expect(made.getByText(/Limits of cures, least wall: 1\.000 mm → 0\.800 mm/)).toBeVisible();
  expect(await seriousFaults(page)).toEqual([]);
});

for (const look of ['paper', 'layout blue'] as const) {
  test(`fits by reamer and by pressing, in ${look}: figures, cautions, nothing that a reader stumbles over`, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1024, height: 768 });
    const { made } = await opened(page);
    if (look === 'layout blue') await page.getByRole('button', { name: 'Layout blue' }).click();
    await made.getByRole('button', { name: 'Fits' }).click();
    await made.getByRole('textbox', { name: 'Size' }).fill('20');
    await page.keyboard.press('Enter');
    await made.getByRole('textbox', { name: 'Reamer as measured' }).fill('20.009');
    await page.keyboard.press('Enter');
    // DIN 1420, from memory: a new reamer for 20 H7 is 20.009 to 20.017.
    await expect(made.getByText(/20\.009 to 20\.017/)).toBeVisible();
    await made.getByRole('textbox', { name: 'It cuts wider by' }).fill('0.02');
    await page.keyboard.press('Tab');
    await expect(made.getByText(/It leaves 20\.029 mm: 8 µm wider than H7 allows/)).toBeVisible();
    await made.getByRole('textbox', { name: 'Share that closes the bore' }).fill('0.5');
    await page.keyboard.press('Tab');
    await expect(made.getByText(/close it by about 10 µm/)).toBeVisible();
    await expect(made.getByText(/local rules for hot work/)).toBeVisible();
    expect(await seriousFaults(page)).toEqual([]);
    for (const part of ['Readings and as made', 'Changes']) {
      await made.getByRole('button', { name: part }).click();
      expect(await seriousFaults(page)).toEqual([]);
    }
  });
}
