/**
 * What planting is measured against: a general least-squares library, and bare evaluation of the closed forms.
 *
 * Both solve the same networks in the same run. The library gets our analytic Jacobian, so that it is not slowed by
 * numerical derivatives.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { crossCirclesInto } from '../../solver/geometry/circles.ts';
import { residualOf } from '../../solver/planting/kernel/residual.ts';
import type { Network } from '../../solver/planting/network.ts';

/** Unknown coordinates of a network in order, and where each point's are (or -1). */
function unknownsOf(network: Network): { start: number[]; columnOf: Int32Array } {
  const columnOf = new Int32Array(network.pointCount).fill(-1);
  const start: number[] = [];
  for (let i = 0; i < network.pointCount; i++) {
    if (network.held[i]) continue;
    columnOf[i] = start.length;
    start.push(network.coords[2 * i] as number, network.coords[2 * i + 1] as number); // two a point
  }
  return { start, columnOf };
}

/** Solves a network of distances with ml-levenberg-marquardt; returns all places and the largest miss, mm. */
export function solveByLibrary(network: Network): { coords: Float64Array; worst: number; iterations: number } {
  const { start, columnOf } = unknownsOf(network);
  const coords = Float64Array.from(network.coords);
  const put = (params: readonly number[]): void => {
    for (let i = 0; i < network.pointCount; i++) {
      const column = columnOf[i] as number; // one a point
      if (column < 0) continue;
      coords[2 * i] = params[column] as number; // two a point
      coords[2 * i + 1] = params[column + 1] as number; // as above
    }
  };
  const { kinds, points, values, ruleCount } = network;
  const residual = (r: number, grad?: Float64Array): number =>
    residualOf(kinds[r] as number, points, 4 * r, values, 3 * r, coords, grad); // one kind a rule
  const grad = new Float64Array(8);
  const found = levenbergMarquardt(
    { x: Array.from({ length: ruleCount }, (_, r) => r), y: new Array<number>(ruleCount).fill(0) },
    (params) => {
      put(params);
      return (r) => residual(r);
    },
    {
      initialValues: start,
      damping: 1e-2,
      maxIterations: 60,
      errorTolerance: 1e-22,
      improvementThreshold: 1e-3,
      jacobianFunction: (params) => {
        put(params);
        return (r) => {
          const row = new Array<number>(start.length).fill(0);
          residual(r, grad);
          for (const k of [0, 1]) {
            const column = columnOf[points[4 * r + k] as number] as number; // distances have two points
            if (column < 0) continue;
            row[column] = (row[column] as number) + (grad[2 * k] as number); // within the row
            row[column + 1] = (row[column + 1] as number) + (grad[2 * k + 1] as number); // as above
          }
          return row;
        };
      },
    },
  );
  put(found.parameterValues);
  let worst = 0;
  for (let r = 0; r < ruleCount; r++) worst = Math.max(worst, Math.abs(residual(r)));
  return { coords, worst, iterations: found.iterations };
}

/** The closed forms alone, in a given order and with given hands: what no planting can beat. */
export class BareForms {
  private readonly order: { root: number; a: number; b: number; ra: number; rb: number }[] = [];
  private readonly out = new Float64Array(4);

  /** The rules of new point i + 2 are 2 i and 2 i + 1, as `constructedNetwork` writes them. */
  constructor(network: Network, known: Float64Array) {
    for (let r = 0; r < network.ruleCount; r += 2) {
      const [root, a] = [network.points[4 * r] as number, network.points[4 * r + 1] as number]; // written so
      const b = network.points[4 * r + 5] as number; // as above
      const [ra, rb] = [network.values[3 * r] as number, network.values[3 * r + 3] as number]; // as above
      const at = (i: number, k: number): number => known[2 * i + k] as number; // known has all points
      const across =
        (at(b, 0) - at(a, 0)) * (at(root, 1) - at(a, 1)) - (at(b, 1) - at(a, 1)) * (at(root, 0) - at(a, 0));
      this.order.push(across > 0 ? { root, a, b, ra, rb } : { root, a: b, b: a, ra: rb, rb: ra });
    }
  }

  place(coords: Float64Array): Float64Array {
    const { out } = this;
    for (const { root, a, b, ra, rb } of this.order) {
      const [ax, ay] = [coords[2 * a] as number, coords[2 * a + 1] as number]; // in range
      crossCirclesInto(out, ax, ay, ra, coords[2 * b] as number, coords[2 * b + 1] as number, rb); // as above
      coords[2 * root] = out[0] as number; // four numbers
      coords[2 * root + 1] = out[1] as number; // as above
    }
    return coords;
  }
}
