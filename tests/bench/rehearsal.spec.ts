/** Rehearsal in the window: turns, times and dates, carriers, faults by their interval, keyboard, hidden window, less motion. */
import { expect, type Page, test } from '@playwright/test';
import { apart, BenchPage } from './benchPage.ts';
import { seriousFaults } from './seriousFaults.ts';

const panel = (page: Page) => page.getByRole('complementary', { name: 'Rehearsal' });
const reads = (page: Page, hand: string) => panel(page).getByRole('row').filter({ hasText: hand });

async function rehearse(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.open(page, 'planetShelf');
  await bench.sheet.focus();
  await page.keyboard.press('r');
  await expect(panel(page)).toBeVisible();
  return bench;
}

async function turnTo(page: Page, text: string): Promise<void> {
  await panel(page).getByLabel('Turn the drive to').fill(text);
  await panel(page).getByLabel('Turn the drive to').press('Enter');
}

test('a number of turns, a time or a date tells every dial’s reading', async ({ page }) => {
  await rehearse(page);
  // Planet outside a fixed sun of 20 with 60 teeth: 1 + 20/60 turns for one of the arm. Common practice.
  await turnTo(page, '1/4');
  await expect(reads(page, 'Arm').first()).toContainText('90.000°');
  await expect(reads(page, 'Planet')).toContainText('120.000°');
  await turnTo(page, '36 h');
  await expect(reads(page, 'Planet').getByRole('cell').first()).toHaveText('2');
  await expect(reads(page, 'Planet')).toContainText('0.000°');
  await panel(page).getByLabel('Set on').fill('2000-01-01');
  await panel(page).getByLabel('read on').fill('2026-03-14 06:00');
  await panel(page).getByLabel('read on').press('Enter');
  // 26 years with 7 leap days, and 31 + 28 + 13 days.
  await expect(panel(page)).toContainText('9569 days and 6 h');
  await expect(reads(page, 'Arm').first().getByRole('cell').first()).toHaveText('9569');
  await panel(page).getByLabel('read on').fill('2026-02-30');
  await panel(page).getByLabel('read on').press('Enter');
  await expect(panel(page).getByRole('alert')).toContainText('"2026-02-30"');
  await turnTo(page, 'a bit');
  await expect(panel(page).getByRole('alert')).toContainText('"a bit"');
});

test('a carried arbor goes round with its arm, and the planting stays', async ({ page }) => {
  const broken: string[] = [];
  page.on('pageerror', (error) => broken.push(String(error)));
  const bench = await rehearse(page);
  const hand = page.locator('svg.hands line').nth(1);
  const place = async () => ({ x: Number(await hand.getAttribute('x1')), y: Number(await hand.getAttribute('y1')) });
  const box = await bench.sheet.boundingBox();
  const from = async (mm: { x: number; y: number }) => {
    const pixel = await bench.pixelOf(mm);
    return { x: pixel.x - (box?.x ?? 0), y: pixel.y - (box?.y ?? 0) };
  };
  expect(apart(await place(), await from({ x: 40, y: 0 }))).toBeLessThan(0.5);
  await turnTo(page, '0.25');
  expect(apart(await place(), await from({ x: 0, y: 40 }))).toBeLessThan(0.5);
  await bench.train.getByRole('button', { name: 'Planet' }).click();
  // The drawing asked the moved planting for all that it shows, and nothing broke.
  expect(broken).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(panel(page)).toHaveCount(0);
  expect(await bench.placeOf('Planet')).toEqual({ x: 40, y: 0 });
  await expect(page.getByRole('button', { name: 'undo' })).toBeDisabled();
});

test('a fault is found by its interval, by the names of the parts', async ({ page }) => {
  await rehearse(page);
  await panel(page).getByLabel('A fault shows every').fill('18 h');
  await panel(page).getByLabel('A fault shows every').press('Enter');
  await expect(panel(page).getByRole('list', { name: 'Suspects' })).toContainText('Planet turns once in 18 h.');
  await panel(page).getByLabel('A fault shows every').fill('11 min');
  await panel(page).getByLabel('A fault shows every').press('Enter');
  await expect(panel(page)).toContainText('Nothing in this movement comes round every 11 min');
  await panel(page).getByText('All that comes round').click();
  // Against the arm the sun of 20 passes a tooth every 1/20 day, and the same teeth meet after 3 turns: 60 = 3 · 20.
  await expect(panel(page)).toContainText('Sun wheel and Planet wheel pass a tooth every 1.2 h.');
  await expect(panel(page)).toContainText('bring the same two teeth together every 3 d.');
});

test('by keyboard: the handle, a tooth on, to rest, and Esc leaves even while something is typed', async ({ page }) => {
  await rehearse(page);
  const handle = page.getByRole('slider', { name: 'Turn the drive' });
  await handle.focus();
  await page.keyboard.press('Shift+ArrowUp');
  await page.keyboard.press('ArrowLeft');
  await expect(handle).toHaveAttribute('aria-valuetext', '0.99 turns');
  await panel(page).getByRole('button', { name: 'A turn on' }).press('Enter');
  await expect(handle).toHaveAttribute('aria-valuetext', '1.99 turns');
  await panel(page).getByRole('button', { name: 'To rest' }).press('Enter');
  await expect(handle).toHaveAttribute('aria-valuetext', '0 turns');
  await panel(page).getByLabel('Turn the drive to').focus();
  await page.keyboard.press('Escape');
  await expect(panel(page)).toHaveCount(0);
});

test('playing stops when the window is hidden', async ({ page }) => {
  await rehearse(page);
  await panel(page).getByRole('button', { name: 'Turn it' }).click();
  await expect(panel(page).getByLabel('How far')).not.toContainText('made 0 turns');
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expect(panel(page).getByRole('button', { name: 'Turn it' })).toBeVisible();
});

test('with less motion wanted it goes in steps of a second', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await rehearse(page);
  await panel(page).getByLabel('How fast').selectOption('a turn a second');
  await panel(page).getByRole('button', { name: 'Turn it' }).click();
  await expect(panel(page).getByLabel('How far')).toContainText(/made [1-9]\d* turns/);
  await panel(page).getByRole('button', { name: 'Stop' }).click();
  await expect(panel(page).getByLabel('How far')).toContainText(/made \d+ turns/);
});

test('axe finds nothing serious', async ({ page }) => {
  await rehearse(page);
  await turnTo(page, '12.5');
  expect(await seriousFaults(page)).toEqual([]);
});
