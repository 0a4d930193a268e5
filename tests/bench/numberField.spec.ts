/** The one number field: what is typed is kept as it was typed, and no key falls from it into a command or from a command into it. */
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { BenchPage, modifier } from './benchPage.ts';

const DEMO = fileURLToPath(new URL('../../demo-data/tide-dial.json', import.meta.url));

/** A length of the movement, in the slip while nothing is chosen. */
async function lengthField(page: Page) {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('Escape');
  return { bench, field: bench.slip.getByLabel('Least gap to walls and plates', { exact: true }) };
}

const pressed = (page: Page, face: string) =>
  page.getByRole('navigation', { name: 'Faces of the movement' }).getByRole('button', { name: face, exact: true });

test('66, Enter, 2 is 66: Enter keeps and leaves, and what is pressed next is no part of it', async ({ page }) => {
  const { field } = await lengthField(page);
  await field.fill('66');
  await field.press('Enter');
  await expect(field).not.toBeFocused();
  await page.keyboard.press('2');
  await expect(field).toHaveValue('66.000');
  await expect(pressed(page, 'Bench')).toHaveAttribute('aria-current', 'page');
  await page.keyboard.press('v');
  await expect(pressed(page, 'Levels')).toHaveAttribute('aria-current', 'page');
});

test('letters of commands are typed into the field and do nothing else; Esc brings the value back', async ({
  page,
}) => {
  const { field } = await lengthField(page);
  const before = await field.inputValue();
  await field.focus();
  await page.keyboard.type('vsht');
  await expect(field).toHaveValue('vsht');
  await expect(pressed(page, 'Bench')).toHaveAttribute('aria-current', 'page');
  await page.keyboard.press('Escape');
  await expect(field).toHaveValue(before);
  await expect(field).not.toBeFocused();
});

test('undo takes back what was typed, then what was changed; the field shows what holds', async ({ page }) => {
  const { field } = await lengthField(page);
  const before = await field.inputValue();
  await field.fill('70');
  await field.press('Tab');
  await expect(field).not.toBeFocused();
  await expect(field).toHaveValue('70.000');
  await field.focus();
  await page.keyboard.type('7');
  await page.keyboard.type('1');
  await expect(field).toHaveValue('71');
  await page.keyboard.press(`${modifier}+z`);
  await expect(field).toHaveValue('7');
  await page.keyboard.press(`${modifier}+Shift+z`);
  await expect(field).toHaveValue('71');
  await page.keyboard.press(`${modifier}+z`);
  await page.keyboard.press(`${modifier}+z`);
  await expect(field).toHaveValue('70.000');
  await page.keyboard.press('Escape');
  await field.focus();
  await page.keyboard.press(`${modifier}+z`);
  await expect(field).toHaveValue(before);
});

test('what cannot be read is told, and stays to be put right', async ({ page }) => {
  const { field, bench } = await lengthField(page);
  const before = await field.inputValue();
  await field.fill('6x');
  await field.press('Enter');
  await expect(field).toBeFocused();
  await expect(bench.slip.getByRole('alert')).toContainText('is not a unit known here');
  await field.press('Escape');
  await expect(field).toHaveValue(before);
});

/** Opens a view of the demo with everything in it unfolded. */
const VIEWS: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  ['the slip of the movement', (page) => page.keyboard.press('Escape')],
  [
    'the slip of an arbor',
    (page) => page.getByRole('complementary', { name: 'Train' }).getByRole('button').first().click(),
  ],
  ['counts', (page) => page.keyboard.press('n')],
  ['power', (page) => page.keyboard.press('Shift+w')],
  ['readings', (page) => page.keyboard.press('Shift+r')],
  [
    'errors before cutting',
    async (page) => {
      await page.keyboard.press('Shift+r');
      await page.getByRole('button', { name: 'Before cutting' }).click();
    },
  ],
  ['sheets', (page) => page.getByRole('button', { name: 'Sheets', exact: true }).click()],
  [
    'steps',
    async (page) => {
      await page.getByRole('button', { name: 'Steps', exact: true }).click();
      await page.keyboard.press('PageDown');
      await expect(page.getByLabel(/^Reading from/)).toBeVisible();
    },
  ],
  [
    'the trial',
    async (page) => {
      await page.getByRole('button', { name: /movement menu/ }).click();
      await page.getByRole('menuitem', { name: /Does it run/ }).click();
    },
  ],
];

for (const [name, open] of VIEWS) {
  test(`every number field of ${name} has the same manners`, async ({ page }) => {
    test.setTimeout(120_000);
    const bench = await BenchPage.open(page, 'reel');
    await bench.openFile(DEMO);
    await bench.sheet.focus();
    await open(page);
    for (const folded of await page.locator('details:not([open]) > summary').all()) {
      if (await folded.isVisible()) await folded.click();
    }
    // No number is typed into anything else.
    await expect(page.locator('input[type="number"], input[inputmode="decimal"]:not([data-number])')).toHaveCount(0);
    const fields = page.locator('input[inputmode="decimal"][data-number]');
    const count = await fields.count();
    expect(count).toBeGreaterThan(0);
    for (let at = 0; at < count; at++) {
      const field = fields.nth(at);
      if (!(await field.isVisible())) continue;
      const before = await field.inputValue();
      await field.focus();
      await page.keyboard.type('7v2sk');
      await expect(field).toHaveValue('7v2sk');
      await page.keyboard.press(`${modifier}+z`);
      await expect(field).toHaveValue('7v2s');
      await page.keyboard.press('Escape');
      await expect(field).not.toBeFocused();
      await expect(field).toHaveValue(before);
      // Entered and left by Enter without a change, it is left, and what is pressed next is no part of it.
      await field.focus();
      await page.keyboard.press('Enter');
      await expect(field).not.toBeFocused();
      await expect(field).toHaveValue(before);
    }
  });
}
