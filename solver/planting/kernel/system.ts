/**
 * The equations of one group of points: residuals, sparse Jacobian and gradient at the present places.
 *
 * One object is loaded with group after group and keeps its arrays, so that solving allocates nothing once they are
 * large enough. Array kernel: indices come from a checked network, hence the `!`.
 */
import type { Network } from '../network.ts';
import type { Incidence } from './incidence.ts';
import { placeDerived, type Reduction } from './reduce.ts';
import { residualOf } from './residual.ts';

/** What the steps of one planting share. `coords` are the places of all points, moved in place. */
export interface Ground {
  readonly network: Network;
  readonly reduction: Reduction;
  readonly incidence: Incidence;
  readonly coords: Float64Array;
  /** Counts of the work done so far. */
  readonly work: { iterations: number; evaluations: number; blocks: number };
}

const NONE = new Float64Array(0);

/** One group's equations, in memory that is used again for the next group. */
export class System {
  /** Points and rules of the group that is loaded. */
  rootCount = 0;
  ruleCount = 0;
  roots: Int32Array = new Int32Array(0);
  rules: Int32Array = new Int32Array(0);
  /** Rows of the Jacobian: local root of each entry, and its two derivatives. */
  rowStart = new Int32Array(0);
  rowRoot = new Int32Array(0);
  jacobian = NONE;
  residual = NONE;
  /** Largest residual of the last evaluation, mm. */
  largest = 0;
  /** Part of `offset` that is still let pass in each residual: 1 at the start of a gradual approach, 0 in earnest. */
  lag = 0;
  offset = NONE;
  ground!: Ground; // set by `load` before anything else is called
  private local = new Int32Array(0);
  private derivedHere: number[] = [];
  private readonly grad = new Float64Array(8);

  /** Takes up a group: which roots may move, which rules count. Other roots stay where they are. */
  load(ground: Ground, roots: Int32Array, rules: Int32Array): void {
    this.forget();
    const { rootStart, roots: rootsOfRules } = ground.incidence;
    this.ground = ground;
    this.roots = roots;
    this.rules = rules;
    this.rootCount = roots.length;
    this.ruleCount = rules.length;
    if (this.local.length < ground.network.pointCount) this.local = new Int32Array(ground.network.pointCount).fill(-1);
    for (let i = 0; i < roots.length; i++) this.local[roots[i]!] = i;
    let most = 0;
    for (let i = 0; i < rules.length; i++) most += rootStart[rules[i]! + 1]! - rootStart[rules[i]!]!;
    if (this.rowRoot.length < most) {
      this.rowRoot = new Int32Array(2 * most);
      this.jacobian = new Float64Array(4 * most);
    }
    if (this.rowStart.length <= rules.length) {
      this.rowStart = new Int32Array(2 * rules.length + 2);
      this.residual = new Float64Array(2 * rules.length + 2);
    }
    let at = 0;
    for (let i = 0; i < rules.length; i++) {
      const r = rules[i]!;
      this.rowStart[i] = at;
      for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) {
        const local = this.local[rootsOfRules[k]!]!;
        if (local >= 0) this.rowRoot[at++] = local;
      }
    }
    this.rowStart[rules.length] = at;
    this.derivedHere = ground.reduction.derivedAt ? derivedOf(ground.reduction, rules) : [];
  }

  private forget(): void {
    for (let i = 0; i < this.rootCount; i++) this.local[this.roots[i]!] = -1;
  }

  /** Evaluates residuals, and the Jacobian when wanted; returns half the sum of squares, mm². */
  evaluate(withJacobian: boolean): number {
    const { network, reduction, coords, work } = this.ground;
    work.evaluations++;
    for (let k = 0; k < this.derivedHere.length; k++) placeDerived(reduction.derived[this.derivedHere[k]!]!, coords);
    const { kinds, values } = network;
    const { points } = reduction;
    const { rules, residual, ruleCount, lag, offset } = this;
    const grad = withJacobian ? this.grad : undefined;
    let sum = 0;
    let largest = 0;
    for (let i = 0; i < ruleCount; i++) {
      const r = rules[i]!;
      let value = residualOf(kinds[r]!, points, 4 * r, values, 3 * r, coords, grad);
      if (lag !== 0) value -= lag * offset[i]!;
      residual[i] = value;
      sum += value * value;
      const size = value < 0 ? -value : value;
      if (size > largest || Number.isNaN(size)) largest = size;
      if (withJacobian) this.scatter(i, 4 * r);
    }
    this.largest = largest;
    return sum / 2;
  }

  /** Evaluates the Jacobian rows of the wanted rules alone, without residuals: for judging what a rule can settle. */
  evaluateRows(isWanted: (rule: number) => boolean): void {
    const { network, reduction, coords } = this.ground;
    for (let i = 0; i < this.ruleCount; i++) {
      const r = this.rules[i]!;
      if (!isWanted(r)) continue;
      residualOf(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords, this.grad);
      this.scatter(i, 4 * r);
    }
  }

  /** Adds the gradient by points to the row's entries by roots. */
  private scatter(row: number, at: number): void {
    const { jacobian, rowRoot, local, grad } = this;
    const { points, derivedAt, derived } = this.ground.reduction;
    const from = this.rowStart[row]!;
    const to = this.rowStart[row + 1]!;
    for (let k = 2 * from; k < 2 * to; k++) jacobian[k] = 0;
    for (let k = 0; k < 3; k++) {
      const point = points[at + k]!;
      if (point < 0) break;
      const gx = grad[2 * k]!;
      const gy = grad[2 * k + 1]!;
      const which = derivedAt ? derivedAt[point]! : -1;
      if (which < 0) {
        const column = local[point]!;
        if (column < 0) continue;
        for (let e = from; e < to; e++) {
          if (rowRoot[e] !== column) continue;
          jacobian[2 * e]! += gx;
          jacobian[2 * e + 1]! += gy;
        }
        continue;
      }
      const { roots, factors } = derived[which]!;
      for (let j = 0; j < roots.length; j++) {
        const column = local[roots[j]!]!;
        if (column < 0) continue;
        const fr = factors[2 * j]!;
        const fi = factors[2 * j + 1]!;
        for (let e = from; e < to; e++) {
          if (rowRoot[e] !== column) continue;
          jacobian[2 * e]! += fr * gx + fi * gy;
          jacobian[2 * e + 1]! += fr * gy - fi * gx;
        }
      }
    }
  }

  /** Takes the present residuals as what is let pass at lag 1. */
  takeOffset(): void {
    this.lag = 0;
    this.evaluate(false);
    if (this.offset.length < this.ruleCount) this.offset = new Float64Array(2 * this.ruleCount);
    this.offset.set(this.residual.subarray(0, this.ruleCount));
  }

  /** Moves every root of the group by its share of `step`, times `scale`. */
  move(step: Float64Array, scale: number): void {
    const { coords } = this.ground;
    for (let i = 0; i < this.rootCount; i++) {
      const u = this.roots[i]!;
      coords[2 * u]! += scale * step[2 * i]!;
      coords[2 * u + 1]! += scale * step[2 * i + 1]!;
    }
  }

  /** Copies the group's places to `into`, or back from it. */
  save(into: Float64Array): void {
    const { coords } = this.ground;
    for (let i = 0; i < this.rootCount; i++) {
      into[2 * i] = coords[2 * this.roots[i]!]!;
      into[2 * i + 1] = coords[2 * this.roots[i]! + 1]!;
    }
  }

  restore(from: Float64Array): void {
    const { coords } = this.ground;
    for (let i = 0; i < this.rootCount; i++) {
      coords[2 * this.roots[i]!] = from[2 * i]!;
      coords[2 * this.roots[i]! + 1] = from[2 * i + 1]!;
    }
  }

  /** Fills `g` with Jᵀ r. */
  gradient(g: Float64Array): void {
    g.fill(0, 0, 2 * this.rootCount);
    for (let i = 0; i < this.ruleCount; i++) {
      const r = this.residual[i]!;
      for (let e = this.rowStart[i]!; e < this.rowStart[i + 1]!; e++) {
        const column = 2 * this.rowRoot[e]!;
        g[column]! += this.jacobian[2 * e]! * r;
        g[column + 1]! += this.jacobian[2 * e + 1]! * r;
      }
    }
  }
}

/** Derived points that the rules speak of, each once. */
function derivedOf(reduction: Reduction, rules: Int32Array): number[] {
  const found = new Set<number>();
  for (const r of rules) {
    for (let k = 4 * r; k < 4 * r + 3; k++) {
      const point = reduction.points[k]!;
      const at = point < 0 ? -1 : (reduction.derivedAt?.[point] ?? -1);
      if (at >= 0) found.add(at);
    }
  }
  return [...found];
}
