/**
 * Sparse Cholesky of JᵀJ + μI in blocks of two by two, one block a pair of points that a rule joins.
 *
 * Order and fill come from `elimination.ts`, and every place to which a block is added is looked up beforehand, so the
 * numeric part runs straight through its arrays. Array kernel: indices come from the elimination, hence the `!`.
 */
import { type Elimination, eliminationOf, type Neighbours } from './elimination.ts';
import type { NormalEquations } from './normal.ts';
import type { System } from './system.ts';

/** What depends on the pattern alone, kept with a group for as long as its plan is. */
export interface Pattern {
  readonly elimination: Elimination;
  /** For column k and its rows i >= j in order: where the product of blocks i and j goes. */
  readonly targets: Int32Array;
  /** For each row of the Jacobian and its entries e, f <= e in order: where their product goes. */
  readonly gathers: Int32Array;
}

/** Blocks are numbered: 0 … count - 1 on the diagonal, then below it column by column. */
export function patternOf(system: System): Pattern {
  const elimination = eliminationOf(system.rootCount, neighboursOf(system));
  const { count, start, rows, positionOf } = elimination;
  const blockOf = (a: number, b: number): number => {
    if (a === b) return a;
    const [column, row] = a < b ? [a, b] : [b, a];
    let low = start[column]!;
    let high = start[column + 1]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (rows[middle]! < row) low = middle + 1;
      else high = middle;
    }
    return count + low;
  };
  let pairs = 0;
  for (let i = 0; i < system.ruleCount; i++) {
    const size = system.rowStart[i + 1]! - system.rowStart[i]!;
    pairs += (size * (size + 1)) / 2;
  }
  const gathers = new Int32Array(pairs);
  let next = 0;
  for (let i = 0; i < system.ruleCount; i++) {
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const a = positionOf[system.rowRoot[e]!]!;
      for (let f = system.rowStart[i]!; f <= e; f++) gathers[next++] = blockOf(a, positionOf[system.rowRoot[f]!]!);
    }
  }
  return { elimination, targets: targetsOf(elimination), gathers };
}

function targetsOf({ count, start, rows }: Elimination): Int32Array {
  let total = 0;
  for (let k = 0; k < count; k++) {
    const size = start[k + 1]! - start[k]!;
    total += (size * (size + 1)) / 2;
  }
  const targets = new Int32Array(total);
  const at = new Int32Array(count);
  let next = 0;
  for (let k = 0; k < count; k++) {
    for (let j = start[k]!; j < start[k + 1]!; j++) {
      const column = rows[j]!;
      at[column] = column;
      for (let t = start[column]!; t < start[column + 1]!; t++) at[rows[t]!] = count + t;
      for (let i = j; i < start[k + 1]!; i++) targets[next++] = at[rows[i]!]!;
    }
  }
  return targets;
}

/** Which points of the system share a rule. */
function neighboursOf(system: System): Neighbours {
  const { rootCount, ruleCount, rowStart, rowRoot } = system;
  const start = new Int32Array(rootCount + 1);
  for (let i = 0; i < ruleCount; i++) {
    const size = rowStart[i + 1]! - rowStart[i]!;
    for (let e = rowStart[i]!; e < rowStart[i + 1]!; e++) start[rowRoot[e]! + 1]! += size - 1;
  }
  for (let u = 0; u < rootCount; u++) start[u + 1]! += start[u]!;
  const all = new Int32Array(start[rootCount]!);
  const next = start.slice(0, rootCount);
  for (let i = 0; i < ruleCount; i++) {
    for (let e = rowStart[i]!; e < rowStart[i + 1]!; e++) {
      for (let f = rowStart[i]!; f < rowStart[i + 1]!; f++) if (f !== e) all[next[rowRoot[e]!]!++] = rowRoot[f]!;
    }
  }
  // Two points may share several rules: keep each neighbour once.
  const seen = new Int32Array(rootCount).fill(-1);
  const list = new Int32Array(all.length);
  let at = 0;
  let from = 0;
  for (let u = 0; u < rootCount; u++) {
    const to = start[u + 1]!;
    for (let k = from; k < to; k++) {
      if (seen[all[k]!] === u) continue;
      seen[all[k]!] = u;
      list[at++] = all[k]!;
    }
    from = to;
    start[u + 1] = at;
  }
  return { start, list: list.subarray(0, at) };
}

/** A factorization of one pattern that is filled anew at every step. */
export class SparseNormal implements NormalEquations {
  pivotRatio = 1;
  private pattern!: Pattern; // set by `take` before anything else is called
  private matrix = new Float64Array(0);
  private lower = new Float64Array(0);
  private sorted = new Float64Array(0);

  /** Takes up a pattern. */
  take(pattern: Pattern): void {
    this.pattern = pattern;
    const { count, rows } = pattern.elimination;
    const size = 4 * (count + rows.length);
    if (this.matrix.length >= size) return;
    this.matrix = new Float64Array(2 * size);
    this.lower = new Float64Array(2 * size);
    this.sorted = new Float64Array(4 * count);
  }

  assemble(system: System): void {
    const { matrix } = this;
    const { elimination, gathers } = this.pattern;
    const { positionOf, count, rows } = elimination;
    const { rowStart, rowRoot, jacobian, ruleCount } = system;
    matrix.fill(0, 0, 4 * (count + rows.length));
    let next = 0;
    for (let i = 0; i < ruleCount; i++) {
      const from = rowStart[i]!;
      const to = rowStart[i + 1]!;
      for (let e = from; e < to; e++) {
        const a = positionOf[rowRoot[e]!]!;
        for (let f = from; f <= e; f++) {
          const at = 4 * gathers[next++]!;
          // Rows of a block are the later position's coordinates.
          const swapped = positionOf[rowRoot[f]!]! > a;
          const low = swapped ? e : f;
          const high = swapped ? f : e;
          const hx = jacobian[2 * high]!;
          const hy = jacobian[2 * high + 1]!;
          const lx = jacobian[2 * low]!;
          const ly = jacobian[2 * low + 1]!;
          matrix[at]! += hx * lx;
          matrix[at + 1]! += hx * ly;
          matrix[at + 2]! += hy * lx;
          matrix[at + 3]! += hy * ly;
        }
      }
    }
  }

  pull(local: number, weight: number): void {
    const at = 4 * this.pattern.elimination.positionOf[local]!;
    this.matrix[at]! += weight;
    this.matrix[at + 3]! += weight;
  }

  factor(mu: number): boolean {
    const { lower, pattern } = this;
    const { count, start, rows } = pattern.elimination;
    const { targets } = pattern;
    const size = 4 * (count + rows.length);
    lower.set(this.matrix.subarray(0, size));
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    let next = 0;
    for (let k = 0; k < count; k++) {
      const first = lower[4 * k]! + mu;
      if (!(first > 0)) return this.failed();
      const l0 = Math.sqrt(first);
      const l2 = lower[4 * k + 2]! / l0;
      const second = lower[4 * k + 3]! + mu - l2 * l2;
      if (!(second > 0)) return this.failed();
      const l3 = Math.sqrt(second);
      lower[4 * k] = l0;
      lower[4 * k + 2] = l2;
      lower[4 * k + 3] = l3;
      if (first < least) least = first;
      if (second < least) least = second;
      if (first > most) most = first;
      if (second > most) most = second;
      const from = 4 * (count + start[k]!);
      const to = 4 * (count + start[k + 1]!);
      for (let b = from; b < to; b += 4) {
        const x0 = lower[b]! / l0;
        const x2 = lower[b + 2]! / l0;
        lower[b] = x0;
        lower[b + 1] = (lower[b + 1]! - x0 * l2) / l3;
        lower[b + 2] = x2;
        lower[b + 3] = (lower[b + 3]! - x2 * l2) / l3;
      }
      for (let c = from; c < to; c += 4) {
        const c0 = lower[c]!;
        const c1 = lower[c + 1]!;
        const c2 = lower[c + 2]!;
        const c3 = lower[c + 3]!;
        for (let b = c; b < to; b += 4) {
          const at = 4 * targets[next++]!;
          const b0 = lower[b]!;
          const b1 = lower[b + 1]!;
          const b2 = lower[b + 2]!;
          const b3 = lower[b + 3]!;
          lower[at]! -= b0 * c0 + b1 * c1;
          lower[at + 1]! -= b0 * c2 + b1 * c3;
          lower[at + 2]! -= b2 * c0 + b3 * c1;
          lower[at + 3]! -= b2 * c2 + b3 * c3;
        }
      }
    }
    this.pivotRatio = count > 0 ? least / most : 1;
    return true;
  }

  private failed(): false {
    this.pivotRatio = 0;
    return false;
  }

  solve(x: Float64Array): void {
    const { lower, sorted } = this;
    const { count, start, rows, nodeAt } = this.pattern.elimination;
    for (let k = 0; k < count; k++) {
      sorted[2 * k] = x[2 * nodeAt[k]!]!;
      sorted[2 * k + 1] = x[2 * nodeAt[k]! + 1]!;
    }
    for (let k = 0; k < count; k++) {
      const y0 = sorted[2 * k]! / lower[4 * k]!;
      const y1 = (sorted[2 * k + 1]! - lower[4 * k + 2]! * y0) / lower[4 * k + 3]!;
      sorted[2 * k] = y0;
      sorted[2 * k + 1] = y1;
      for (let t = start[k]!; t < start[k + 1]!; t++) {
        const b = 4 * (count + t);
        const row = 2 * rows[t]!;
        sorted[row]! -= lower[b]! * y0 + lower[b + 1]! * y1;
        sorted[row + 1]! -= lower[b + 2]! * y0 + lower[b + 3]! * y1;
      }
    }
    for (let k = count - 1; k >= 0; k--) {
      let y0 = sorted[2 * k]!;
      let y1 = sorted[2 * k + 1]!;
      for (let t = start[k]!; t < start[k + 1]!; t++) {
        const b = 4 * (count + t);
        const row = 2 * rows[t]!;
        y0 -= lower[b]! * sorted[row]! + lower[b + 2]! * sorted[row + 1]!;
        y1 -= lower[b + 1]! * sorted[row]! + lower[b + 3]! * sorted[row + 1]!;
      }
      y1 /= lower[4 * k + 3]!;
      y0 = (y0 - lower[4 * k + 2]! * y1) / lower[4 * k]!;
      sorted[2 * k] = y0;
      sorted[2 * k + 1] = y1;
    }
    for (let k = 0; k < count; k++) {
      x[2 * nodeAt[k]!] = sorted[2 * k]!;
      x[2 * nodeAt[k]! + 1] = sorted[2 * k + 1]!;
    }
  }
}
