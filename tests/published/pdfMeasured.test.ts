/** The numbers sheet as PDF, measured with poppler: an independent reader and renderer. */
import { describe, expect, it } from 'vitest';
import { writePdf } from '../../solver/files/pages/pdf.ts';
import { firstLine, PIXELS_A_MM_OF } from './measurePicture.ts';
import { barsOf, firstPage, flat, fonts, rendered, run, saved, sheetNamed } from './pdfRig.ts';

describe('the numbers sheet on A4', () => {
  const { pages, title } = sheetNamed('marked-face-numbers.pdf');
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
    const [x, y] = barsOf(saved(bytes), page);
    expect(Math.abs(x - 150), `X bar ${x}`).toBeLessThan(0.01);
    expect(Math.abs(y - 150), `Y bar ${y}`).toBeLessThan(0.01);
  });

  it('sets holes apart as planted: 28.8 between the centre and the third arbor of the two depths by hand', () => {
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
