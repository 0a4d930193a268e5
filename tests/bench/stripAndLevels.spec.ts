/** The strip gives room, the title block yields, levels are edited, faces are reached by keys. Scenes are our own. */
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { BenchPage } from './benchPage.ts';

const disagreeing = fileURLToPath(new URL('../fixtures/arcsDoNotReach.json', import.meta.url));

test('a long disagreement can be read whole', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.openFile(disagreeing);
  const planting = page.getByRole('region', { name: 'State of the planting' });
  await expect(planting).toContainText('miss by 0.830');
  const grow = page.getByRole('button', { name: 'All of the strip' });
  await grow.click();
  await expect(grow).toHaveAttribute('aria-expanded', 'true');
  const cut = await planting.evaluate((part) => part.scrollHeight - part.clientHeight);
  expect(cut).toBeLessThanOrEqual(1);
  await grow.click();
  await expect(grow).toHaveAttribute('aria-expanded', 'false');
});

test('the title block keeps only the scale where parts lie under it, and fades under the pointer', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const block = page.getByLabel('Title block');
  await expect(block).toContainText('Kite reel counter');
  await expect.poll(async () => (await block.boundingBox())?.width ?? 0).toBeGreaterThan(200);
  for (let i = 0; i < 5; i++) await page.keyboard.press('+');
  await expect.poll(async () => (await block.boundingBox())?.width ?? 999).toBeLessThan(120);
  const box = await block.boundingBox();
  await page.mouse.move((box?.x ?? 0) + 10, (box?.y ?? 0) + 10);
  await expect.poll(() => block.evaluate((each) => Number(getComputedStyle(each).opacity))).toBeLessThan(0.5);
  await page.mouse.move(400, 300);
  await expect.poll(() => block.evaluate((each) => Number(getComputedStyle(each).opacity))).toBe(1);
  await bench.sheet.focus();
  await page.keyboard.press('f');
  await expect.poll(async () => (await block.boundingBox())?.width ?? 0).toBeGreaterThan(200);
});

test('faces by their letters; levels as numbers with units, bad ones refused in place', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('v');
  await expect(page.getByRole('button', { name: 'Levels' })).toHaveAttribute('aria-current', 'page');
  const from = page.getByRole('textbox', { name: /^From, / }).first();
  await from.fill('1/2 in');
  await from.press('Enter');
  await expect(from).toHaveValue('12.700');
  const to = page.getByRole('textbox', { name: /^To, / }).first();
  const before = await to.inputValue();
  await to.fill('1');
  await to.press('Enter');
  await expect(page.getByRole('alert')).toContainText('must be more than');
  await to.press('Escape');
  await expect(to).toHaveValue(before);
  // The sliders stand beside the tilted view, not on it.
  const view = await page.getByRole('img', { name: 'Tilted view of the stack' }).boundingBox();
  const slider = await page.getByRole('slider', { name: 'Turn the view' }).boundingBox();
  expect(slider?.y ?? 0).toBeGreaterThanOrEqual((view?.y ?? 0) + (view?.height ?? 0) - 1);
  await page.getByRole('button', { name: 'Levels' }).focus();
  await page.keyboard.press('s');
  await expect(page.getByRole('region', { name: 'Marking-out steps' })).toBeVisible();
  await page.keyboard.press('h');
  await expect(page.getByRole('button', { name: 'Sheets' })).toHaveAttribute('aria-current', 'page');
  await page.keyboard.press('t');
  await expect(bench.sheet).toBeVisible();
});

test('the list of keys opens with ?, tells the keys of the steps, and draws arrows', async ({ page }) => {
  await BenchPage.open(page, 'reel');
  await page.keyboard.press('?');
  const list = page.getByRole('dialog', { name: 'Keys' });
  await expect(list).toContainText('Tick the step off');
  await expect(list).toContainText('Marking-out steps, one at a time');
  await expect(list).toContainText('←');
  await expect(list.locator('kbd', { hasText: /^left$/ })).toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(list).toHaveCount(0);
});

test('an emptied value shows what holds when it is left, nonsense says what is accepted, and a row does not move', async ({
  page,
}) => {
  const bench = await BenchPage.open(page, 'reel');
  await bench.train.getByRole('button', { name: 'Swing' }).click();
  const held = bench.slip.getByRole('textbox', { name: /, held$/ }).first();
  const before = await held.inputValue();
  const row = await bench.slip.getByRole('radio', { name: 'held' }).first().boundingBox();
  await held.fill('-5');
  await held.press('Enter');
  const alert = bench.slip.getByRole('alert');
  await expect(alert).toContainText('“-5” was typed; Depth with');
  await expect(alert).toContainText('must be more than 0');
  expect(await bench.slip.getByRole('radio', { name: 'held' }).first().boundingBox()).toEqual(row);
  await held.press('Tab');
  await expect(held).toHaveValue(before);
  await held.fill('');
  await held.press('Tab');
  await expect(held).toHaveValue(before);
  await expect(alert).toHaveCount(0);
});
