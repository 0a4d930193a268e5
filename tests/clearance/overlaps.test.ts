/** An overlap is told as the overlap, the way out as the way out; what shares no level never touches. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMovement, gapBetween } from '../../solver/clearance/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { twoWheels } from './scenes.ts';
import { wordsOf } from './wordsOf.ts';

const part = (id: string): PartId => id as PartId; // ids of the scenes

describe('an overlap', () => {
  it('of a wheel 1.5 thick within one of 9 is 1.5, and 5 is the way out', () => {
    const movement = twoWheels(20, [30, 0, 9], [30, 3.5, 1.5]);
    const [finding] = checkMovement(plantMovement(movement)).filter(({ kind }) => kind === 'fouls');
    expect(finding).toMatchObject({ gap: -1.5, wayOut: 5 });
    expect(finding && wordsOf(movement).finding(finding)).toBe(
      'A (a) and b (b) stand in each other: their levels overlap by 1.500 mm; they are clear of each other after 5.000 mm.',
    );
    expect(gapBetween(plantMovement(movement), part('a'), part('b'))?.gap).toBe(-1.5);
  });

  it('is never more than either of the two is there, and the way out never less', () => {
    const tip = fc.integer({ min: 12, max: 60 });
    const level = fc.integer({ min: 0, max: 12 });
    const thick = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), tip, tip, level, thick, thick, (apart, one, other, z, h, k) => {
        const placed = plantMovement(twoWheels(apart, [one, 0, h], [other, z, k]));
        for (const { kind, gap = 0, wayOut = -gap, cause } of checkMovement(placed)) {
          if (kind !== 'fouls' || cause.kind !== 'gap') continue;
          const most = cause.direction === 'height' ? Math.min(h, k) : Math.min(one, other);
          expect(-gap).toBeLessThanOrEqual(most + 1e-9);
          expect(wayOut).toBeGreaterThanOrEqual(-gap - 1e-9);
          // Two that foul share a level.
          expect(Math.min(h, z + k) - Math.max(0, z)).toBeGreaterThan(0);
        }
      }),
    );
  });
});
