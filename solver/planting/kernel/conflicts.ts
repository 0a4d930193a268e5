/**
 * Smallest sets of rules that cannot hold together.
 *
 * At a least-squares place the residuals balance: Jᵀr = 0. So the rules that miss press against each other, and where
 * they press on points placed by other rules, those carry on the pressure. Following it back through the steps gives
 * the rules that take part; dropping one after another while the rest still disagrees leaves a smallest set.
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { Matrix, SVD } from 'ml-matrix';
import type { Plan } from './planSteps.ts';
import { FIRST_EXACT_KIND } from './residual.ts';
import { type Ground, System } from './system.ts';
import { tieForces, tieMiss } from './ties.ts';

/** Rules of the network that cannot hold together, with the gap that is left, mm. */
export interface KernelDisagreement {
  readonly rules: readonly number[];
  readonly gap: number;
  /** The place would bring a point onto one that a rule is named from: see `shortArm`. */
  readonly isDegenerate?: boolean;
}

/** Pressure below which a rule takes no part, against the largest of the step. */
const FAINT = 1e-6;
/** Rules above which a set is named without being thinned out: thinning costs a factorization a rule. */
const MOST_THINNED = 60;

/** Traces pressures back through the steps of a plan. */
export class PressureTrace {
  private readonly system = new System();
  private readonly ground: Ground;
  private readonly plan: Plan;
  /** Step of each root. */
  private readonly stepOf: Int32Array;

  constructor(ground: Ground, plan: Plan) {
    this.ground = ground;
    this.plan = plan;
    this.stepOf = new Int32Array(ground.network.pointCount).fill(-1);
    for (let s = 0; s < plan.stepCount; s++) {
      const u = plan.root[s]!;
      if (u >= 0) this.stepOf[u] = s;
      else for (const w of plan.groups[-1 - u]!.roots) this.stepOf[w] = s;
    }
  }

  /**
   * All rules that take part when `rules` press with `pressures`, those first, then the ones that hold their points.
   * `own` is the step that the rules belong to (nothing is asked of it again), or -1.
   */
  rulesBehind(rules: readonly number[], pressures: readonly number[], own: number): number[] {
    return [...this.pressuresBehind(rules, pressures, own).keys()];
  }

  /** The same with the pressure of each. */
  pressuresBehind(rules: readonly number[], pressures: readonly number[], own: number): Map<number, number> {
    const found = new Map<number, number>();
    const force = new Map<number, [number, number]>();
    for (let k = 0; k < rules.length; k++) {
      found.set(rules[k]!, pressures[k]!);
      this.press(force, rules[k]!, pressures[k]!);
    }
    if (own >= 0) for (const u of this.rootsOf(own)) force.delete(u);
    const steps = new Set<number>();
    for (const u of force.keys()) if (this.stepOf[u]! >= 0) steps.add(this.stepOf[u]!);
    while (steps.size > 0) {
      const step = Math.max(...steps);
      steps.delete(step);
      for (const [r, pressure] of this.answer(step, force)) {
        if (!found.has(r)) found.set(r, pressure);
        this.press(force, r, pressure);
      }
      for (const u of this.rootsOf(step)) force.delete(u);
      for (const [u, [x, y]] of force) {
        if (this.stepOf[u]! >= 0 && Math.hypot(x, y) > FAINT) steps.add(this.stepOf[u]!);
      }
    }
    return found;
  }

  /**
   * The placing rules that a check hangs on, by their share in it: a hundredth more in one of them opens or closes the
   * check by its share of a hundredth. `isOwn`: it places the last of the check's own points.
   */
  sharesOf(check: number): { rule: number; share: number; isOwn: boolean }[] {
    const pressing = this.pressuresBehind([check], [1], -1);
    pressing.delete(check);
    const { network, incidence } = this.ground;
    const named = (r: number): readonly number[] =>
      network.kinds[r]! >= FIRST_EXACT_KIND
        ? tieForces(this.ground, r, 1, 0).map(([u]) => u)
        : Array.from(incidence.roots.subarray(incidence.rootStart[r]!, incidence.rootStart[r + 1]!));
    const roots = named(check);
    const last = Math.max(-1, ...roots.map((u) => this.stepOf[u]!));
    const own = new Set(roots.filter((u) => this.stepOf[u] === last));
    const placing = new Set(last < 0 ? [] : this.rulesOf(last));
    return [...pressing].map(([rule, share]) => ({
      rule,
      share: Math.abs(share),
      isOwn: placing.has(rule) && named(rule).some((u) => own.has(u)),
    }));
  }

  private rootsOf(step: number): Iterable<number> {
    const u = this.plan.root[step]!;
    return u >= 0 ? [u] : this.plan.groups[-1 - u]!.roots;
  }

  private rulesOf(step: number): Int32Array {
    const u = this.plan.root[step]!;
    return u >= 0 ? Int32Array.of(this.plan.ruleA[step]!, this.plan.ruleB[step]!) : this.plan.groups[-1 - u]!.rules;
  }

  /** Adds the forces of one pressing rule on its roots. */
  private press(force: Map<number, [number, number]>, rule: number, pressure: number): void {
    const { rootStart, roots } = this.ground.incidence;
    if (this.ground.network.kinds[rule]! >= FIRST_EXACT_KIND) {
      const [ex, ey] = tieMiss(this.ground, rule);
      for (const [u, fx, fy] of tieForces(this.ground, rule, pressure * ex, pressure * ey)) {
        const old = force.get(u) ?? [0, 0];
        force.set(u, [old[0] + fx, old[1] + fy]);
      }
      return;
    }
    const own = Int32Array.from(roots.subarray(rootStart[rule]!, rootStart[rule + 1]!));
    this.system.load(this.ground, own, Int32Array.of(rule));
    this.system.evaluate(true);
    own.forEach((u, k) => {
      const old = force.get(u) ?? [0, 0];
      const [gx, gy] = [this.system.jacobian[2 * k]!, this.system.jacobian[2 * k + 1]!];
      force.set(u, [old[0] + pressure * gx, old[1] + pressure * gy]);
    });
  }

  /** Pressures of a step's rules that hold its roots against the forces on them. */
  private answer(step: number, force: Map<number, [number, number]>): [number, number][] {
    const roots = Int32Array.from(this.rootsOf(step));
    const rules = this.rulesOf(step);
    this.system.load(this.ground, roots, rules);
    this.system.evaluate(true);
    const { rowStart, rowRoot, jacobian } = this.system;
    const transposed = Matrix.zeros(2 * roots.length, rules.length);
    for (let i = 0; i < rules.length; i++) {
      for (let e = rowStart[i]!; e < rowStart[i + 1]!; e++) {
        transposed.set(2 * rowRoot[e]!, i, jacobian[2 * e]!);
        transposed.set(2 * rowRoot[e]! + 1, i, jacobian[2 * e + 1]!);
      }
    }
    const wanted = Matrix.zeros(2 * roots.length, 1);
    roots.forEach((u, k) => {
      const [x, y] = force.get(u) ?? [0, 0];
      wanted.set(2 * k, 0, -x);
      wanted.set(2 * k + 1, 0, -y);
    });
    const pressures = new SVD(transposed, { autoTranspose: true }).solve(wanted);
    const most = Math.max(...pressures.to1DArray().map(Math.abs), 1e-300);
    const found: [number, number][] = [];
    for (let i = 0; i < rules.length; i++) {
      const pressure = pressures.get(i, 0);
      if (Math.abs(pressure) > FAINT * Math.max(1, most)) found.push([rules[i]!, pressure]);
    }
    return found;
  }
}

/** Gap that remains when the set gives way in its most strained rule alone, mm. */
export function gapOf(residuals: readonly number[]): number {
  let [sum, most] = [0, 0];
  for (const r of residuals) {
    sum += r * r;
    most = Math.max(most, Math.abs(r));
  }
  return most > 0 ? sum / most : 0;
}

/**
 * The smallest disagreeing set among the rules of a group at its least-squares place.
 *
 * To first order a set disagrees when its residuals are not in the range of its Jacobian. The least strained rules are
 * tried first. The system must be evaluated with its Jacobian.
 */
export function thinOut(system: System): { rules: number[]; residuals: number[] } {
  const most = system.largest;
  let kept: number[] = [];
  for (let i = 0; i < system.ruleCount; i++) if (Math.abs(system.residual[i]!) > 1e-3 * most) kept.push(i);
  if (kept.length <= MOST_THINNED) {
    const order = [...kept].sort((a, b) => Math.abs(system.residual[a]!) - Math.abs(system.residual[b]!) || b - a);
    for (const candidate of order) {
      const rest = kept.filter((i) => i !== candidate);
      if (rest.length > 0 && strain(system, rest) > 1e-2 * most) kept = rest;
    }
  }
  return { rules: kept.map((i) => system.rules[i]!), residuals: kept.map((i) => system.residual[i]!) };
}

/** Largest residual that some rows must keep whatever the group's points do, to first order, mm. */
function strain(system: System, rows: readonly number[]): number {
  const matrix = Matrix.zeros(rows.length, 2 * system.rootCount);
  const residual = Matrix.zeros(rows.length, 1);
  rows.forEach((i, k) => {
    residual.set(k, 0, system.residual[i]!);
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      matrix.set(k, 2 * system.rowRoot[e]!, system.jacobian[2 * e]!);
      matrix.set(k, 2 * system.rowRoot[e]! + 1, system.jacobian[2 * e + 1]!);
    }
  });
  const step = new SVD(matrix, { autoTranspose: true }).solve(residual);
  const rest = Matrix.sub(residual, matrix.mmul(step));
  return Math.max(...rest.to1DArray().map(Math.abs));
}
