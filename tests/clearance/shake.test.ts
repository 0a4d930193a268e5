import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlayBound } from '../../solver/clearance/shake/lean.ts';
import { sideMovementAt } from '../../solver/clearance/shake/shake.ts';

describe('side movement of an arbor in its bearings', () => {
  it('between two bearings it is the mean of their plays by height; outside it grows by the lever (common practice)', () => {
    const bounds = [
      { z: 0, play: 0.02 },
      { z: 40, play: 0.04 },
    ];
    expect(sideMovementAt(bounds, 0)).toBeCloseTo(0.02, 12);
    expect(sideMovementAt(bounds, 20)).toBeCloseTo(0.03, 12);
    expect(sideMovementAt(bounds, 40)).toBeCloseTo(0.04, 12);
    // Past the upper bearing by half the span: 0.04·1.5 + 0.02·0.5.
    expect(sideMovementAt(bounds, 60)).toBeCloseTo(0.07, 12);
  });

  it('a lean of one degree over 40 mm is 0.698 mm: the workshop figure for a hole drilled out of square', () => {
    // One short bearing of 2 mm that lets the stick lean by one degree: play on each end of its length.
    const play = Math.tan(Math.PI / 180);
    const bounds = [
      { z: -1, play },
      { z: 1, play },
    ];
    expect(sideMovementAt(bounds, 40)).toBeCloseTo(40 * Math.tan(Math.PI / 180), 9);
    expect(sideMovementAt(bounds, 40)).toBeCloseTo(0.698, 3);
  });

  it('is the optimum over many sticks that keep all bounds, and no stick beats it', () => {
    const bound = fc.record({
      z: fc.integer({ min: 0, max: 600 }).map((n) => n / 10),
      play: fc.integer({ min: 1, max: 50 }).map((n) => n / 1000),
    });
    const bounds = fc.uniqueArray(bound, { minLength: 2, maxLength: 6, selector: (b) => b.z });
    fc.assert(
      fc.property(bounds, fc.integer({ min: -200, max: 900 }), (list, tenths) => {
        const z = tenths / 10;
        const most = sideMovementAt(list, z);
        expect(most).toBeLessThanOrEqual(sampledMovement(list, z) + 1e-9 + most * 0.02);
        expect(most).toBeGreaterThanOrEqual(sampledMovement(list, z) - 1e-9);
      }),
    );
  });

  it('without bearings the drawing is taken at its word', () => {
    expect(sideMovementAt([], 10)).toBe(0);
  });
});

/** Best of many sticks: every slope on a fine grid, pushed aside as far as the bounds let it. */
function sampledMovement(bounds: readonly PlayBound[], z: number): number {
  const zs = bounds.map((bound) => bound.z);
  const span = Math.max(...zs) - Math.min(...zs);
  const limit = (2 * Math.max(...bounds.map((bound) => bound.play))) / span;
  let most = 0;
  for (let i = -4000; i <= 4000; i++) {
    const slope = (limit * i) / 4000;
    const upper = Math.min(...bounds.map((bound) => bound.play - slope * bound.z));
    const lower = Math.max(...bounds.map((bound) => -bound.play - slope * bound.z));
    if (upper < lower) continue;
    most = Math.max(most, Math.abs(upper + slope * z), Math.abs(lower + slope * z));
  }
  return most;
}
