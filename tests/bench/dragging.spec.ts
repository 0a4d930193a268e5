/** Dragging and snapping, with a real pointer on the built page. Scenes are our own inventions. */
import { expect, test } from '@playwright/test';
import { apart, BenchPage, modifier } from './benchPage.ts';

/** Calculated depth of 60 and 48 teeth of module 0.8: (60 + 48) · 0.8 / 2. Common practice. */
const SWING_DEPTH = 43.2;

test('a loose wheel follows the pointer and keeps its depth', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const start = await bench.placeOf('Swing');
  expect(apart(start, { x: 0, y: 0 })).toBeCloseTo(SWING_DEPTH, 3);
  await bench.drag(start, { x: 0, y: -44 });
  const there = await bench.placeOf('Swing');
  expect(apart(there, { x: 0, y: 0 })).toBeCloseTo(SWING_DEPTH, 3);
  expect(apart(there, { x: 0, y: -SWING_DEPTH })).toBeLessThan(1);
});

test('a drag is one step of undo, and Esc leaves no trace of it', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const start = await bench.placeOf('Swing');
  const undo = page.getByRole('button', { name: 'undo' });
  await bench.carry(start, { x: 10, y: -42 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(undo).toBeDisabled();
  expect(apart(await bench.placeOf('Swing'), start)).toBeLessThan(0.0006);

  await bench.drag(start, { x: 20, y: -38 }, 25);
  expect(apart(await bench.placeOf('Swing'), start)).toBeGreaterThan(5);
  await page.keyboard.press(`${modifier}+z`);
  expect(apart(await bench.placeOf('Swing'), start)).toBeLessThan(0.0006);
  await expect(undo).toBeDisabled();
});

test('hovering commits nothing, a planted arbor stays and it is told why', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  const crank = await bench.placeOf('Crank');
  const over = await bench.pixelOf({ x: 20, y: 10 });
  await page.mouse.move(over.x, over.y, { steps: 5 });
  await bench.drag(crank, { x: -10, y: 50 });
  await expect(bench.told).toContainText('planted');
  expect(apart(await bench.placeOf('Crank'), crank)).toBe(0);
  await expect(page.getByRole('button', { name: 'undo' })).toBeDisabled();
});

test('a wheel that is set down near one it can mesh with snaps to the depth and keeps the rule', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('w');
  const form = bench.slip;
  await form.getByLabel('Teeth').fill('40');
  await form.getByLabel('Teeth').press('Enter');
  await form.getByLabel('Module').fill('0.8');
  await form.getByLabel('Module').press('Enter');
  await form.getByLabel('Lower face at height').fill('4');
  await form.getByLabel('Lower face at height').press('Enter');
  // 60 and 40 teeth of module 0.8 mesh at 40 mm; the pointer is 0.6 mm off.
  const near = await bench.pixelOf({ x: 0, y: -40.6 });
  await page.mouse.move(near.x - 60, near.y + 5);
  await page.mouse.move(near.x, near.y, { steps: 6 });
  await expect(bench.told).toContainText('depth 40.000');
  await page.mouse.click(near.x, near.y);
  await expect(bench.slip).toContainText('Depth with wheel of 60 on Centre');
  expect(apart(await bench.placeOnSlip(), { x: 0, y: 0 })).toBeCloseTo(40, 3);
});

test('Alt suspends snapping', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press('w');
  await bench.slip.getByLabel('Module').fill('0.8');
  await bench.slip.getByLabel('Module').press('Enter');
  await bench.slip.getByLabel('Lower face at height').fill('4');
  await bench.slip.getByLabel('Lower face at height').press('Enter');
  // 60 and 60 teeth of module 0.8 mesh at 48 mm.
  await page.keyboard.down('Alt');
  await bench.tap({ x: 0, y: -48.4 });
  await page.keyboard.up('Alt');
  await expect(bench.slip).toContainText('Loose. Two rules would settle it.');
  expect(apart(await bench.placeOnSlip(), { x: 0, y: -48.4 })).toBeLessThan(0.2);
});

test('several chosen are dragged together: the loose ones move, the planted stay, and it is one step', async ({
  page,
}) => {
  const bench = await BenchPage.open(page, 'reel');
  for (const [key, name, x, y] of [
    ['a', 'One', -30, -58],
    ['m', 'Two', -10, -66],
  ] as const) {
    await bench.sheet.focus();
    await page.keyboard.press(key);
    for (const [label, value] of [
      ['Name', name],
      ['x', String(x)],
      ['y', String(y)],
    ] as const) {
      await bench.slip.getByLabel(label, { exact: true }).fill(value);
      await bench.slip.getByLabel(label, { exact: true }).press('Tab');
    }
    await bench.slip.getByRole('button', { name: 'Set it down' }).click();
  }
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Two');
  const centre = await bench.placeOf('Centre');
  await bench.tap({ x: -10, y: -66 });
  await bench.train.getByRole('button', { name: 'One' }).click({ modifiers: ['Shift'] });
  await bench.train.getByRole('button', { name: 'Centre' }).click({ modifiers: ['Shift'] });
  await expect(bench.slip).toContainText('3 chosen');
  await bench.carry({ x: -30, y: -58 }, { x: -24, y: -50 });
  await expect(bench.told).toContainText('2 moved together; 1 is not loose and stays');
  await page.mouse.up();
  await expect(bench.slip).toContainText('3 chosen');
  const one = await bench.placeOf('One');
  expect(apart(one, { x: -24, y: -50 })).toBeLessThan(0.3);
  await bench.tap({ x: one.x + 20, y: one.y - 8 });
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Two');
  const two = await bench.placeOnSlip();
  expect(two.x - one.x).toBeCloseTo(20, 2);
  expect(two.y - one.y).toBeCloseTo(-8, 2);
  expect(apart(await bench.placeOf('Centre'), centre)).toBe(0);
  await bench.sheet.focus();
  await page.keyboard.press(`${modifier}+z`);
  await expect(bench.told).toContainText('Undone: move 2 together');
  expect(apart(await bench.placeOf('One'), { x: -30, y: -58 })).toBeLessThan(0.001);
});
