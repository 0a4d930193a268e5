/** The gradients of a network rule's equations at given places: one, or two for the exact kinds. */
import { pointsOfKind, residualOf } from '../kernel/residual.ts';
import type { Network } from '../network.ts';
import { partsOf } from './derivedPoints.ts';
import type { GradientTerm } from './equation.ts';

/** Gradients of the residuals (mm) by the points of the rule. */
export function equationsOfRule(network: Network, coords: Float64Array, rule: number): GradientTerm[][] {
  const exact = partsOf(network, rule);
  if (exact) {
    return [0, 1].map((axis) =>
      exact.map(({ point, matrix }) => ({
        point,
        gx: matrix[axis === 0 ? 0 : 2],
        gy: matrix[axis === 0 ? 1 : 3],
      })),
    );
  }
  const { kinds, points, values } = network;
  const kind = kinds[rule] ?? 0;
  const gradient = new Float64Array(8);
  residualOf(kind, points, 4 * rule, values, 3 * rule, coords, gradient);
  const terms: GradientTerm[] = [];
  const count = pointsOfKind(kind, points[4 * rule + 2] ?? -1);
  for (let k = 0; k < count; k++) {
    terms.push({ point: points[4 * rule + k] ?? 0, gx: gradient[2 * k] ?? 0, gy: gradient[2 * k + 1] ?? 0 });
  }
  return [terms];
}
