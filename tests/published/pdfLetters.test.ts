/** Letters of three scripts, repeatable bytes, and the pages as SVG: read by poppler and librsvg, independent of the writers. */

import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { pageSvg, printedFilesOf, printedSheetsOf } from '../../solver/files/pages/index.ts';
import { writePdf } from '../../solver/files/pages/pdf.ts';
import { pdfSheetsOf } from '../../solver/files/pages/printedFiles.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';
import { everyConstruction, placedByHand } from '../marking/placedByHand.ts';
import { firstPage, fonts, placed, run, saved, settings, sheetNamed } from './pdfRig.ts';
import { readPng } from './readPng.ts';

describe('letters and bytes', () => {
  it('Latin, Greek and Cyrillic come back as text', () => {
    const names = placedByHand(
      { title: 'Größe · Ωρολόγιο · Часы', revision: 'Б2', marks: [{ id: 'm', name: 'Ось №1', at: [0, 0], hole: 1 }] },
      { m: { at: [0, 0], kind: 'given' } },
    );
    const sheet = pdfSheetsOf(names, settings).find(({ name }) => name.endsWith('numbers.pdf'));
    const text = run('pdftotext', [saved(sheet?.bytes ?? new Uint8Array()), '-']);
    for (const words of ['Größe · Ωρολόγιο · Часы', 'Ось №1', 'Б2', 'none given']) expect(text).toContain(words);
  });

  it('the same movement gives the same bytes, and every file opens', () => {
    const first = pdfSheetsOf(placed, settings);
    const again = pdfSheetsOf(everyConstruction(), { fonts, words: sheetWordsOf });
    expect(first.map(({ name }) => name)).toEqual(again.map(({ name }) => name));
    first.forEach(({ name, bytes }, index) => {
      expect(Buffer.compare(bytes, again[index]?.bytes ?? new Uint8Array()), name).toBe(0);
      expect(run('pdfinfo', [saved(bytes)])).toMatch(/Pages: +[1-9]/);
    });
    expect(first.length).toBe(7);
  });

  it('the preview shows the marks of the file: rendered alike', () => {
    const { pages, title } = sheetNamed('marked-face-cards.pdf');
    const page = firstPage(pages);
    const svg = pageSvg(page, (mark) => fonts.width(mark.text, mark.size, mark.weight));
    const args = ['-d', '72', '-p', '72', '-b', 'white', '-f', 'png'];
    const preview = readPng(execFileSync('rsvg-convert', args, { input: svg, maxBuffer: 1 << 26 }));
    const print = readPng(
      execFileSync('pdftoppm', ['-png', '-r', '72', '-f', '1', '-l', '1', saved(writePdf(pages, fonts, { title }))], {
        maxBuffer: 1 << 26,
      }),
    );
    expect(Math.abs(preview.width - print.width)).toBeLessThanOrEqual(1);
    let apart = 0;
    let ink = 0;
    // In squares of six points, so that single pixels of two renderers need not agree.
    for (let x = 0; x + 6 < Math.min(preview.width, print.width); x += 6) {
      for (let y = 0; y + 6 < Math.min(preview.height, print.height); y += 6) {
        const [a, b] = [preview, print].map((picture) => {
          let sum = 0;
          for (let i = 0; i < 36; i++) sum += 255 - picture.grey(x + (i % 6), y + Math.floor(i / 6));
          return sum / 36;
        });
        apart += Math.abs((a ?? 0) - (b ?? 0));
        ink += (a ?? 0) + (b ?? 0);
      }
    }
    expect(ink).toBeGreaterThan(1000);
    expect(apart / ink).toBeLessThan(0.2);
  });
});

describe('pages as SVG files', () => {
  const files = printedFilesOf(placed, { fonts, words: sheetWordsOf, paper: 'A3' });
  const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('utf8');

  it('every page of every sheet has one, of the size of the paper, beside its PDF', () => {
    for (const { name, pages } of printedSheetsOf(placed, { fonts, words: sheetWordsOf, paper: 'A3' })) {
      const own = files.filter((file) => file.name.startsWith(name.replace('.pdf', '-page-')));
      expect(own, name).toHaveLength(pages.length);
      expect(files.filter((file) => file.name === name)).toHaveLength(1);
      own.forEach(({ bytes }, index) => {
        const page = pages[index];
        expect(text(bytes)).toContain(
          `width="${page?.width}mm" height="${page?.height}mm" viewBox="0 0 ${page?.width} ${page?.height}"`,
        );
      });
    }
    expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
  });

  it('librsvg draws it at true size: the bar of 150 mm is as long as it says, within half a pixel at each end', () => {
    const file = files.find(({ name }) => name.endsWith('marked-face-numbers-page-1.svg'));
    const dpi = 508;
    const args = ['-d', String(dpi), '-p', String(dpi), '-b', 'white', '-f', 'png'];
    const input = Buffer.from(file?.bytes ?? new Uint8Array());
    const picture = readPng(execFileSync('rsvg-convert', args, { input, maxBuffer: 1 << 28 }));
    const mm = dpi / 25.4;
    expect(picture.width / mm).toBeCloseTo(297, 0);
    // The X bar: the longest dark run of any row in the strip above the title block.
    let longest = 0;
    for (let y = Math.round(picture.height - 36 * mm); y < picture.height - 28 * mm; y++) {
      let run = 0;
      for (let x = 0; x < picture.width; x++) {
        run = picture.grey(x, y) < 128 ? run + 1 : 0;
        longest = Math.max(longest, run);
      }
    }
    // Its round ends and end ticks reach half a line of 0.15 mm beyond both ends.
    expect(Math.abs(longest / mm - 150.15)).toBeLessThan(1.5 / mm);
  });

  it('only what is asked for is made', () => {
    expect(printedFilesOf(placed, settings, ['svg']).every(({ name }) => name.endsWith('.svg'))).toBe(true);
    expect(pdfSheetsOf(placed, settings).every(({ name }) => name.endsWith('.pdf'))).toBe(true);
  });
});
