/**
 * Free motions: the null space of the rules' Jacobian at the places found.
 *
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import { Matrix, SVD } from 'ml-matrix';
import { sparseMotions } from './sparseFreedom.ts';
import type { System } from './system.ts';

/** A displacement of some roots that keeps every rule to first order; the largest component is 1. */
export interface Motion {
  readonly roots: Int32Array;
  /** [dx, dy] per root. */
  readonly shift: Float64Array;
}

/** Singular value, over the largest, below which a motion is free: half of the sixteen digits. */
const FREE = 1e-8;
/** Coordinates up to which the dense decomposition is used: it is exact, and beyond this it takes more than 10 ms. */
const MOST_DENSE = 60;
/** Component of a motion below which a root does not take part. */
export const STILL = 1e-7;

/** The system's Jacobian as a dense matrix with at least as many rows as columns. */
export function denseJacobian(system: System): Matrix {
  const columns = 2 * system.rootCount;
  const matrix = Matrix.zeros(Math.max(system.ruleCount, columns), columns);
  for (let i = 0; i < system.ruleCount; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const column = 2 * system.rowRoot[e]!;
      matrix.set(i, column, matrix.get(i, column) + system.jacobian[2 * e]!);
      matrix.set(i, column + 1, matrix.get(i, column + 1) + system.jacobian[2 * e + 1]!);
    }
  }
  return matrix;
}

/** All free motions of the loaded system; its Jacobian must be current. */
export function motionsOf(system: System): Motion[] {
  const columns = 2 * system.rootCount;
  if (system.ruleCount === 0) return unitMotions(system);
  if (columns > MOST_DENSE) {
    const found = sparseMotions(system, Math.max(0, columns - system.ruleCount));
    return found.map((shift) => ({ roots: system.roots.slice(), shift: scaled(shift) }));
  }
  const svd = new SVD(denseJacobian(system), { computeLeftSingularVectors: false, computeRightSingularVectors: true });
  const values = svd.diagonal;
  const most = Math.max(1e-300, ...values);
  const motions: Motion[] = [];
  const right = svd.rightSingularVectors;
  for (let k = 0; k < columns; k++) {
    if (values[k]! > FREE * most) continue;
    const shift = new Float64Array(columns);
    for (let i = 0; i < columns; i++) shift[i] = right.get(i, k);
    motions.push({ roots: system.roots.slice(), shift: scaled(shift) });
  }
  return motions;
}

/** Without rules every coordinate is free. */
function unitMotions(system: System): Motion[] {
  const motions: Motion[] = [];
  for (let i = 0; i < system.rootCount; i++) {
    const roots = Int32Array.of(system.roots[i]!);
    motions.push({ roots, shift: Float64Array.of(1, 0) }, { roots, shift: Float64Array.of(0, 1) });
  }
  return motions;
}

/** Scales to a largest point displacement of 1, the first large component positive so that the sign is settled. */
function scaled(shift: Float64Array): Float64Array {
  let most = 0;
  for (let i = 0; i < shift.length; i += 2) most = Math.max(most, Math.hypot(shift[i]!, shift[i + 1]!));
  const lead = shift.find((v) => Math.abs(v) > most / 2) ?? 1;
  const by = (lead < 0 ? -1 : 1) / most;
  return shift.map((v) => {
    const value = v * by;
    return Math.abs(value) < STILL / 100 ? 0 : value;
  });
}
