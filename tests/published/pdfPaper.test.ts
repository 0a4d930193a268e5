/**
 * Paper, tiles and the correction for the maker's printer, measured with poppler. Bars and their correction: common practice,
 * row 10: bars of 149.2 and 150.4 scale by 1.00536 and 0.99734.
 */
import { describe, expect, it } from 'vitest';
import { printedSheetsOf, type SheetSettings, scalesOf } from '../../solver/files/pages/index.ts';
import { writePdf } from '../../solver/files/pages/pdf.ts';
import { pdfSheetsOf } from '../../solver/files/pages/printedFiles.ts';
import { sheetWordsOf } from '../../solver/words/shop/index.ts';
import { placedByHand } from '../marking/placedByHand.ts';
import { barsOf, firstPage, flat, fonts, run, saved, sheetNamed } from './pdfRig.ts';

describe('calibration from the maker’s own printed bars', () => {
  const own: SheetSettings = { fonts, words: sheetWordsOf, calibration: { xBar: 149.2, yBar: 150.4 } };

  it('scales by 1.00536 and 0.99734', () => {
    const { x, y } = scalesOf(own.calibration);
    expect(x).toBeCloseTo(1.00536, 5);
    expect(y).toBeCloseTo(0.99734, 5);
  });

  it('draws bars that his printer brings to 150', () => {
    const { pages, title } = sheetNamed('marked-face-numbers.pdf', own);
    const [x, y] = barsOf(saved(writePdf(pages, fonts, { title })), firstPage(pages));
    expect(Math.abs(x * (149.2 / 150) - 150)).toBeLessThan(0.02);
    expect(Math.abs(y * (150.4 / 150) - 150)).toBeLessThan(0.02);
  });

  it('draws holes as the ellipses that come out round', () => {
    const page = firstPage(sheetNamed('marked-face-numbers.pdf', own).pages);
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
    const [file] = pdfSheetsOf(large, { fonts, words: sheetWordsOf, paper });
    const info = run('pdfinfo', [saved(file?.bytes ?? new Uint8Array())]);
    const size = /Page size: +([\d.]+) x ([\d.]+)/.exec(info);
    const sides = [Number(size?.[1]), Number(size?.[2])].sort((a, b) => a - b);
    expect(sides[0]).toBeCloseTo(width, 1);
    expect(sides[1]).toBeCloseTo(height, 1);
  });

  it.each(['A4', 'A3', 'Letter'] as const)('tiles of %s cover the plate and meet cross on cross', (paper) => {
    const sheet = printedSheetsOf(large, { fonts, words: sheetWordsOf, paper }).find(({ name }) =>
      name.endsWith('marked-face-numbers.pdf'),
    );
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
        if (mark.kind === 'circle' && mark.radius === 1.2) {
          crosses.push([mark.centre[0] - shift[0], mark.centre[1] - shift[1]]);
        }
      }
    }
    for (let x = 0; x <= 400; x += 5) {
      for (let y = 0; y <= 300; y += 5) {
        expect(covered.some((box) => x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3])).toBe(true);
      }
    }
    // Every cross is on exactly two tiles, at the same place of the drawing.
    for (const cross of crosses) {
      expect(crosses.filter((other) => Math.hypot(other[0] - cross[0], other[1] - cross[1]) < 1e-6)).toHaveLength(2);
    }
    expect(crosses.length).toBeGreaterThanOrEqual(4);
  });
});
