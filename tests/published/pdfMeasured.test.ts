/**
 * PDF sheets measured with poppler (pdfinfo, pdffonts, pdftotext, pdftoppm): an independent reader and renderer.
 * Bars and their correction: practice.md §4, row 10: bars of 149.2 and 150.4 scale by 1.00536 and 0.99734.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type Mark,
  type Page,
  pageSvg,
  pdfSheetsOf,
  printedSheetsOf,
  SheetFonts,
  type SheetSettings,
  scalesOf,
  writePdf,
} from '../../solver/workshop/index.ts';
import { everyConstruction, placedByHand } from '../workshop/placedByHand.ts';
import { firstLine, PIXELS_A_MM_OF } from './measurePicture.ts';
import { readPng } from './readPng.ts';

const face = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = new SheetFonts({ regular: face('DejaVuSans'), bold: face('DejaVuSans-Bold') });
const settings: SheetSettings = { fonts };
const placed = everyConstruction();

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pdf-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function saved(bytes: Uint8Array): string {
  const file = join(folder, 'sheet.pdf');
  writeFileSync(file, bytes);
  return file;
}
const run = (command: string, args: readonly string[]) =>
  execFileSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28 });

/** Part of a rendered page, in mm from its lower left corner. */
function rendered(
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

const flat = (marks: readonly Mark[]): readonly Mark[] =>
  marks.flatMap((mark) => (mark.kind === 'clip' ? [...flat(mark.marks)] : [mark]));
const sheetNamed = (end: string, own: SheetSettings = settings) => {
  const sheet = printedSheetsOf(placed, own).find(({ name }) => name.endsWith(end));
  if (!sheet) throw new Error(`no sheet ${end}`);
  return sheet;
};
const firstPage = (pages: readonly Page[]): Page => {
  const [page] = pages;
  if (!page) throw new Error('a sheet has pages');
  return page;
};

describe('the numbers sheet on A4', () => {
  const { pages, title } = sheetNamed('upper-face-numbers.pdf');
  const bytes = writePdf(pages, fonts, { title, date: '2026-03-01' });
  const page = firstPage(pages);

  it('has the paper size, the title, the date of the movement and no scaling', () => {
    const info = run('pdfinfo', ['-box', saved(bytes)]);
    expect(info).toMatch(/Page size: +595\.27\d x 841\.8\d* pts \(A4\)/);
    expect(info).toMatch(/Title: +Every construction/);
    expect(info).toMatch(/CreationDate: .*Mar.* 1 .*2026/);
    expect(Buffer.from(bytes).toString('latin1')).toContain('/PrintScaling /None');
  });

  it('shows every hole at true size within 0.01 mm', () => {
    const file = saved(bytes);
    const circles = flat(page.marks).flatMap((mark) =>
      mark.kind === 'circle' && mark.ink.width === 0.25 ? [mark] : [],
    );
    expect(circles.length).toBe(13);
    // Holes struck by distances from the edges have no scribed arcs through them, which the reading would meet first.
    const scribed = flat(page.marks).flatMap((mark) => (mark.kind === 'arc' ? [mark] : []));
    const clear = circles.filter(({ centre }) =>
      scribed.every(
        (arc) => Math.abs(Math.hypot(arc.centre[0] - centre[0], arc.centre[1] - centre[1]) - arc.radius) > 0.1,
      ),
    );
    expect(clear.map(({ radius }) => radius).sort()).toEqual([1, 1.5, 2.5]);
    for (const { centre, radius } of clear) {
      const dpi = 1200;
      const reach = radius + 1;
      const picture = rendered(
        file,
        1,
        page.height,
        [centre[0] - reach, centre[1] - reach, centre[0] + reach, centre[1] + reach],
        dpi,
      );
      const middle = PIXELS_A_MM_OF(dpi) * reach;
      // Between the cross lines, and between the ends of the curve's pieces, where a wrong curve would show most.
      const readings = [33.75, 56.25, 123.75, 146.25, 213.75, 236.25, 303.75, 326.25].map((degrees) => {
        const angle = (degrees * Math.PI) / 180;
        return firstLine(picture, middle, middle, Math.cos(angle), -Math.sin(angle), 8) / PIXELS_A_MM_OF(dpi);
      });
      for (const reading of readings) expect(Math.abs(reading - radius)).toBeLessThan(0.02);
      const mean = readings.reduce((sum, value) => sum + value, 0) / readings.length;
      expect(Math.abs(mean - radius), `hole of radius ${radius}`).toBeLessThan(0.01);
    }
  });

  it('carries both bars at 150 mm within 0.01', () => {
    expect(barsOf(saved(bytes), page)).toEqual([expect.closeTo(150, 1.7), expect.closeTo(150, 1.7)]);
  });

  it('sets holes apart as planted: 28.8 between the centre and the third arbor of practice.md 6.3', () => {
    const radiusAt = (radius: number) =>
      flat(page.marks).find((mark) => mark.kind === 'circle' && mark.radius === radius);
    const [centre, third] = [radiusAt(2.5), radiusAt(0.75)];
    if (centre?.kind !== 'circle' || third?.kind !== 'circle') throw new Error('both holes are drawn');
    expect(Math.hypot(centre.centre[0] - third.centre[0], centre.centre[1] - third.centre[1])).toBeCloseTo(28.8, 9);
  });

  it('gives its text to readers, and embeds its faces', () => {
    const text = run('pdftotext', ['-layout', saved(bytes), '-']);
    for (const words of [
      'Every construction',
      'marked face',
      'arc 28.800 from Centre',
      'Revision',
      '2026-03-01',
      '1 of 2',
    ]) {
      expect(text).toContain(words);
    }
    const table = run('pdffonts', [saved(bytes)]);
    for (const line of table.trim().split('\n').slice(2)) expect(line).toMatch(/CID TrueType +Identity-H +yes yes yes/);
  });
});

/** Lengths of the X and the Y bar of a rendered page, between the middles of their end ticks. */
function barsOf(file: string, page: Page): readonly [number, number] {
  const lines = flat(page.marks).flatMap((mark) => (mark.kind === 'line' && mark.ink.width === 0.15 ? [mark] : []));
  const level = lines.find(({ from, to }) => from[1] === to[1] && to[0] - from[0] > 140);
  const upright = lines.find(({ from, to }) => from[0] === to[0] && to[1] - from[1] > 140);
  if (!level || !upright) throw new Error('both bars are drawn');
  const dpi = 600;
  const mm = PIXELS_A_MM_OF(dpi);
  // Just above the X bar and right of the Y bar only the long end ticks reach.
  const x = rendered(
    file,
    1,
    page.height,
    [level.from[0] - 2, level.from[1] + 0.8, level.to[0] + 1.5, level.from[1] + 1.6],
    dpi,
  );
  const y = rendered(
    file,
    1,
    page.height,
    [upright.from[0] + 0.8, upright.from[1] - 2, upright.from[0] + 1.6, upright.to[1] + 1.5],
    dpi,
  );
  const first = firstLine(x, 0, Math.floor(x.height / 2), 1, 0);
  const last = x.width - 1 - firstLine(x, x.width - 1, Math.floor(x.height / 2), -1, 0);
  const top = firstLine(y, Math.floor(y.width / 2), 0, 0, 1);
  const bottom = y.height - 1 - firstLine(y, Math.floor(y.width / 2), y.height - 1, 0, -1);
  return [(last - first) / mm, (bottom - top) / mm];
}

describe('calibration from the maker’s own printed bars', () => {
  const own: SheetSettings = { fonts, calibration: { xBar: 149.2, yBar: 150.4 } };

  it('scales by 1.00536 and 0.99734', () => {
    const { x, y } = scalesOf(own.calibration);
    expect(x).toBeCloseTo(1.00536, 5);
    expect(y).toBeCloseTo(0.99734, 5);
  });

  it('draws bars that his printer brings to 150', () => {
    const { pages, title } = sheetNamed('upper-face-numbers.pdf', own);
    const [x, y] = barsOf(saved(writePdf(pages, fonts, { title })), firstPage(pages));
    expect(Math.abs(x * (149.2 / 150) - 150)).toBeLessThan(0.02);
    expect(Math.abs(y * (150.4 / 150) - 150)).toBeLessThan(0.02);
  });

  it('draws holes as the ellipses that come out round', () => {
    const page = firstPage(sheetNamed('upper-face-numbers.pdf', own).pages);
    const round = flat(page.marks).flatMap((mark) => (mark.kind === 'path' && mark.ink.width === 0.25 ? [mark] : []));
    const centreHole = round.find(({ vertices }) => vertices.length > 100);
    const xs = centreHole?.vertices.map((vertex) => vertex.x) ?? [];
    const ys = centreHole?.vertices.map((vertex) => vertex.y) ?? [];
    expect(((Math.max(...xs) - Math.min(...xs)) * 149.2) / 150).toBeCloseTo(5, 2);
    expect(((Math.max(...ys) - Math.min(...ys)) * 150.4) / 150).toBeCloseTo(5, 2);
  });

  it.each([0, -150, 100, 5.9, Number.NaN])('refuses a bar of %d', (bar) => {
    expect(() => scalesOf({ xBar: bar, yBar: 150 })).toThrow(/xBar .*150 mm bar/);
  });
});

describe('paper and tiles', () => {
  const large = placedByHand(
    {
      title: 'Large plate',
      plates: [
        {
          id: 'p',
          name: 'Back plate',
          levels: { from: 0, to: 3 },
          outline: {
            kind: 'path',
            vertices: [
              { x: 0, y: 0 },
              { x: 400, y: 0 },
              { x: 400, y: 300 },
              { x: 0, y: 300 },
            ],
          },
        },
      ],
      marks: [{ id: 'm', at: [200, 150], hole: 5 }],
      rules: [{ id: 'h', kind: 'held', point: 'm', at: [200, 150] }],
    },
    { m: { at: [200, 150], by: ['h'], kind: 'given' } },
  );

  it.each([
    ['A4', 595.28, 841.89],
    ['A3', 841.89, 1190.55],
    ['Letter', 612, 792],
  ] as const)('%s pages have the size of the paper', (paper, width, height) => {
    const [file] = pdfSheetsOf(large, { fonts, paper });
    const info = run('pdfinfo', [saved(file?.bytes ?? new Uint8Array())]);
    const size = /Page size: +([\d.]+) x ([\d.]+)/.exec(info);
    const sides = [Number(size?.[1]), Number(size?.[2])].sort((a, b) => a - b);
    expect(sides[0]).toBeCloseTo(width, 1);
    expect(sides[1]).toBeCloseTo(height, 1);
  });

  it.each(['A4', 'A3', 'Letter'] as const)('tiles of %s cover the plate and meet cross on cross', (paper) => {
    const sheet = printedSheetsOf(large, { fonts, paper }).find(({ name }) => name.endsWith('upper-face-numbers.pdf'));
    const tiles = (sheet?.pages ?? []).filter((page) => page.marks.some((mark) => mark.kind === 'clip'));
    expect(tiles.length).toBeGreaterThan(1);
    const covered: [number, number, number, number][] = [];
    const crosses: [number, number][] = [];
    for (const page of tiles) {
      const clip = page.marks.find((mark) => mark.kind === 'clip');
      if (clip?.kind !== 'clip') throw new Error('tiles are clipped');
      const outline = clip.marks.find((mark) => mark.kind === 'path' && mark.closed);
      const corner = outline?.kind === 'path' ? outline.vertices[0] : undefined;
      const shift = [corner?.x ?? Number.NaN, corner?.y ?? Number.NaN] as const;
      covered.push([clip.box[0] - shift[0], clip.box[1] - shift[1], clip.box[2] - shift[0], clip.box[3] - shift[1]]);
      for (const mark of page.marks) {
        if (mark.kind === 'circle' && mark.radius === 1.2)
          crosses.push([mark.centre[0] - shift[0], mark.centre[1] - shift[1]]);
      }
    }
    for (let x = 0; x <= 400; x += 5) {
      for (let y = 0; y <= 300; y += 5)
        expect(covered.some((box) => x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3])).toBe(true);
    }
    // Every cross is on exactly two tiles, at the same place of the drawing.
    for (const cross of crosses) {
      expect(crosses.filter((other) => Math.hypot(other[0] - cross[0], other[1] - cross[1]) < 1e-6)).toHaveLength(2);
    }
    expect(crosses.length).toBeGreaterThanOrEqual(4);
  });
});

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
    const again = pdfSheetsOf(everyConstruction(), { fonts });
    expect(first.map(({ name }) => name)).toEqual(again.map(({ name }) => name));
    first.forEach(({ name, bytes }, index) => {
      expect(Buffer.compare(bytes, again[index]?.bytes ?? new Uint8Array()), name).toBe(0);
      expect(run('pdfinfo', [saved(bytes)])).toMatch(/Pages: +[1-9]/);
    });
    expect(first.length).toBe(7);
  });

  it('the preview shows the marks of the file: rendered alike', () => {
    const { pages, title } = sheetNamed('upper-face-cards.pdf');
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
