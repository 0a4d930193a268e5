/** What the tests of printed sheets share: the fonts, a folder for poppler (pdfinfo, pdffonts, pdftotext, pdftoppm), and its readings. */

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { type PrintedSheet, printedSheetsOf, SheetFonts, type SheetSettings } from '../../solver/files/pages/index.ts';
import type { Page, PageMark } from '../../solver/files/pages/page.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';
import { everyConstruction } from '../marking/placedByHand.ts';
import { firstLine, PIXELS_A_MM_OF } from './measurePicture.ts';
import { readPng } from './readPng.ts';

const face = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));

export const fonts = new SheetFonts({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') });
export const settings: SheetSettings = { fonts, words: sheetWordsOf };
export const placed = everyConstruction();

const folder = mkdtempSync(join(tmpdir(), 'pdf-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Writes bytes to a file of their own place and gives its path. */
export function saved(bytes: Uint8Array): string {
  const file = join(folder, 'sheet.pdf');
  writeFileSync(file, bytes);
  return file;
}

/** What a program prints. */
export const run = (command: string, args: readonly string[]): string =>
  execFileSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28 });

/** Part of a rendered page, its box in mm from the lower left corner. */
export function rendered(
  file: string,
  page: number,
  pageHeight: number,
  box: readonly [number, number, number, number],
  dpi: number,
) {
  const px = (mm: number) => Math.round((mm * dpi) / 25.4);
  const [minX, minY, maxX, maxY] = box;
  const crop = ['-x', px(minX), '-y', px(pageHeight - maxY), '-W', px(maxX - minX), '-H', px(maxY - minY)].map(String);
  const args = ['-png', '-r', String(dpi), '-f', String(page), '-l', String(page), '-gray', ...crop, file];
  return readPng(execFileSync('pdftoppm', args, { maxBuffer: 1 << 28 }));
}

/** The marks of a page, those within clips among them. */
export const flat = (marks: readonly PageMark[]): readonly PageMark[] =>
  marks.flatMap((mark) => (mark.kind === 'clip' ? [...flat(mark.marks)] : [mark]));

/** The sheet of the movement with every construction whose name ends so. */
export function sheetNamed(end: string, own: SheetSettings = settings): PrintedSheet {
  const sheet = printedSheetsOf(placed, own).find(({ name }) => name.endsWith(end));
  if (!sheet) throw new Error(`no sheet ${end}`);
  return sheet;
}

export function firstPage(pages: readonly Page[]): Page {
  const [page] = pages;
  if (!page) throw new Error('a sheet has pages');
  return page;
}

/** Lengths of the X and the Y bar of a rendered page, between the middles of their end ticks, mm. */
export function barsOf(file: string, page: Page): readonly [number, number] {
  const lines = flat(page.marks).flatMap((mark) => (mark.kind === 'line' && mark.ink.width === 0.15 ? [mark] : []));
  const level = lines.find(({ from, to }) => from[1] === to[1] && to[0] - from[0] > 140);
  const upright = lines.find(({ from, to }) => from[0] === to[0] && to[1] - from[1] > 140);
  if (!level || !upright) throw new Error('both bars are drawn');
  const dpi = 600;
  const mm = PIXELS_A_MM_OF(dpi);
  const part = (box: readonly [number, number, number, number]) => rendered(file, 1, page.height, box, dpi);
  // Just above the X bar and right of the Y bar only the long end ticks reach.
  const x = part([level.from[0] - 2, level.from[1] + 0.8, level.to[0] + 1.5, level.from[1] + 1.6]);
  const y = part([upright.from[0] + 0.8, upright.from[1] - 2, upright.from[0] + 1.6, upright.to[1] + 1.5]);
  const first = firstLine(x, 0, Math.floor(x.height / 2), 1, 0);
  const last = x.width - 1 - firstLine(x, x.width - 1, Math.floor(x.height / 2), -1, 0);
  const top = firstLine(y, Math.floor(y.width / 2), 0, 0, 1);
  const bottom = y.height - 1 - firstLine(y, Math.floor(y.width / 2), y.height - 1, 0, -1);
  return [(last - first) / mm, (bottom - top) / mm];
}
