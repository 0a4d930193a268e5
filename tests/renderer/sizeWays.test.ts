/** Sizes of teeth told three ways. Definitions: m = 25.4 / DP = CP / π; 20 DP is module 1.27, common practice. */
import { expect, test } from 'vitest';
import { SIZE_WAYS, sizeAs, sizeValueOf, sizeWayOf } from '../../renderer/slips/sizeWays.ts';
import { moduleOf } from '../../solver/teeth/index.ts';

test('20 DP is module 1.27, and there and back is the same', () => {
  expect(sizeAs({ diametralPitch: 20 }, 'module')).toEqual({ module: 1.27 });
  expect(sizeAs({ module: 1.27 }, 'diametralPitch')).toEqual({ diametralPitch: 20 });
  expect(sizeValueOf(sizeAs({ module: 1 }, 'circularPitch'))).toBeCloseTo(Math.PI, 10);
});

test('every way keeps the module', () => {
  for (const size of [{ module: 0.7 }, { diametralPitch: 32 }, { circularPitch: 2.5 }]) {
    for (const { value: way } of SIZE_WAYS) {
      const told = sizeAs(size, way);
      expect(sizeWayOf(told)).toBe(way);
      expect(moduleOf(told)).toBeCloseTo(moduleOf(size), 10);
    }
  }
});
