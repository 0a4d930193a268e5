/** The steps and the sheets in both looks: nothing serious for axe, lettering that keeps clear, choices that reach the files. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const demo = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}.json`, import.meta.url));

async function openFace(page: Page, name: string, title: string, face: 'Steps' | 'Sheets'): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(demo(name));
  await expect(page.getByRole('heading', { level: 1 })).toContainText(title);
  await page.getByRole('button', { name: face, exact: true }).click();
  return bench;
}
const stepsOf = (page: Page) => page.getByRole('region', { name: 'Marking-out steps' });
const sheetsOf = (page: Page) => page.getByRole('region', { name: 'Sheets', exact: true });

/** Pairs of texts on the step's picture that run into each other. */
const overlapping = (page: Page): Promise<string[]> =>
  stepsOf(page)
    .getByRole('img')
    .locator('text')
    .evaluateAll((texts) => {
      const boxes = texts.map((text) => ({ words: text.textContent ?? '', box: text.getBoundingClientRect() }));
      return boxes.flatMap((a, index) =>
        boxes.slice(index + 1).flatMap((b) => {
          const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
          // A text's box is as high as its line; its letters take the middle of it.
          const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) - a.box.height * 0.35;
          return across > 1 && down > 1 ? [`${a.words} / ${b.words}`] : [];
        }),
      );
    });

for (const [name, title] of [
  ['tide-dial', 'Tide dial'],
  ['moons-of-jupiter', 'Moons of Jupiter'],
  ['going-train', 'Going train'],
] as const) {
  test(`names and lengths on the picture keep clear of each other: ${title}`, async ({ page }) => {
    await openFace(page, name, title, 'Steps');
    const count = Number(
      /of (\d+)/.exec(
        (await stepsOf(page)
          .getByText(/^Step 1 of/)
          .textContent()) ?? '',
      )?.[1],
    );
    expect(count).toBeGreaterThan(8);
    for (let step = 1; step <= count; step++) {
      await expect(stepsOf(page).getByText(new RegExp(`^Step ${step} of`))).toBeVisible();
      expect(await overlapping(page), `step ${step}`).toEqual([]);
      await page.keyboard.press('PageDown');
    }
  });
}

test('the centre of a round plate is ticked off and the tick taken off; a pedal turns the steps', async ({ page }) => {
  await openFace(page, 'moons-of-jupiter', 'Moons of Jupiter', 'Steps');
  const steps = stepsOf(page);
  await expect(steps.getByRole('heading', { name: 'Plate centre' })).toBeVisible();
  await steps.getByRole('button', { name: 'Tick off' }).click();
  await expect(steps.getByText(/^Step 2 of/)).toBeVisible();
  await page.keyboard.press('ArrowUp');
  await expect(steps.getByText(/^Step 1 of \d+, ticked off/)).toBeVisible();
  await steps.getByRole('button', { name: 'Take the tick off' }).click();
  await expect(steps.getByText(/^Step 1 of \d+$/)).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await expect(steps.getByText(/^Step 2 of/)).toBeVisible();
});

test('a reading of the check is kept with its gauge and note, and told against what was wanted', async ({ page }) => {
  await openFace(page, 'tide-dial', 'Tide dial', 'Steps');
  const steps = stepsOf(page);
  await page.keyboard.press('PageDown');
  // Wanted: 20.000 from the day arbor.
  await expect(steps.getByText('Check: 20.000 from Day arbor.')).toBeVisible();
  await steps.getByLabel('Reading from Day arbor').fill('20.04');
  await steps.getByLabel('Plus or minus').fill('0.02');
  await steps.getByLabel('Gauge').fill('calipers');
  await steps.getByLabel('Note').fill('burr taken off first');
  await steps.getByRole('button', { name: 'Keep' }).click();
  await expect(steps.getByText(/0\.040 more than wanted/)).toBeVisible();
  await expect(steps.getByText(/1 reading kept: 20\.040/)).toBeVisible();
});

for (const look of ['Paper', 'Layout blue'] as const) {
  test(`axe finds nothing serious on the steps and the sheets: ${look}`, async ({ page }) => {
    test.setTimeout(120_000);
    await openFace(page, 'tide-dial', 'Tide dial', 'Steps');
    if (look === 'Layout blue') await page.getByRole('button', { name: look }).click();
    await page.keyboard.press('PageDown');
    await expect(stepsOf(page).getByText(/^Step 2 of/)).toBeVisible();
    expect(await seriousFaults(page)).toEqual([]);
    await stepsOf(page).getByRole('button', { name: 'Carry to another plate' }).click();
    expect(await seriousFaults(page)).toEqual([]);

    await page.getByRole('button', { name: 'Sheets', exact: true }).click();
    const sheets = sheetsOf(page);
    await expect(sheets.getByText(/Page 1 of/)).toBeVisible({ timeout: 30_000 });
    expect(await seriousFaults(page)).toEqual([]);
    await sheets
      .getByRole('button', { name: /Drill program/ })
      .first()
      .click();
    await expect(sheets.getByRole('region', { name: 'Drill program' })).toBeVisible();
    expect(await seriousFaults(page)).toEqual([]);
    await sheets.getByRole('button', { name: /other ways/ }).click();
    for (const way of ['readout', 'rotary', 'buttons', 'edges']) {
      await sheets.getByLabel('Way').selectOption(way);
      expect(await seriousFaults(page), way).toEqual([]);
    }
  });
}

test('what a file or a sheet needs said is seen without scrolling', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 760 });
  await openFace(page, 'tide-dial', 'Tide dial', 'Sheets');
  const sheets = sheetsOf(page);
  const isWhole = () =>
    sheets
      .getByRole('contentinfo')
      .or(sheets.locator('footer'))
      .first()
      .evaluate((foot) => {
        const box = foot.getBoundingClientRect();
        const face = foot.closest('section')?.getBoundingClientRect();
        return foot.scrollHeight <= foot.clientHeight + 1 && box.bottom <= (face?.bottom ?? 0) + 1;
      });
  await expect(sheets.getByText(/measure both bars/)).toBeVisible({ timeout: 30_000 });
  expect(await isWhole()).toBe(true);
  for (const name of [/To cut, DXF/, /Numbers sheet/, /Drill program/, /Table of holes/]) {
    await sheets.getByRole('button', { name }).first().click();
    await expect(sheets.getByText(/: fine\.$/)).toBeVisible();
    expect(await isWhole(), String(name)).toBe(true);
  }
});

test('choices for the drill program are kept in the movement, change the program, and are undone', async ({ page }) => {
  await openFace(page, 'tide-dial', 'Tide dial', 'Sheets');
  const sheets = sheetsOf(page);
  await sheets
    .getByRole('button', { name: /Drill program/ })
    .first()
    .click();
  const program = sheets.locator('pre');
  const form = sheets.getByRole('region', { name: 'Drill program' });
  await expect(program).toContainText('G21', { timeout: 30_000 });
  await form.getByLabel('Units').selectOption('inch');
  await expect(program).toContainText('G20');
  await form.getByLabel('Safe height').fill('25.4');
  await form.getByLabel('Safe height').press('Enter');
  await expect(program).toContainText('TOOLS TRAVEL AT Z 1.0');
  await form.getByLabel('spot every hole first').uncheck();
  await expect(program).not.toContainText('SPOTTING');
  await form.getByLabel('Tool number for hole of 2.020').fill('9');
  await form.getByLabel('Tool number for hole of 2.020').press('Enter');
  await expect(program).toContainText('T9 M6');
  await form.getByLabel('X0 Y0').selectOption({ label: 'Day arbor' });
  await expect(program).toContainText('X0 Y0 IS DAY ARBOR');
  for (let change = 0; change < 5; change++) await page.getByRole('button', { name: 'undo' }).click();
  await expect(program).toContainText('G21');
  await expect(program).toContainText('SPOTTING DRILL');
});

test('a page is written as SVG of its true size, and a list of holes from a corner reads all positive', async ({
  page,
}) => {
  await openFace(page, 'going-train', 'Going train', 'Sheets');
  const sheets = sheetsOf(page);
  await expect(sheets.getByText(/Page 1 of/)).toBeVisible({ timeout: 30_000 });
  const waiting = page.waitForEvent('download');
  await sheets.getByRole('button', { name: 'This page as SVG…' }).click();
  const file = await waiting;
  expect(file.suggestedFilename()).toMatch(/-numbers-page-1\.svg$/);
  // ISO 216: A4 is 210 × 297 mm.
  expect(readFileSync(await file.path(), 'utf8')).toMatch(/width="210mm" height="297mm" viewBox="0 0 210 297"/);

  await sheets.getByRole('button', { name: /other ways/ }).click();
  const list = sheets.locator('pre');
  await expect(list).toContainText('the corner of the left and the lower edge');
  await sheets.getByLabel('Zero').selectOption('upper right corner');
  await expect(list).toContainText(/Set X \d+\.000 Y \d+\.000 there/);
  await expect(list).not.toContainText(/[XY] -/);
  await sheets.getByLabel('all readings positive').uncheck();
  await expect(list).toContainText(/X -\d/);
});
