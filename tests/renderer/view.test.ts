/** The one place where millimetres become pixels: there and back, zooming about a pixel, fitting. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitTo,
  MAX_SCALE,
  MIN_SCALE,
  panBy,
  resized,
  seenBounds,
  toScreen,
  toWorld,
  type View,
  zoomAt,
} from '../../renderer/state/view.ts';

const mm = fc.double({ min: -20_000, max: 20_000, noNaN: true });
const px = fc.double({ min: -2000, max: 4000, noNaN: true });
const pixel = fc.record({ x: px, y: px });
const place = fc.record({ x: mm, y: mm });
const view: fc.Arbitrary<View> = fc.record({
  centre: place,
  scale: fc.double({ min: MIN_SCALE, max: MAX_SCALE, noNaN: true }),
  width: fc.integer({ min: 200, max: 4000 }),
  height: fc.integer({ min: 200, max: 4000 }),
});

describe('view', () => {
  it('gives every pixel back after going to millimetres, to a thousandth of a pixel', () => {
    fc.assert(
      fc.property(view, pixel, (seen, at) => {
        const back = toScreen(seen, toWorld(seen, at));
        // Doubles at 20 m keep 4e-12 mm; at the greatest zoom that is 2e-8 px.
        expect(Math.hypot(back.x - at.x, back.y - at.y)).toBeLessThan(1e-3);
      }),
    );
  });

  it('has y up in the world and down on the screen, and the middle in the middle', () => {
    fc.assert(
      fc.property(view, (seen) => {
        const middle = toScreen(seen, seen.centre);
        expect([middle.x, middle.y]).toEqual([seen.width / 2, seen.height / 2]);
        expect(toScreen(seen, { x: seen.centre.x, y: seen.centre.y + 1 }).y).toBeLessThan(middle.y);
        expect(toScreen(seen, { x: seen.centre.x + 1, y: seen.centre.y }).x).toBeGreaterThan(middle.x);
      }),
    );
  });

  it('keeps the place under the pixel that is zoomed about', () => {
    fc.assert(
      fc.property(view, pixel, fc.double({ min: 0.2, max: 5, noNaN: true }), (seen, at, factor) => {
        const under = toWorld(seen, at);
        const after = toScreen(zoomAt(seen, at, factor), under);
        expect(Math.hypot(after.x - at.x, after.y - at.y)).toBeLessThan(1e-3);
      }),
    );
  });

  it('never zooms past its limits', () => {
    fc.assert(
      fc.property(view, pixel, fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (seen, at, factor) => {
        const { scale } = zoomAt(seen, at, factor);
        expect(scale).toBeGreaterThanOrEqual(MIN_SCALE);
        expect(scale).toBeLessThanOrEqual(MAX_SCALE);
      }),
    );
  });

  it('moves what is seen by as many pixels as it is dragged', () => {
    fc.assert(
      fc.property(view, px, px, (seen, dx, dy) => {
        const before = toScreen(seen, seen.centre);
        const after = toScreen(panBy(seen, dx, dy), seen.centre);
        expect(after.x - before.x).toBeCloseTo(dx, 3);
        expect(after.y - before.y).toBeCloseTo(dy, 3);
      }),
    );
  });

  it('fits any work inside its margin, and the empty bench too', () => {
    const size = fc.double({ min: 0.1, max: 8000, noNaN: true });
    fc.assert(
      fc.property(view, place, size, size, (seen, { x, y }, across, up) => {
        const [left, low, right, high] = seenBounds(fitTo(seen, [x, y, x + across, y + up]));
        const slack = 1e-6 * Math.max(across, up, 1);
        expect(left).toBeLessThanOrEqual(x + slack);
        expect(low).toBeLessThanOrEqual(y + slack);
        expect(right).toBeGreaterThanOrEqual(x + across - slack);
        expect(high).toBeGreaterThanOrEqual(y + up - slack);
      }),
    );
    const empty = fitTo({ centre: { x: 9, y: 9 }, scale: 1, width: 800, height: 600 }, undefined);
    expect(empty.centre).toEqual({ x: 0, y: 0 });
    expect(Number.isFinite(empty.scale)).toBe(true);
  });

  it('keeps the middle when the window changes its size', () => {
    const seen: View = { centre: { x: 3, y: 4 }, scale: 2, width: 800, height: 600 };
    expect(resized(seen, 500, 900)).toEqual({ ...seen, width: 500, height: 900 });
  });
});
