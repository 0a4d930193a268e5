/**
 * Damped Newton (Levenberg-Marquardt) on one group, started from the present places.
 *
 * The damping falls with the residual, so that the last steps are plain Newton steps and converge quadratically
 * (N. Yamashita and M. Fukushima, "On the rate of convergence of the Levenberg-Marquardt method", 2001); a step is
 * accepted by its gain ratio, and a rejected one changes nothing (D. W. Marquardt, 1963). With fewer rules than
 * unknowns the vanishing damping gives the smallest movement; with more, the least squares place.
 * Array kernel: indices come from the loaded system, hence the `!`.
 */
import { RuleKind } from '../network.ts';
import { DenseNormal, type NormalEquations } from './normal.ts';
import { type Pattern, patternOf, SparseNormal } from './sparseNormal.ts';
import type { System } from './system.ts';

/** Damping at a residual as large as a tenth of the group's lengths. From the robustness measurement: see tests/planting. */
const DAMPING = 1e-2;
/** Smallest damping, against a largest pivot of about one: keeps a group with free motions factorable. */
const LEAST_DAMPING = 1e-12;
/** Iterations after which a group is given up; converging groups take three to thirty. */
const MOST_ITERATIONS = 200;
/** Residual, over the group's lengths, that rounding leaves behind: a hundred times the unit roundoff. */
const ROUNDING = 1e-14;
/** Residual below which a sketch already is a placement, mm, so that planting twice is planting once, to the bit. */
const SETTLED = 1e-11;
/** Residual below which a group may stop where it no longer improves, mm: the bound of the whole planting over ten. */
const GOOD = 1e-10;

/** Ratio of squared pivots below which a factorization is worth nothing; a true zero shows as rounding, about 1e-16. */
const WEAK = 1e-11;
/** Ratio, and last step against the lengths, with which the factorization of that step still serves where it led. */
const SOUND = 1e-7;
const SHORT = 1e-4;

/** Points up to which a dense factorization is the faster one (measured: tests/speed). */
const MOST_DENSE = 10;

/** Where the pattern of a group is kept between plantings with one plan. */
export interface PatternMemo {
  pattern?: Pattern;
}

export type Outcome = 'holds' | 'stuck';

/** The vectors of one solve, kept from group to group. */
export class Iteration {
  private readonly dense = new DenseNormal();
  private readonly sparse = new SparseNormal();
  /** Damping of the last factorization; infinite while there is none. */
  private lastDamping = Number.POSITIVE_INFINITY;
  /** Largest component of the last step, against the group's lengths. */
  private lastStep = Number.POSITIVE_INFINITY;
  private gradient = new Float64Array(0);
  private step = new Float64Array(0);
  private start = new Float64Array(0);

  /** The factorization for a system of this size; a sparse one keeps its pattern in `memo`. */
  equationsFor(system: System, memo: PatternMemo): NormalEquations {
    if (system.rootCount <= MOST_DENSE) return this.dense;
    memo.pattern ??= patternOf(system);
    this.sparse.take(memo.pattern);
    return this.sparse;
  }

  private reserve(size: number): void {
    if (this.step.length >= size) return;
    this.gradient = new Float64Array(2 * size);
    this.step = new Float64Array(2 * size);
    this.start = new Float64Array(2 * size);
  }

  /** Iterates until every rule of the system holds, or no step makes it better. Leaves residuals and Jacobian current. */
  solve(system: System, memo: PatternMemo, firstDamping = DAMPING): Outcome {
    const size = 2 * system.rootCount;
    this.reserve(size);
    const { work } = system.ground;
    const equations = this.equationsFor(system, memo);
    const length = typicalLength(system);
    const rounding = ROUNDING * length;

    let cost = system.evaluate(true);
    this.lastDamping = Number.POSITIVE_INFINITY;
    let damping = firstDamping;
    let slow = 0;
    for (let n = 0; n < MOST_ITERATIONS && slow < 3; n++) {
      const before = system.largest;
      if (before <= rounding || (n === 0 && before <= SETTLED)) break;
      work.iterations++;
      equations.assemble(system);
      system.gradient(this.gradient);
      system.save(this.start);
      const after = this.improve(system, equations, cost, damping, length);
      damping = after.damping;
      if (!after.improved) {
        system.evaluate(true);
        break;
      }
      slow = after.cost > cost * (1 - 1e-9) ? slow + 1 : 0;
      cost = after.cost;
      if (before <= GOOD && system.largest > before / 2) break;
    }
    return system.largest <= GOOD * 10 ? 'holds' : 'stuck';
  }

  /**
   * Goes on from where the system stood before its surroundings moved a little: as `solve`, but `leapt`, where a point
   * goes farther than twice its first-order move and `little` mm, or than `longest` mm: then it may be on another branch.
   */
  solveNear(system: System, memo: PatternMemo, little: number, longest: number): Outcome | 'leapt' {
    const size = 2 * system.rootCount;
    this.reserve(size);
    system.evaluate(true);
    if (system.largest <= SETTLED) return this.solve(system, memo);
    const equations = this.equationsFor(system, memo);
    equations.assemble(system);
    if (!equations.factor(LEAST_DAMPING)) return 'leapt';
    const first = new Float64Array(size);
    const from = new Float64Array(size);
    system.gradient(first);
    equations.solve(first);
    system.save(from);
    const outcome = this.solve(system, memo);
    const to = new Float64Array(size);
    system.save(to);
    for (let k = 0; k < size; k += 2) {
      const gone = Math.hypot(to[k]! - from[k]!, to[k + 1]! - from[k + 1]!);
      const ahead = Math.hypot(first[k]!, first[k + 1]!);
      if (!(gone <= 2 * ahead + little && gone <= longest)) return 'leapt';
    }
    return outcome;
  }

  /** The normal equations factored where the system stands (its Jacobian must be current); undefined where that fails. */
  factored(system: System, memo: PatternMemo): NormalEquations | undefined {
    const equations = this.equationsFor(system, memo);
    const serves = this.lastDamping < WEAK && this.lastStep < SHORT && equations.pivotRatio > SOUND;
    if (serves) return equations;
    equations.assemble(system);
    return equations.factor(0) && equations.pivotRatio > WEAK ? equations : undefined;
  }

  /** Tries steps with growing damping until one lowers the cost. */
  private improve(
    system: System,
    equations: NormalEquations,
    cost: number,
    from: number,
    length: number,
  ): { improved: boolean; cost: number; damping: number } {
    const { gradient, step } = this;
    const size = 2 * system.rootCount;
    const relative = Math.sqrt((2 * cost) / Math.max(1, system.ruleCount)) / (0.1 * length);
    const shrink = Math.min(1, relative ** 4);
    let damping = from;
    for (let tries = 0; tries < 30; tries++) {
      const mu = Math.max(damping * shrink, LEAST_DAMPING);
      this.lastDamping = mu;
      if (!equations.factor(mu)) {
        damping = Math.max(damping * 10, 1e-9 / shrink);
        continue;
      }
      for (let i = 0; i < size; i++) step[i] = -gradient[i]!;
      equations.solve(step);
      system.move(step, 1);
      const trial = system.evaluate(true);
      if (trial < cost) {
        this.lastStep = largestOf(step, size) / length;
        const promised = promise(step, gradient, size, mu);
        const ratio = (cost - trial) / promised;
        return { improved: true, cost: trial, damping: nextDamping(damping, ratio) };
      }
      system.restore(this.start);
      // At the rounding level nothing can be gained by damping.
      if (system.largest <= GOOD) break;
      damping *= 8;
    }
    system.restore(this.start);
    return { improved: false, cost, damping };
  }
}

function largestOf(step: Float64Array, size: number): number {
  let most = 0;
  for (let i = 0; i < size; i++) {
    const by = step[i]! < 0 ? -step[i]! : step[i]!;
    if (!(by <= most)) most = by;
  }
  return most;
}

/** The decrease that the linear model promised. */
function promise(step: Float64Array, gradient: Float64Array, size: number, mu: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += step[i]! * (mu * step[i]! - gradient[i]!);
  return sum / 2;
}

/** Less damping after a step as good as promised, more after a poor one; clamped. */
function nextDamping(damping: number, ratio: number): number {
  if (ratio > 0.75) return Math.max(damping / 4, 1e-6);
  if (ratio < 0.25) return Math.min(damping * 4, 1e6);
  return damping;
}

/** Mean length that the group's rules speak of, mm: the scale against which a residual is large or small. */
export function typicalLength(system: System): number {
  const { network, reduction, coords } = system.ground;
  let sum = 0;
  for (let i = 0; i < system.ruleCount; i++) {
    const r = system.rules[i]!;
    const p = reduction.points[4 * r]!;
    const a = reduction.points[4 * r + 1]!;
    sum +=
      network.kinds[r] === RuleKind.distance
        ? Math.abs(network.values[3 * r]!)
        : a < 0
          ? Math.abs(network.values[3 * r + 2]!)
          : Math.abs(coords[2 * p]! - coords[2 * a]!) + Math.abs(coords[2 * p + 1]! - coords[2 * a + 1]!);
  }
  return sum > 0 ? sum / system.ruleCount : 1;
}
