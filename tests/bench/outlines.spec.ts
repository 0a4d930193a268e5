/** Outlines of plates, walls and openings, reshaped with a real pointer and real keys. The scene is our own invention. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import type { Point } from '../../solver/geometry/index.ts';
import { BenchPage, modifier } from './benchPage.ts';

interface PlateInFile {
  readonly outline: { readonly kind: string; readonly vertices?: readonly Point[]; readonly radius?: number };
}

/** Sets down a straight-sided plate of 120 × 80 about the origin on an empty bench, and chooses it. */
async function withPlate(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press(`${modifier}+n`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Untitled movement');
  await page.keyboard.press('b');
  await bench.slip.getByLabel('Outline').selectOption('square');
  for (const [label, value] of [
    ['Diameter, or width', '120'],
    ['Height (straight sides)', '80'],
    ['x', '0'],
    ['y', '0'],
  ] as const) {
    await bench.slip.getByLabel(label, { exact: true }).fill(value);
    await bench.slip.getByLabel(label, { exact: true }).press('Tab');
  }
  await bench.slip.getByRole('button', { name: 'Set it down' }).click();
  await bench.sheet.focus();
  await page.keyboard.press('f');
  await bench.tap({ x: 60, y: 13 });
  await expect(handles(bench)).toHaveCount(9);
  return bench;
}

const handles = (bench: BenchPage): Locator =>
  bench.page.getByRole('group', { name: /^Outline of/ }).getByRole('button');
const field = (bench: BenchPage, name: string): Locator => bench.slip.getByRole('textbox', { name, exact: true });

/** Corners as they are saved, in order, whole hundredths. */
async function savedCorners(page: Page): Promise<string[]> {
  const saving = page.waitForEvent('download');
  await page.keyboard.press(`${modifier}+s`);
  const path = await (await saving).path();
  const { plates } = JSON.parse(readFileSync(path, 'utf8')) as { plates: PlateInFile[] }; // just written by the page
  return (plates[0]?.outline.vertices ?? []).map(({ x, y }) => `${Number(x.toFixed(2))},${Number(y.toFixed(2))}`);
}

test('a corner and a side are dragged, each one step of undo', async ({ page }) => {
  const bench = await withPlate(page);
  await bench.drag({ x: 60, y: 40 }, { x: 71.2, y: 48 });
  await expect(field(bench, 'Corner x')).toHaveValue(/^7[01]\./);
  expect(await savedCorners(page)).toHaveLength(4);
  await page.keyboard.press(`${modifier}+z`);
  expect(await savedCorners(page)).toEqual(['-60,-40', '60,-40', '60,40', '-60,40']);
  // Anywhere along the side, and never askew.
  await bench.drag({ x: 60, y: -20 }, { x: 50, y: -35 });
  expect(await savedCorners(page)).toEqual(['-60,-40', '50,-40', '50,40', '-60,40']);
  await expect(page.getByRole('button', { name: 'Side from corner 2 to 3' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press(`${modifier}+z`);
  expect(await savedCorners(page)).toEqual(['-60,-40', '60,-40', '60,40', '-60,40']);
});

test('an outline that would cross itself is named and refused, and nothing is lost', async ({ page }) => {
  const bench = await withPlate(page);
  const undo = page.getByRole('button', { name: 'undo' });
  const before = await undo.getAttribute('title');
  await bench.carry({ x: 60, y: 40 }, { x: -75, y: 0 });
  await expect(bench.told).toContainText('neither crosses nor touches itself');
  await page.mouse.up();
  await expect(bench.told).toContainText('The outline stays as it was.');
  expect(await savedCorners(page)).toEqual(['-60,-40', '60,-40', '60,40', '-60,40']);
  await expect(undo).toHaveAttribute('title', before ?? '');
  // Typed, the same.
  await field(bench, 'Corner x').fill('-75');
  await field(bench, 'Corner x').press('Enter');
  await expect(bench.told).toContainText('Base plate: found the side between (60, -40) and (-75, 40) that meets');
  await expect(field(bench, 'Corner x')).toHaveValue('60.000');
});

test('Esc in the middle of a drag leaves no trace', async ({ page }) => {
  const bench = await withPlate(page);
  await bench.carry({ x: -60, y: -40 }, { x: -90, y: -50 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await savedCorners(page)).toEqual(['-60,-40', '60,-40', '60,40', '-60,40']);
});

test('corners are added and removed by pointer and by keys', async ({ page }) => {
  const bench = await withPlate(page);
  const { x, y } = await bench.pixelOf({ x: 60, y: 20 });
  await page.mouse.dblclick(x, y);
  await expect(handles(bench)).toHaveCount(11);
  const corners = await savedCorners(page);
  expect(corners).toHaveLength(5);
  expect(corners[2]).toMatch(/^60,(19|20)/);
  await page.keyboard.press('Delete');
  expect(await savedCorners(page)).toEqual(['-60,-40', '60,-40', '60,40', '-60,40']);

  await page.getByRole('button', { name: 'Side from corner 1 to 2' }).focus();
  await page.keyboard.press('e');
  await page.keyboard.press('Shift+ArrowDown');
  expect(await savedCorners(page)).toEqual(['-60,-40', '0,-41', '60,-40', '60,40', '-60,40']);
});

test('Tab goes through the corners and on, arrows move the one in focus, Esc steps back', async ({ page }) => {
  const bench = await withPlate(page);
  await bench.sheet.focus();
  await page.keyboard.press('Tab');
  const first = page.getByRole('button', { name: 'Corner 1', exact: true });
  await expect(first).toBeFocused();
  await expect(first).toHaveAttribute('aria-pressed', 'true');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('ArrowUp');
  await expect(field(bench, 'Corner x')).toHaveValue('−63.000');
  await expect(field(bench, 'Corner y')).toHaveValue('−39.900');
  // A row of presses is one step.
  await page.keyboard.press(`${modifier}+z`);
  await expect(field(bench, 'Corner x')).toHaveValue('−60.000');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Side from corner 1 to 2' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(bench.sheet).toBeFocused();
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Base plate');
  for (let i = 0; i < 10; i++) await page.keyboard.press('Tab');
  await expect(bench.sheet).not.toBeFocused();
  await expect(handles(bench).first()).not.toBeFocused();
});

test('numbers in place: width in inches, a corner, an arc for a side', async ({ page }) => {
  const bench = await withPlate(page);
  await field(bench, 'Width').fill('5 in');
  await field(bench, 'Width').press('Enter');
  expect(await savedCorners(page)).toEqual(['-63.5,-40', '63.5,-40', '63.5,40', '-63.5,40']);
  // The press on the side chose it; the corner that it leads to is the next.
  await bench.slip.getByRole('button', { name: 'Next corner' }).click();
  await field(bench, 'Corner x').fill('70+2');
  await field(bench, 'Corner x').press('Enter');
  expect(await savedCorners(page)).toEqual(['-63.5,-40', '63.5,-40', '72,40', '-63.5,40']);
  await page.getByRole('button', { name: 'Side from corner 3 to 4' }).focus();
  await field(bench, 'Rise of an arc').fill('12');
  await field(bench, 'Rise of an arc').press('Enter');
  await expect(field(bench, 'Rise of an arc')).toHaveValue('12.000');
  await field(bench, 'Rise of an arc').fill('nonsense');
  await field(bench, 'Rise of an arc').press('Tab');
  await expect(field(bench, 'Rise of an arc')).toHaveValue('12.000');
});

test('a round wall: the rim is dragged, centre and radius are typed, the inside keeps inside', async ({ page }) => {
  const bench = await BenchPage.open(page, 'reel');
  // The ring between 80 and 84 mm; where a bearing from the scene's centre meets no post.
  await bench.tap({ x: -82 * Math.cos(0.2), y: 82 * Math.sin(0.2) });
  await expect(bench.slip.getByLabel('Name')).toHaveValue('Drum');
  await bench.drag(
    { x: -84 * Math.cos(0.2), y: 84 * Math.sin(0.2) },
    { x: -90 * Math.cos(0.2), y: 90 * Math.sin(0.2) },
  );
  await expect(field(bench, 'Radius, outside')).toHaveValue(/^90/);
  await field(bench, 'Radius, inside').fill('95');
  await field(bench, 'Radius, inside').press('Enter');
  await expect(bench.told).toContainText('a hollow that is not wholly inside');
  await expect(field(bench, 'Radius, inside')).toHaveValue('80.000');
  await field(bench, 'Radius, inside').fill('-3');
  await field(bench, 'Radius, inside').press('Enter');
  await expect(bench.slip.getByRole('alert')).toContainText('must be more than 0');
  await field(bench, 'Radius, inside').press('Tab');
  await expect(field(bench, 'Radius, inside')).toHaveValue('80.000');
  await field(bench, 'Centre x, inside').fill('1');
  await field(bench, 'Centre x, inside').press('Enter');
  await page.getByRole('button', { name: 'The whole' }).focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(field(bench, 'Centre x, inside')).toHaveValue('2.000');
  await expect(field(bench, 'Centre x, outside')).toHaveValue('1.000');
});
