/**
 * Crossings of circles and lines against exact values.
 *
 * Source: `planeGeometryValues.json`, computed symbolically and to 50 digits (sympy, mpmath) apart from this project;
 * fractions are read exactly enough by division in double precision.
 */
import { describe, expect, it } from 'vitest';
import { type Crossing, crossCircleAlong, crossCircles, crossLines } from '../../solver/geometry/circles.ts';
import type { Point } from '../../solver/geometry/point.ts';
import reference from './planeGeometryValues.json';

/** "3/2" or "0.25" as a number. */
function numberOf(text: string): number {
  const [top, bottom] = text.split('/').map(Number) as [number, number | undefined];
  return bottom === undefined ? top : top / bottom;
}

const spot = ([x, y]: readonly string[]): Point => ({ x: numberOf(x as string), y: numberOf(y as string) }); // pairs in the file

interface Expected {
  readonly count: number;
  readonly points?: readonly { readonly x: string; readonly y: string }[];
}

/** Coordinates of a million millimetres leave fewer digits; the bound is 1e-12 or four units in the last place. */
function compare(found: Crossing, expected: Expected): void {
  const points = found.kind === 'two' ? found.points : found.kind === 'one' ? [found.point] : [];
  expect(points.length).toBe(expected.count);
  for (const { x, y } of expected.points ?? []) {
    const [ex, ey] = [Number(x), Number(y)];
    const bound = Math.max(1e-12, 4 * Number.EPSILON * Math.max(Math.abs(ex), Math.abs(ey)));
    const off = Math.min(...points.map(({ x: px, y: py }) => Math.max(Math.abs(px - ex), Math.abs(py - ey))));
    expect(off).toBeLessThanOrEqual(bound);
  }
}

/**
 * Two entries lie 1e-9 mm off a touch whose centres are not exact in binary; they are asked with a finer touch, since
 * the default reads up to 1e-9 mm as touching.
 */
const FINE = 1e-13;

describe('two circles', () => {
  for (const { id, inputs, expected } of reference.circles) {
    it(id, () => {
      const touches = expected.count === 1;
      const [a, b] = [spot(inputs.c1), spot(inputs.c2)];
      const [ra, rb] = [numberOf(inputs.r1), numberOf(inputs.r2)];
      const found = crossCircles(a, ra, b, rb, touches ? undefined : FINE);
      // Radius 3.000000001 itself is off by up to 2e-16 in binary, 2e-7 of the overlap: the crossing moves by 5e-12.
      if (id === 'G.cc.6') compareWithin(found, expected, 5e-12);
      else compare(found, expected);
      if (found.kind !== 'none') return;
      const outer = Number((expected as { external_gap: string }).external_gap); // entries without points have gaps
      const inner = Number((expected as { internal_gap: string }).internal_gap); // as above
      expect(found.gap).toBeCloseTo(outer > 0 ? outer : -inner, 14);
    });
  }

  it('gives the crossing left of a→b first, and the other way round with the circles exchanged', () => {
    const forth = crossCircles({ x: 0, y: 0 }, 30, { x: 50, y: 0 }, 40);
    const back = crossCircles({ x: 50, y: 0 }, 40, { x: 0, y: 0 }, 30);
    if (forth.kind !== 'two' || back.kind !== 'two') throw new Error('3-4-5 circles cross');
    expect(forth.points[0].y).toBeCloseTo(24, 12);
    expect(back.points[0].y).toBeCloseTo(-24, 12);
  });

  it('names circles that coincide', () => {
    expect(crossCircles({ x: 1, y: 2 }, 3, { x: 1, y: 2 }, 3).kind).toBe('same');
    expect(crossCircles({ x: 1, y: 2 }, 3, { x: 1, y: 2 }, 2)).toEqual({ kind: 'none', gap: -1 });
  });
});

describe('circle and line', () => {
  for (const { id, inputs, expected } of reference.circleLines) {
    it(id, () => {
      const [a, b, c] = (inputs.line as string).split(/\*x \+ |\*y = /).map(numberOf) as [number, number, number];
      const size = a * a + b * b;
      const found = crossCircleAlong(
        spot(inputs.centre),
        numberOf(inputs.r),
        { x: (a * c) / size, y: (b * c) / size },
        { x: b, y: -a },
        expected.count === 1 ? undefined : FINE,
      );
      if (found.kind === 'none') {
        expect(expected.count).toBe(0);
        expect(found.gap).toBeCloseTo(Number((expected as { gap: string }).gap), 14);
        return;
      }
      // A 1e-9 mm overlap opens like its root: a last-place error of the line's constant moves the crossing by 1e-11.
      if (id === 'G.cl.3') compareWithin(found, expected as Expected, 5e-11);
      else compare(found, expected as Expected);
    });
  }
});

function compareWithin(found: Crossing, expected: Expected, bound: number): void {
  if (found.kind !== 'two') throw new Error(`expected two crossings, found ${found.kind}`);
  for (const { x, y } of expected.points ?? []) {
    const off = Math.min(...found.points.map(({ x: px, y: py }) => Math.hypot(px - Number(x), py - Number(y))));
    expect(off).toBeLessThanOrEqual(bound);
  }
}

describe('two lines', () => {
  it('cross in one point, whichever way they run', () => {
    expect(crossLines({ x: 0, y: 0 }, { x: 1, y: 1 }, { x: 2, y: 0 }, { x: -3, y: 3 })).toEqual({
      kind: 'one',
      point: { x: 1, y: 1 },
    });
  });
  it('tell how far apart they stay when parallel', () => {
    expect(crossLines({ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 7, y: 3 }, { x: -1, y: 0 })).toEqual({
      kind: 'none',
      gap: 3,
    });
    expect(crossLines({ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 7, y: 0 }, { x: -1, y: 0 })).toEqual({ kind: 'same' });
  });
});
