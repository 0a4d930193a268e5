/**
 * Which rules repeat others, from the vectors y with yᵀJ = 0 at the places found.
 *
 * A rule depends on those listed before it when such a vector ends at it. The vectors are what is left of random ones
 * when their part in the range of J is taken out. Array kernel: indices come from the loaded system, hence the `!`.
 */
import { Matrix, SVD } from 'ml-matrix';
import { LACKING, times, timesTransposed } from './nearNull.ts';
import { patternOf, SparseNormal } from './sparseNormal.ts';
import type { System } from './system.ts';

/** Component below which a rule takes no part in a dependence: far above what rounding leaves of none. */
const NO_PART = 1e-6;
/** Vectors drawn beyond the number of dependences, so that all of them show. */
const MORE = 2;
/** Coordinates up to which a dense decomposition takes the range out, and the damping of the sparse one. */
const MOST_DENSE = 60;
const MU = 1e-13;

/**
 * The rules of the loaded system that depend on those listed before them: as many as `count`, the number of rules less
 * the rank. The Jacobian must be current.
 */
export function dependentRules(system: System, count: number): number[] {
  if (count <= 0) return [];
  const rows = system.ruleCount;
  const left = leftNull(system, Math.min(rows, count + MORE), count);
  // Eliminate from the last rule upwards: each pivot is a rule that depends on earlier ones.
  const found: number[] = [];
  let open = left;
  for (let i = rows - 1; i >= 0 && open.length > 0; i--) {
    let pivot = open[0]!;
    for (const vector of open) if (Math.abs(vector[i]!) > Math.abs(pivot[i]!)) pivot = vector;
    if (Math.abs(pivot[i]!) <= NO_PART) continue;
    found.push(system.rules[i]!);
    open = open.filter((vector) => vector !== pivot);
    for (const vector of open) {
      const share = vector[i]! / pivot[i]!;
      for (let j = 0; j <= i; j++) vector[j]! -= share * pivot[j]!;
    }
  }
  return found.reverse();
}

/** An orthonormal basis of the vectors across the range of J: `count` of them, from `drawn` random ones. */
function leftNull(system: System, drawn: number, count: number): Float64Array[] {
  const rows = system.ruleCount;
  const across = 2 * system.rootCount <= MOST_DENSE ? denseAcross(system) : sparseAcross(system);
  const matrix = new Matrix(Math.max(rows, drawn), drawn);
  for (let k = 0; k < drawn; k++) {
    const vector = Float64Array.from({ length: rows }, (_, i) =>
      Math.sin(2 + (i + 1) * (0.4 + 1.237 * (k + 1)) + 3 * k),
    );
    across(vector).forEach((v, i) => {
      matrix.set(i, k, v);
    });
  }
  const svd = new SVD(matrix, { computeLeftSingularVectors: true, computeRightSingularVectors: false });
  const order = svd.diagonal.map((_, k) => k).sort((a, b) => svd.diagonal[b]! - svd.diagonal[a]!);
  const left = svd.leftSingularVectors;
  return order.slice(0, count).map((k) => Float64Array.from({ length: rows }, (_, i) => left.get(i, k)));
}

/** Takes the part in the range of J out of a vector, by its decomposition. */
function denseAcross(system: System): (vector: Float64Array) => Float64Array {
  const [rows, columns] = [system.ruleCount, 2 * system.rootCount];
  const matrix = Matrix.zeros(Math.max(rows, columns), columns);
  for (let i = 0; i < rows; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      matrix.set(i, column, matrix.get(i, column) + system.jacobian[2 * e]!);
      matrix.set(i, column + 1, matrix.get(i, column + 1) + system.jacobian[2 * e + 1]!);
    }
  }
  const svd = new SVD(matrix, { computeLeftSingularVectors: true, computeRightSingularVectors: false });
  const most = Math.max(1e-300, ...svd.diagonal);
  const range = svd.diagonal.flatMap((value, k) => (value > LACKING * most ? [k] : []));
  return (vector) => {
    const rest = vector.slice();
    for (const k of [...range, ...range]) {
      let share = 0;
      for (let i = 0; i < rows; i++) share += rest[i]! * svd.leftSingularVectors.get(i, k);
      for (let i = 0; i < rows; i++) rest[i]! -= share * svd.leftSingularVectors.get(i, k);
    }
    return rest;
  };
}

/** The same by normal equations; each further pass takes out what the damping left in. */
function sparseAcross(system: System): (vector: Float64Array) => Float64Array {
  const normal = new SparseNormal();
  normal.take(patternOf(system));
  normal.assemble(system);
  for (let mu = MU; !normal.factor(mu) && mu < 1e-6; mu *= 10);
  return (vector) => {
    const rest = vector.slice();
    for (let pass = 0; pass < 3; pass++) {
      const x = timesTransposed(system, rest);
      normal.solve(x);
      const part = times(system, x);
      for (let i = 0; i < rest.length; i++) rest[i]! -= part[i]!;
    }
    return rest;
  };
}
