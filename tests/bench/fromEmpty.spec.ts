/**
 * A train from an empty bench by pointer and keyboard only: snapped depths, a radius, a disagreement caused and cured,
 * undo to empty and redo to the end, saved, opened again, and planted headless to the same numbers. Our own scenario.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfText } from '../support/movements.ts';
import { apart, BenchPage, modifier } from './benchPage.ts';

const GREAT = { x: 0, y: 0 };

/** Begins to set down a wheel of module 1 with its lower face at 2 mm. */
async function beginWheel(bench: BenchPage, name: string, teeth: number): Promise<void> {
  await bench.sheet.focus();
  await bench.page.keyboard.press('w');
  for (const [label, value] of [
    ['Name', name],
    ['Teeth', String(teeth)],
    ['Module', '1'],
    ['Lower face at height', '2'],
  ] as const) {
    await bench.slip.getByLabel(label, { exact: true }).fill(value);
    await bench.slip.getByLabel(label, { exact: true }).press('Tab');
  }
}

/** Points at a place and presses, coming from a little way off. */
async function setDownAt(bench: BenchPage, at: { x: number; y: number }): Promise<void> {
  const { x, y } = await bench.pixelOf(at);
  await bench.page.mouse.move(x - 25, y - 12);
  await bench.page.mouse.move(x, y, { steps: 5 });
  await bench.page.mouse.click(x, y);
}

test('a train is built from nothing, broken, mended, undone, redone, saved and opened again', async ({
  page,
}, info) => {
  test.setTimeout(120_000);
  const bench = await BenchPage.open(page, 'reel');
  await page.keyboard.press(`${modifier}+n`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Untitled movement');
  const rows = bench.train.getByRole('listitem');
  await expect(rows).toHaveCount(0);

  await beginWheel(bench, 'Great', 96);
  for (const axis of ['x', 'y']) {
    await bench.slip.getByLabel(axis, { exact: true }).fill('0');
    await bench.slip.getByLabel(axis, { exact: true }).press('Tab');
  }
  await bench.slip.getByRole('button', { name: 'Set it down' }).click();
  await bench.train.getByRole('button', { name: 'Great' }).click();
  await bench.slip.getByRole('button', { name: 'Held at its coordinates' }).click();
  await bench.sheet.focus();
  await page.keyboard.press('f');
  for (let i = 0; i < 2; i++) await page.keyboard.press('-');

  // 96 and 32 teeth of module 1 mesh at 64 mm.
  await beginWheel(bench, 'Second', 32);
  await setDownAt(bench, { x: 60.5, y: 21.5 });
  await expect(bench.slip).toContainText('Depth with');
  await bench.slip.getByRole('button', { name: /^Direction about Great/ }).click();
  const second = await bench.placeOf('Second');
  expect(apart(second, GREAT)).toBeCloseTo(64, 3);

  // 96 and 40 mesh at 68 mm, 32 and 40 at 36 mm: the crossing above the line of centres.
  const along = (68 ** 2 - 36 ** 2 + 64 ** 2) / 128;
  const above = Math.sqrt(68 ** 2 - along ** 2);
  const unit = { x: second.x / 64, y: second.y / 64 };
  const crossing = { x: along * unit.x - above * unit.y, y: along * unit.y + above * unit.x };
  await beginWheel(bench, 'Third', 40);
  await setDownAt(bench, { x: crossing.x + 0.6, y: crossing.y - 0.4 });
  const third = await bench.placeOf('Third');
  expect(apart(third, GREAT)).toBeCloseTo(68, 3);
  expect(apart(third, second)).toBeCloseTo(36, 3);
  expect(apart(third, crossing)).toBeLessThan(0.01);

  await bench.sheet.focus();
  await page.keyboard.press('a');
  await bench.slip.getByLabel('Name', { exact: true }).fill('Idle');
  await bench.slip.getByLabel('Name', { exact: true }).press('Tab');
  await page.keyboard.down('Alt');
  await setDownAt(bench, { x: -30, y: 70 });
  await page.keyboard.up('Alt');
  await bench.train.getByRole('button', { name: 'Great' }).click();
  await bench.train.getByRole('button', { name: 'Idle' }).click({ modifiers: ['Shift'] });
  await bench.slip.getByRole('button', { name: /^Radius from/ }).click();
  const idle = await bench.placeOf('Idle');
  const planting = page.getByRole('region', { name: 'State of the planting' });
  await expect(planting).toContainText('1 loose');

  // A typed distance that the calculated depth of the same pair contradicts: the depth checks, and tells its miss.
  await bench.train.getByRole('button', { name: 'Third' }).click();
  await bench.train.getByRole('button', { name: 'Second' }).click({ modifiers: ['Shift'] });
  await bench.slip.getByRole('button', { name: /^Distance from/ }).click();
  await bench.train.getByRole('button', { name: 'Third' }).click();
  const distance = bench.slip.getByRole('textbox', { name: 'Distance from Second' });
  await distance.fill('37');
  await distance.press('Enter');
  expect(apart(await bench.placeOf('Third'), second)).toBeCloseTo(37, 3);
  await bench.sheet.focus();
  await page.keyboard.press(`${modifier}+z`);
  expect(apart(await bench.placeOf('Third'), second)).toBeCloseTo(36, 3);

  const undo = page.getByRole('button', { name: 'undo' });
  const redo = page.getByRole('button', { name: 'redo' });
  for (let i = 0; i < 40 && (await undo.isEnabled()); i++) await page.keyboard.press(`${modifier}+z`);
  await expect(undo).toBeDisabled();
  await expect(rows).toHaveCount(0);
  for (let i = 0; i < 40 && (await redo.isEnabled()); i++) await page.keyboard.press(`${modifier}+y`);
  await expect(redo).toBeDisabled();
  // The end of redoing is the typed distance again.
  await page.keyboard.press(`${modifier}+z`);
  await expect(rows).toHaveCount(4);
  expect(apart(await bench.placeOf('Third'), third)).toBe(0);

  const saving = page.waitForEvent('download');
  await page.keyboard.press(`${modifier}+s`);
  const path = info.outputPath('train.json');
  await (await saving).saveAs(path);
  await page.keyboard.press(`${modifier}+n`);
  await expect(rows).toHaveCount(0);
  await bench.openFile(path);
  await expect(rows).toHaveCount(4);
  const movement = movementOfText(readFileSync(path, 'utf8'));
  const places = [...plantMovement(movement).places.values()];
  for (const [name, shown] of [
    ['Second', second],
    ['Third', third],
    ['Idle', idle],
  ] as const) {
    const { id } = movement.arbors.find((arbor) => arbor.name === name) ?? {};
    const place = places.find((each) => each.id === id);
    // The slip shows three decimals.
    expect(place?.x, name).toBeCloseTo(shown.x, 3);
    expect(place?.y, name).toBeCloseTo(shown.y, 3);
    expect(apart(await bench.placeOf(name), shown)).toBe(0);
  }
});
