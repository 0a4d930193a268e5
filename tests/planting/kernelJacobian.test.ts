/** Every rule's gradient against central differences, and the checker against a gradient that is wrong on purpose. */
import { describe, expect, it } from 'vitest';
import { residualOf } from '../../solver/planting/kernel/residual.ts';
import { RuleKind } from '../../solver/planting/network.ts';
import { seeded } from './scenes/random.ts';

type Residual = (coords: Float64Array, grad?: Float64Array) => number;

/** Largest difference between the gradient and central differences with steps relative to the coordinates. */
function gradientError(residual: Residual, coords: Float64Array): number {
  const grad = new Float64Array(8);
  residual(coords, grad);
  let worst = 0;
  for (let k = 0; k < coords.length; k++) {
    const value = coords[k] as number; // below the length
    const h = 1e-5 * Math.max(1, Math.abs(value));
    coords[k] = value + h;
    const above = residual(coords);
    coords[k] = value - h;
    const below = residual(coords);
    coords[k] = value;
    worst = Math.max(worst, Math.abs((above - below) / (2 * h) - (grad[k] as number))); // eight numbers
  }
  return worst;
}

const kinds = [
  ['distance', RuleKind.distance, [0, 1, -1, -1], 2],
  ['ray', RuleKind.ray, [0, 1, -1, -1], 2],
  ['ray from a reference', RuleKind.ray, [0, 1, 2, -1], 3],
  ['inLine', RuleKind.inLine, [0, 1, 2, -1], 3],
  ['sameRadius', RuleKind.sameRadius, [0, 1, 2, -1], 3],
  ['onLine', RuleKind.onLine, [0, -1, -1, -1], 1],
  ['level', RuleKind.level, [0, 1, -1, -1], 2],
  ['abreast', RuleKind.abreast, [0, 1, -1, -1], 2],
  ['halfway', RuleKind.halfway, [0, 1, -1, -1], 2],
] as const;

const residualAt =
  (kind: number, points: readonly number[], values: Float64Array): Residual =>
  (coords, grad) =>
    residualOf(kind, Int32Array.from(points), 0, values, 0, coords, grad);

describe('gradients', () => {
  for (const [name, kind, points, used] of kinds) {
    it(`${name}: near, far, and where lengths differ a thousandfold`, () => {
      const random = seeded(17 + kind);
      for (let n = 0; n < 200; n++) {
        const scale = 10 ** (4 * random() - 1);
        const coords = Float64Array.from({ length: 2 * used }, () => scale * (random() - 0.5) * 2);
        const values = Float64Array.from([kind === RuleKind.onLine ? 0.6 : 3 * random(), 0.8, 2]);
        const residual = residualAt(kind, points, values);
        // The cut behind a ray's start, where the angle wraps, has no derivative.
        if (
          kind === RuleKind.ray &&
          Math.abs(residual(coords)) >
            2.8 *
              Math.hypot((coords[0] as number) - (coords[2] as number), (coords[1] as number) - (coords[3] as number))
        ) {
          continue;
        } // two points
        const arms = [0, 1, 2].map((i) =>
          Math.hypot((coords[0] ?? 0) - (coords[2 * i] ?? 9e9), (coords[1] ?? 0) - (coords[2 * i + 1] ?? 9e9)),
        );
        const between = Math.hypot((coords[2] ?? 9e9) - (coords[4] ?? 0), (coords[3] ?? 0) - (coords[5] ?? 0));
        if (Math.min(...arms.slice(1), between) < 0.05 * scale) continue;
        expect(gradientError(residual, coords)).toBeLessThan(1e-5);
      }
    });
  }

  it('the checker catches a gradient with one wrong sign', () => {
    const right = residualAt(RuleKind.inLine, [0, 1, 2, -1], new Float64Array(3));
    const wrong: Residual = (coords, grad) => {
      const value = right(coords, grad);
      if (grad) grad[3] = -(grad[3] as number); // eight numbers
      return value;
    };
    const coords = Float64Array.from([3, 4, 0, 0, 10, 1]);
    expect(gradientError(right, coords)).toBeLessThan(1e-8);
    expect(gradientError(wrong, coords)).toBeGreaterThan(0.1);
  });

  it('does not depend on whether a gradient is wanted', () => {
    for (const [, kind, points, used] of kinds) {
      const coords = Float64Array.from({ length: 2 * used }, (_, k) => 3 + 7 * Math.sin(k));
      const residual = residualAt(kind, points, Float64Array.from([0.6, 0.8, 2]));
      expect(residual(coords, new Float64Array(8))).toBe(residual(coords));
    }
  });
});
