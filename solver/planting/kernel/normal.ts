/**
 * Solving (JᵀJ + μI) x = b for one group: the linear part of a damped Newton step.
 *
 * JᵀJ couples two points only where a rule joins them, and the damping keeps it positive, so it is factored without
 * pivoting. Hand-made because the library's matrices allocate at every step, which alone would cost more than the
 * planting may take; where speed does not matter (`freedom.ts`, `conflicts.ts`) the library is used.
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import type { System } from './system.ts';

/** What the iteration needs of a factorization. */
export interface NormalEquations {
  /** Gathers JᵀJ of the system's present Jacobian. */
  assemble(system: System): void;
  /** Adds a weight to both coordinates of one local root. */
  pull(local: number, weight: number): void;
  /** Factors JᵀJ + μI; false when a pivot is not positive. */
  factor(mu: number): boolean;
  /** Overwrites `x` (the right-hand side) with the solution. */
  solve(x: Float64Array): void;
  /** Smallest squared pivot of the last factorization over the largest. */
  pivotRatio: number;
}

/** Dense Cholesky, for groups of up to ten points. */
export class DenseNormal implements NormalEquations {
  pivotRatio = 1;
  private size = 0;
  private matrix = new Float64Array(0);
  private lower = new Float64Array(0);

  assemble(system: System): void {
    const size = 2 * system.rootCount;
    this.size = size;
    if (this.matrix.length < size * size) {
      this.matrix = new Float64Array(size * size);
      this.lower = new Float64Array(size * size);
    }
    const { matrix } = this;
    const { rowStart, rowRoot, jacobian, ruleCount } = system;
    matrix.fill(0, 0, size * size);
    for (let i = 0; i < ruleCount; i++) {
      for (let e = rowStart[i]!; e < rowStart[i + 1]!; e++) {
        const ex = jacobian[2 * e]!;
        const ey = jacobian[2 * e + 1]!;
        const row = 2 * rowRoot[e]!;
        for (let f = rowStart[i]!; f < rowStart[i + 1]!; f++) {
          const column = 2 * rowRoot[f]!;
          if (column > row) continue;
          const fx = jacobian[2 * f]!;
          const fy = jacobian[2 * f + 1]!;
          const at = row * size + column;
          matrix[at]! += ex * fx;
          matrix[at + 1]! += ex * fy;
          matrix[at + size]! += ey * fx;
          matrix[at + size + 1]! += ey * fy;
        }
      }
    }
  }

  pull(local: number, weight: number): void {
    const at = 2 * local * this.size + 2 * local;
    this.matrix[at]! += weight;
    this.matrix[at + this.size + 1]! += weight;
  }

  factor(mu: number): boolean {
    const { size, matrix, lower } = this;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    for (let i = 0; i < size; i++) {
      const row = i * size;
      for (let j = 0; j < i; j++) {
        let sum = matrix[row + j]!;
        const other = j * size;
        for (let k = 0; k < j; k++) sum -= lower[row + k]! * lower[other + k]!;
        lower[row + j] = sum / lower[other + j]!;
      }
      let pivot = matrix[row + i]! + mu;
      for (let k = 0; k < i; k++) pivot -= lower[row + k]! * lower[row + k]!;
      if (!(pivot > 0)) {
        this.pivotRatio = 0;
        return false;
      }
      if (pivot < least) least = pivot;
      if (pivot > most) most = pivot;
      lower[row + i] = Math.sqrt(pivot);
    }
    this.pivotRatio = size > 0 ? least / most : 1;
    return true;
  }

  solve(x: Float64Array): void {
    const { size, lower } = this;
    for (let i = 0; i < size; i++) {
      let sum = x[i]!;
      for (let k = 0; k < i; k++) sum -= lower[i * size + k]! * x[k]!;
      x[i] = sum / lower[i * size + i]!;
    }
    for (let i = size - 1; i >= 0; i--) {
      let sum = x[i]!;
      for (let k = i + 1; k < size; k++) sum -= lower[k * size + i]! * x[k]!;
      x[i] = sum / lower[i * size + i]!;
    }
  }
}
