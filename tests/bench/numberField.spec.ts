/** The one number field: what is typed is kept as it was typed, and no key falls from it into a command or from a command into it. */
import { expect, type Page, test } from '@playwright/test';
import { BenchPage, modifier } from './benchPage.ts';

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
