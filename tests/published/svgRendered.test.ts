/**
 * SVG files rendered by librsvg (rsvg-convert) and measured in pixels. The resolution is chosen so that one millimetre is
 * twenty pixels; CSS Values: 1 in = 96 px = 25.4 mm. Factors met on import are common practice (SOURCES.md, factors of units).
 */
import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { preflight } from '../../solver/files/index.ts';
import { writeSvg } from '../../solver/files/write/svg.ts';
import { allSheets } from '../files/allSheets.ts';
import { TEST_HOLES, testPlate } from '../files/testPlate.ts';
import { everyConstruction } from '../marking/placedByHand.ts';
import { firstLine } from './measurePicture.ts';
import { type Picture, readPng } from './readPng.ts';

const PIXELS_A_MM = 20;
const DPI = PIXELS_A_MM * 25.4;

function rendered(svg: string): Picture {
  const args = ['-d', String(DPI), '-p', String(DPI), '-b', 'white', '-f', 'png'];
  return readPng(execFileSync('rsvg-convert', args, { input: svg, maxBuffer: 1 << 28 }));
}

describe('the test plate (SOURCES.md) rendered by librsvg', () => {
  const svg = writeSvg({ ...testPlate(), layers: testPlate().layers.filter(({ name }) => name !== 'SCRIBE') });

  it('states its size in mm with one unit a millimetre', () => {
    expect(svg).toContain('width="100mm" height="60mm" viewBox="0 0 100 60"');
  });

  it('comes out at true size', () => {
    const picture = rendered(svg);
    expect([picture.width, picture.height]).toEqual([100 * PIXELS_A_MM, 60 * PIXELS_A_MM]);
    for (const { x, y, radius } of TEST_HOLES) {
      const px = x * PIXELS_A_MM;
      const py = (60 - y) * PIXELS_A_MM;
      const [right, left, down, up] = [
        firstLine(picture, px, py, 1, 0),
        firstLine(picture, px, py, -1, 0),
        firstLine(picture, px, py, 0, 1),
        firstLine(picture, px, py, 0, -1),
      ].map((pixels) => pixels / PIXELS_A_MM);
      // A pixel's middle lies half a pixel from its edge, so single readings may be off by 0.025; their means are not.
      expect(((right ?? 0) + (left ?? 0)) / 2).toBeCloseTo(radius, 2);
      expect(((down ?? 0) + (up ?? 0)) / 2).toBeCloseTo(radius, 2);
      expect(Math.abs((right ?? 0) - (left ?? 0)) / 2).toBeLessThan(0.03);
      expect(Math.abs((down ?? 0) - (up ?? 0)) / 2).toBeLessThan(0.03);
    }
  });

  it('bulges the slot outwards at both ends', () => {
    const picture = rendered(svg);
    // The slot from x 30 to 60 at y 40..48 with half circles of radius 4: its ends at x 26 and 64.
    const middle = (60 - 44) * PIXELS_A_MM;
    expect(firstLine(picture, 45 * PIXELS_A_MM, middle, 1, 0) / PIXELS_A_MM).toBeCloseTo(64 - 45, 1);
    expect(firstLine(picture, 45 * PIXELS_A_MM, middle, -1, 0) / PIXELS_A_MM).toBeCloseTo(45 - 26, 1);
  });

  it('passes the pre-flight', () => {
    const report = preflight(
      { name: 'plate.svg', format: 'svg', text: svg },
      { size: [100, 60], holes: [...TEST_HOLES] },
    );
    expect(report.problems).toEqual([]);
    expect(report).toMatchObject({ closedLoops: 6, smallestHole: 4 });
  });

  it.each([
    [25.4, /inches read as millimetres/],
    [96 / 25.4, /96 pixels an inch/],
    [0.26458, /96 pixels an inch read/],
    [72 / 25.4, /points/],
  ])('scaled by %f is recognised', (factor, cause) => {
    const scaled = svg.replace(/width="100mm" height="60mm"/, `width="${100 * factor}mm" height="${60 * factor}mm"`);
    expect(preflight({ name: 'plate.svg', format: 'svg', text: scaled }, { size: [100, 60] }).problems.join()).toMatch(
      cause,
    );
  });
});

describe('a mirrored sheet', () => {
  it('mirrors places and keeps the size', () => {
    const sheets = allSheets(everyConstruction());
    const [up, down] = ['marked-face-numbers.svg', 'other-face-mirrored-numbers.svg'].map(
      (end) => sheets.find(({ name }) => name.endsWith(end))?.text ?? '',
    );
    const holes = (text = '') =>
      preflight({ name: 'a.svg', format: 'svg', text }).holes.map(({ x, y }) => [x, y] as const);
    const a = holes(up);
    const b = holes(down);
    expect(a.length).toBe(13);
    const sum = (a[0]?.[0] ?? 0) + (b[0]?.[0] ?? 0);
    a.forEach(([x, y], index) => {
      expect(x + (b[index]?.[0] ?? 0)).toBeCloseTo(sum, 5);
      expect(y).toBeCloseTo(b[index]?.[1] ?? 0, 5);
    });
    expect(down).toContain('mirrored');
  });
});
