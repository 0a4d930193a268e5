/** The edge of a region of cells: its area, its holes and corners that only touch. */
import { describe, expect, test } from 'vitest';
import { regionOutlines } from '../../renderer/clearance/regionOutline.ts';

const area = (loop: readonly { x: number; y: number }[]): number =>
  loop.reduce((sum, a, i) => {
    const b = loop[(i + 1) % loop.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);

/** Middles of all cells of 2 mm about the origin that `takes` wants. */
function cells(takes: (distance: number) => boolean) {
  const found = [];
  for (let x = -40; x <= 40; x += 2) {
    for (let y = -40; y <= 40; y += 2) if (takes(Math.hypot(x, y))) found.push({ x, y });
  }
  return found;
}

describe('outlines of a region of cells', () => {
  test('go round a disc once, and enclose what the cells cover but for the corners', () => {
    const middles = cells((d) => d <= 30);
    const loops = regionOutlines(middles, 2);
    expect(loops).toHaveLength(1);
    expect(area(loops[0] ?? [])).toBeGreaterThan(0.97 * 4 * middles.length);
    expect(area(loops[0] ?? [])).toBeLessThanOrEqual(4 * middles.length);
  });

  test('run the other way round a hole', () => {
    const areas = regionOutlines(
      cells((d) => d <= 30 && d >= 12),
      2,
    ).map(area);
    expect(areas.map(Math.sign).sort()).toEqual([-1, 1]);
  });

  test('keep two cells apart that touch at a corner', () => {
    const loops = regionOutlines(
      [
        { x: 0, y: 0 },
        { x: 2, y: 2 },
      ],
      2,
    );
    expect(loops).toHaveLength(2);
    expect(regionOutlines([], 2)).toEqual([]);
  });
});
