import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BALLOON_RADIUS, placeBalloons } from '../../renderer/bench/balloons.ts';
import type { LabelBox } from '../../renderer/bench/labelPlacement.ts';
import type { Point } from '../../solver/geometry/index.ts';

const window: LabelBox = [0, 0, 800, 600];
const middle = { x: 400, y: 300 };
const spot = fc.record({ x: fc.integer({ min: 30, max: 770 }), y: fc.integer({ min: 30, max: 570 }) });
const asked = (places: readonly Point[]) => places.map((to, index) => ({ key: `${index}`, number: index + 1, to }));
const side = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);

describe('balloons of findings', () => {
  it('keep clear of each other and of the signs, and their leads do not cross', () => {
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 2, maxLength: 9 }),
        fc.array(spot, { maxLength: 12 }),
        (places, signs) => {
          const blocked = signs.map(({ x, y }): LabelBox => [x - 10, y - 10, x + 10, y + 10]);
          const placed = placeBalloons(asked(places), { middle, window, blocked, rings: [] });
          for (const [index, a] of placed.entries()) {
            for (const sign of signs) {
              const inside = Math.abs(sign.x - a.at.x) < 10 && Math.abs(sign.y - a.at.y) < 10;
              expect(inside).toBe(false);
            }
            for (const b of placed.slice(index + 1)) {
              expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y)).toBeGreaterThan(2 * BALLOON_RADIUS);
              const crossing =
                side(a.at, a.to, b.at) * side(a.at, a.to, b.to) < 0 &&
                side(b.at, b.to, a.at) * side(b.at, b.to, a.to) < 0;
              expect(crossing).toBe(false);
            }
          }
        },
      ),
    );
  });

  it('stand outward of their place on open paper, and off line work where they can', () => {
    const to = { x: 500, y: 300 };
    const [open] = placeBalloons(asked([to]), { middle, window, blocked: [], rings: [] });
    expect(open?.at).toEqual({ x: 544, y: 300 });
    const rings = [{ at: { x: 300, y: 300 }, radius: 244 }];
    const [beside] = placeBalloons(asked([to]), { middle, window, blocked: [], rings });
    const off = Math.abs(Math.hypot((beside?.at.x ?? 0) - 300, (beside?.at.y ?? 0) - 300) - 244);
    expect(off).toBeGreaterThanOrEqual(BALLOON_RADIUS);
  });

  it('leave out what lies outside the window', () => {
    expect(placeBalloons(asked([{ x: -5, y: 10 }]), { middle, window, blocked: [], rings: [] })).toEqual([]);
  });
});
