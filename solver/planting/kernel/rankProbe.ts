/**
 * A quick proof, as the points are placed, that the rules settle them well.
 *
 * Small random errors are let into every placing rule and carried forward through the steps: what comes out is J⁻¹z for
 * a random z, whose size is at least (u·z)/σ for the least singular value σ of the whole and its left vector u. So where
 * no point moves by more than a bound, σ is hardly below its inverse (J. D. Dixon, "Estimating extremal eigenvalues and
 * condition numbers of matrices", 1983). Two errors are carried at once; where a point moves farther, nothing is decided
 * here: it goes to the decomposition (`nearNull.ts`), which decides by number. Points are weighed by the root of the
 * count of their rules, which is what scaling their columns to one length comes to.
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { RuleKind } from '../network.ts';
import type { NormalEquations } from './normal.ts';
import { residualOf } from './residual.ts';
import type { Ground, System } from './system.ts';

/**
 * Largest motion, against the errors let in, that is beyond doubt. For σ below 1e-6, which must not pass, both errors
 * would have to lie within 3e-4 (3e-2 in large networks, whose errors add up along their chains) of the plane across u:
 * one case in ten million (in 1e3), and none in 1e9 for σ below 1e-9.
 */
const SURE = 300;
const SURE_LARGE = 30_000;
/** Points above which a network is large: there a motion that all take part in is small in each. */
const LARGE = 300;
/** The same for a group on its own, squared twice: its normal equations are probed, which have σ². */
const SURE_GROUP = 1e5;

/** Kept between plantings, so that a drag allocates nothing: motions of all points, two errors each. */
let scratch = new Float64Array(0);

/** Collects the groups whose rank the quick proof leaves in doubt. */
export class RankProbe {
  /** Roots whose place is in doubt. */
  readonly doubted: number[] = [];
  private readonly ground: Ground;
  private readonly shift: Float64Array;
  private readonly bound: number;
  private readonly grad = new Float64Array(8);
  private readonly carried = new Float64Array(2);
  private readonly normal = new Float64Array(2);
  private right = new Float64Array(0);
  private state = 20_011;

  constructor(ground: Ground) {
    const { pointCount } = ground.network;
    if (scratch.length < 4 * pointCount) scratch = new Float64Array(8 * pointCount);
    else scratch.fill(0, 0, 4 * pointCount);
    this.shift = scratch;
    this.ground = ground;
    const sure = pointCount > LARGE ? SURE_LARGE : SURE;
    this.bound = sure * sure;
  }

  /** A root was placed where the loci of two rules cross. */
  crossing(root: number, ruleA: number, ruleB: number): void {
    const { carried, normal } = this;
    this.rowOf(ruleA, root);
    const [ax, ay] = [normal[0]!, normal[1]!];
    const [a1, a2] = [this.error() - carried[0]!, this.error() - carried[1]!];
    this.rowOf(ruleB, root);
    const [bx, by] = [normal[0]!, normal[1]!];
    this.settle(root, ax, ay, bx, by, a1, a2, this.error() - carried[0]!, this.error() - carried[1]!);
  }

  /** The usual case without detours: two distances to the points `a` and `b`, nothing derived. */
  crossingOfArcs(root: number, a: number, b: number): void {
    const { coords } = this.ground;
    const { shift } = this;
    const x = coords[2 * root]!;
    const y = coords[2 * root + 1]!;
    let ax = x - coords[2 * a]!;
    let ay = y - coords[2 * a + 1]!;
    const ra = Math.sqrt(ax * ax + ay * ay);
    ax /= ra;
    ay /= ra;
    let bx = x - coords[2 * b]!;
    let by = y - coords[2 * b + 1]!;
    const rb = Math.sqrt(bx * bx + by * by);
    bx /= rb;
    by /= rb;
    // Written out: numbers handed to a function that is not inlined are allocated one by one.
    let state = this.state;
    state = nextError(state);
    const a1 = state / RANGE + ax * shift[4 * a]! + ay * shift[4 * a + 1]!;
    state = nextError(state);
    const a2 = state / RANGE + ax * shift[4 * a + 2]! + ay * shift[4 * a + 3]!;
    state = nextError(state);
    const b1 = state / RANGE + bx * shift[4 * b]! + by * shift[4 * b + 1]!;
    state = nextError(state);
    const b2 = state / RANGE + bx * shift[4 * b + 2]! + by * shift[4 * b + 3]!;
    this.state = state;
    const det = ax * by - ay * bx;
    const x1 = (a1 * by - b1 * ay) / det;
    const y1 = (b1 * ax - a1 * bx) / det;
    const x2 = (a2 * by - b2 * ay) / det;
    const y2 = (b2 * ax - a2 * bx) / det;
    const { ruleStart } = this.ground.incidence;
    const rules = ruleStart[root + 1]! - ruleStart[root]!;
    const { bound } = this;
    if (!(rules * (x1 * x1 + y1 * y1) <= bound && rules * (x2 * x2 + y2 * y2) <= bound)) this.doubted.push(root);
    shift[4 * root] = x1;
    shift[4 * root + 1] = y1;
    shift[4 * root + 2] = x2;
    shift[4 * root + 3] = y2;
  }

  /** Solves the two rows for the root's own motions. */
  private settle(
    root: number,
    ax: number,
    ay: number,
    bx: number,
    by: number,
    a1: number,
    a2: number,
    b1: number,
    b2: number,
  ): void {
    const det = ax * by - ay * bx;
    const { shift } = this;
    const x1 = (a1 * by - b1 * ay) / det;
    const y1 = (b1 * ax - a1 * bx) / det;
    const x2 = (a2 * by - b2 * ay) / det;
    const y2 = (b2 * ax - a2 * bx) / det;
    this.keep(root, x1, y1, x2, y2);
    shift[4 * root] = x1;
    shift[4 * root + 1] = y1;
    shift[4 * root + 2] = x2;
    shift[4 * root + 3] = y2;
  }

  /** A group was placed; `equations` are factored where it stands, or undefined where that fails. */
  group(system: System, equations: NormalEquations | undefined): void {
    const { rootCount, roots } = system;
    const size = 2 * rootCount;
    if (this.right.length < size) this.right = new Float64Array(2 * size);
    const { right, shift } = this;
    let worst = Number.POSITIVE_INFINITY;
    if (equations) {
      for (let k = 0; k < size; k++) right[k] = this.error();
      equations.solve(right);
      worst = 0;
      for (let k = 0; k < size; k++) worst = Math.max(worst, Math.abs(right[k]!));
    }
    if (!equations || !(worst < SURE_GROUP)) {
      for (const u of roots) this.doubted.push(u);
      return;
    }
    for (const which of [0, 1]) {
      this.gather(system, which);
      equations.solve(right);
      for (let k = 0; k < rootCount; k++) {
        // Written when both are there: a rule of the group must not see half of it.
        this.pending(size)[4 * k + 2 * which] = right[2 * k]!;
        this.pending(size)[4 * k + 2 * which + 1] = right[2 * k + 1]!;
      }
    }
    const pending = this.pending(size);
    for (let k = 0; k < rootCount; k++) {
      const [x1, y1, x2, y2] = [pending[4 * k]!, pending[4 * k + 1]!, pending[4 * k + 2]!, pending[4 * k + 3]!];
      this.keep(roots[k]!, x1, y1, x2, y2);
      shift[4 * roots[k]!] = x1;
      shift[4 * roots[k]! + 1] = y1;
      shift[4 * roots[k]! + 2] = x2;
      shift[4 * roots[k]! + 3] = y2;
    }
  }

  private waiting = new Float64Array(0);
  private pending(size: number): Float64Array {
    if (this.waiting.length < 2 * size) this.waiting = new Float64Array(4 * size);
    return this.waiting;
  }

  /** Jᵀ(z - what comes from points placed before), to `right`. */
  private gather(system: System, which: number): void {
    const { right } = this;
    const { rowStart, rowRoot, jacobian, ruleCount, rules } = system;
    const { rootStart } = this.ground.incidence;
    right.fill(0, 0, 2 * system.rootCount);
    for (let i = 0; i < ruleCount; i++) {
      const r = rules[i]!;
      let by = this.error();
      if (rootStart[r + 1]! - rootStart[r]! > rowStart[i + 1]! - rowStart[i]!) {
        this.rowOf(r, -1);
        by -= this.carried[which]!;
      }
      for (let e = rowStart[i]!; e < rowStart[i + 1]!; e++) {
        right[2 * rowRoot[e]!]! += by * jacobian[2 * e]!;
        right[2 * rowRoot[e]! + 1]! += by * jacobian[2 * e + 1]!;
      }
    }
  }

  private keep(root: number, x1: number, y1: number, x2: number, y2: number): void {
    const { ruleStart } = this.ground.incidence;
    const rules = ruleStart[root + 1]! - ruleStart[root]!;
    const first = rules * (x1 * x1 + y1 * y1);
    const second = rules * (x2 * x2 + y2 * y2);
    if (!(first <= this.bound && second <= this.bound)) this.doubted.push(root);
  }

  /** What the motions so far do to a rule, to `carried`, and its gradient by `root`, to `normal`. */
  private rowOf(rule: number, root: number): void {
    const { network, reduction, coords } = this.ground;
    const { grad, carried, normal } = this;
    residualOf(network.kinds[rule]!, reduction.points, 4 * rule, network.values, 3 * rule, coords, grad);
    carried[0] = carried[1] = normal[0] = normal[1] = 0;
    const count = network.kinds[rule] === RuleKind.onLine ? 1 : 3;
    for (let k = 0; k < count; k++) {
      const point = reduction.points[4 * rule + k]!;
      if (point < 0) break;
      const gx = grad[2 * k]!;
      const gy = grad[2 * k + 1]!;
      const at = reduction.derivedAt ? reduction.derivedAt[point]! : -1;
      if (at < 0) {
        this.add(point, gx, gy, root);
        continue;
      }
      const { roots, factors } = reduction.derived[at]!;
      for (let j = 0; j < roots.length; j++) {
        const fr = factors[2 * j]!;
        const fi = factors[2 * j + 1]!;
        this.add(roots[j]!, fr * gx + fi * gy, fr * gy - fi * gx, root);
      }
    }
  }

  private add(point: number, gx: number, gy: number, root: number): void {
    const { carried, normal, shift } = this;
    if (point === root) {
      normal[0]! += gx;
      normal[1]! += gy;
      return;
    }
    carried[0]! += gx * shift[4 * point]! + gy * shift[4 * point + 1]!;
    carried[1]! += gx * shift[4 * point + 2]! + gy * shift[4 * point + 3]!;
  }

  /** The next error, in [-1, 1]. */
  private error(): number {
    this.state = nextError(this.state);
    return this.state / RANGE;
  }
}

const RANGE = 2147483648;

/** Fixed numbers that have nothing to do with any network (a shift register: G. Marsaglia, "Xorshift RNGs", 2003). */
function nextError(state: number): number {
  let s = state;
  s ^= s << 13;
  s ^= s >>> 17;
  s ^= s << 5;
  return s;
}
