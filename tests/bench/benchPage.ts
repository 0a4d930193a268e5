/** The bench page as the tests use it: scenes opened through the page's own file chooser, places found by millimetres. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import { toScreen, type View } from '../../renderer/state/view.ts';
import type { Point } from '../../solver/geometry/index.ts';

const fileOf = (scene: string): string => fileURLToPath(new URL(`./scenes/${scene}.json`, import.meta.url));

export const modifier = 'Control';

export class BenchPage {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** The page takes this visit for a later one: no guide is offered. Call before it is opened. */
  static async cameBefore(page: Page): Promise<void> {
    await page.addInitScript(() => localStorage.setItem('depthwright-visited', 'yes'));
  }

  /** Opens the page, and a scene in it. */
  static async open(page: Page, scene: string): Promise<BenchPage> {
    const broken: string[] = [];
    page.on('pageerror', (error) => broken.push(String(error)));
    const bench = new BenchPage(page);
    await BenchPage.cameBefore(page);
    await page.goto('./');
    // The window's title is told when the session has begun.
    await expect(page).toHaveTitle(/ · Depthwright$/);
    await bench.openFile(fileOf(scene));
    const { title } = JSON.parse(readFileSync(fileOf(scene), 'utf8')) as { title: string }; // our own scene
    await expect(page.getByRole('heading', { level: 1 })).toContainText(title);
    expect(broken).toEqual([]);
    return bench;
  }

  async openFile(path: string): Promise<void> {
    await expect(this.sheet).toBeVisible();
    await expect(this.sheet).toHaveAttribute('data-view', /\d/);
    // The runner begins to watch for choosers a moment after it is asked to; on a busy machine the first may be missed.
    await expect(async () => {
      const chooser = this.page.waitForEvent('filechooser', { timeout: 4000 });
      await this.page.keyboard.press(`${modifier}+o`);
      await (await chooser).setFiles(path);
    }).toPass({ timeout: 30_000 });
  }

  get sheet() {
    return this.page.getByRole('application');
  }

  get slip() {
    return this.page.getByRole('complementary', { name: 'Slip' });
  }

  get train() {
    return this.page.getByRole('complementary', { name: 'Train' });
  }

  get told() {
    return this.page.getByRole('status');
  }

  /** The view, as the sheet tells it: "x y scale". */
  async view(): Promise<View> {
    const box = await this.sheet.boundingBox();
    const text = (await this.sheet.getAttribute('data-view')) ?? '';
    const [x = 0, y = 0, scale = 1] = text.split(' ').map(Number);
    return { centre: { x, y }, scale, width: box?.width ?? 0, height: box?.height ?? 0 };
  }

  /** Where a place (mm) is in the window, CSS pixels. */
  async pixelOf(place: Point): Promise<Point> {
    const box = await this.sheet.boundingBox();
    const { x, y } = toScreen(await this.view(), place);
    return { x: x + (box?.x ?? 0), y: y + (box?.y ?? 0) };
  }

  async tap(place: Point): Promise<void> {
    const { x, y } = await this.pixelOf(place);
    await this.page.mouse.click(x, y);
  }

  /** Picks up what is at `from` and carries it to `to`, without letting go. */
  async carry(from: Point, to: Point, steps = 10): Promise<void> {
    const [a, b] = [await this.pixelOf(from), await this.pixelOf(to)];
    await this.page.mouse.move(a.x, a.y);
    await this.page.mouse.down();
    await this.page.mouse.move(b.x, b.y, { steps });
  }

  async drag(from: Point, to: Point, steps = 10): Promise<void> {
    await this.carry(from, to, steps);
    await this.page.mouse.up();
  }

  /** Place of an arbor, post or mark, read from the slip (mm, three decimals). */
  async placeOf(name: string): Promise<Point> {
    await this.train.getByRole('button', { name }).click();
    await expect(this.slip.getByLabel('Name')).toHaveValue(name);
    return this.placeOnSlip();
  }

  /** x and y of what is chosen, as the slip tells them. */
  async placeOnSlip(): Promise<Point> {
    const numbers = this.slip.locator('dl').first();
    const row = numbers.locator('dt', { hasText: 'x, y' });
    const [x, y] = await row.evaluate((term) => {
      const first = term.nextElementSibling;
      return [first?.textContent ?? '', first?.nextElementSibling?.textContent ?? ''];
    });
    return { x: numberOf(x ?? ''), y: numberOf(y ?? '') };
  }
}

/** A number as the page writes it, with a true minus. */
export const numberOf = (text: string): number => Number(text.trim().replace('−', '-'));

export const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
