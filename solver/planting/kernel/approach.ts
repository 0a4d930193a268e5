/**
 * Solving one group so that it keeps the handedness of the sketch.
 *
 * A group is solved from the sketch. Where that ends with corners turned over (the sketch has a point left of a line
 * and the result right of it), or with rules that miss, it is tried again: from there with those corners laid back,
 * from the sketch with small steps, and with the lengths taken from the sketch's to the wanted ones bit by bit, which
 * follows one branch. Of the places where all rules hold the one nearest to the sketch is kept; where none is found, a
 * small group is started from places scattered about the sketch. So the sketch decides, and warm and cold agree. Array kernel: indices come from the plan, hence the `!`.
 */
import { RuleKind } from '../network.ts';
import { type Iteration, type Outcome, type PatternMemo, typicalLength } from './iterate.ts';
import type { System } from './system.ts';

/** Steps of the gradual approach: measured, more do not recover more networks (tests/planting/kernelRobustness). */
const STEPS = 12;
/** Damping of the cautious attempt: a thousand times the usual one, so that it creeps downhill (measured as above). */
const CAUTIOUS = 10;
/** Starts that are scattered about the sketch when other placements are asked for, and how far against the lengths. */
const SCATTERED = 16;
const SCATTER = 0.6;
/** Points of a group up to which that is done unasked, where all else fails. */
const MOST_SCATTERED = 12;
/** Part of that reach within which two placements are one. */
const SAME = 1e-4;
/** Sine of the corner angle below which its hand says nothing: about six degrees from straight. */
const CLEAR = 0.1;

/** Solves groups one after another, keeping to the side of the sketch. */
export class Approach {
  private start = new Float64Array(0);
  private best = new Float64Array(0);
  private trial = new Float64Array(0);

  /**
   * Solves the loaded system, whose places must be those of the sketch.
   *
   * @param branch 0 the placement that the sketch means, 1, 2… other ones, the nearest to the sketch first; where there
   *   are not so many, the one that the sketch means
   */
  solve(system: System, iteration: Iteration, memo: PatternMemo, sketch: Float64Array, branch = 0): Outcome {
    const own = this.solveOwn(system, iteration, memo, sketch);
    if (branch === 0) return own;
    const others = this.scattered(system, iteration, memo);
    const chosen = others[branch - 1];
    system.restore(chosen ?? this.best);
    system.evaluate(true);
    return chosen ? 'holds' : own;
  }

  /** Placements other than the one in `best`, found from starts scattered about the sketch, the nearest to it first. */
  private scattered(system: System, iteration: Iteration, memo: PatternMemo): Float64Array[] {
    const size = 2 * system.rootCount;
    const reach = typicalLength(system) * SCATTER;
    const same = (SAME * reach) ** 2;
    const found: Float64Array[] = [];
    let seed = size;
    for (let n = 0; n < SCATTERED; n++) {
      for (let k = 0; k < size; k++) {
        seed = (seed * 48271) % 2147483647;
        this.trial[k] = this.start[k]! + reach * (2 * (seed / 2147483647) - 1);
      }
      system.restore(this.trial);
      if (iteration.solve(system, memo) !== 'holds') continue;
      const place = new Float64Array(this.trial.length);
      system.save(place);
      const isKnown = [this.best, ...found].some((other) => between(place, other, size) < same);
      if (!isKnown) found.push(place);
    }
    return found.sort((a, b) => between(a, this.start, size) - between(b, this.start, size));
  }

  private solveOwn(system: System, iteration: Iteration, memo: PatternMemo, sketch: Float64Array): Outcome {
    const size = 2 * system.rootCount;
    if (this.start.length < size) {
      this.start = new Float64Array(2 * size);
      this.best = new Float64Array(2 * size);
      this.trial = new Float64Array(2 * size);
    }
    system.save(this.start);
    let outcome = iteration.solve(system, memo);
    system.save(this.best);
    if (outcome === 'holds' && cornersTurned(system, sketch, false) === 0) return outcome;
    const attempts = [
      () => cornersTurned(system, sketch, true) > 0 && iteration.solve(system, memo) === 'holds',
      () => this.creep(system, iteration, memo),
      () => this.gradually(system, iteration, memo),
    ];
    for (const attempt of attempts) {
      if (!attempt()) {
        system.restore(this.best);
        continue;
      }
      system.save(this.trial);
      const nearer = between(this.trial, this.start, size) < between(this.best, this.start, size);
      if (outcome === 'stuck' || nearer) this.best.set(this.trial.subarray(0, size));
      else system.restore(this.best);
      outcome = 'holds';
      if (cornersTurned(system, sketch, false) === 0) break;
    }
    if (outcome === 'stuck' && system.rootCount <= MOST_SCATTERED && system.ruleCount === size) {
      const [nearest] = this.scattered(system, iteration, memo);
      if (nearest) {
        this.best.set(nearest.subarray(0, size));
        outcome = 'holds';
      }
    }
    system.restore(this.best);
    system.evaluate(true);
    return outcome;
  }

  /** Starts from the sketch again, with steps too small to jump. */
  private creep(system: System, iteration: Iteration, memo: PatternMemo): boolean {
    system.restore(this.start);
    return iteration.solve(system, memo, CAUTIOUS) === 'holds';
  }

  /** Takes the lengths from those of the sketch to the wanted ones. */
  private gradually(system: System, iteration: Iteration, memo: PatternMemo): boolean {
    system.restore(this.start);
    system.takeOffset();
    for (let k = 1; k < STEPS; k++) {
      system.lag = 1 - k / STEPS;
      iteration.solve(system, memo);
    }
    system.lag = 0;
    return iteration.solve(system, memo) === 'holds';
  }
}

/** Sum of squared shifts between two saved placements, mm². */
function between(a: Float64Array, b: Float64Array, size: number): number {
  let sum = 0;
  for (let k = 0; k < size; k++) sum += (a[k]! - b[k]!) ** 2;
  return sum;
}

/**
 * How many corners (a root between two of the group's distances) have another hand than in the sketch. With `mend`
 * each such root is laid over to the other side of the line between the two.
 */
export function cornersTurned(system: System, sketch: Float64Array, mend: boolean): number {
  const { network, reduction, coords } = system.ground;
  const { points } = reduction;
  const last = new Int32Array(system.rootCount).fill(-1);
  let turned = 0;
  for (let i = 0; i < system.ruleCount; i++) {
    const r = system.rules[i]!;
    if (network.kinds[r] !== RuleKind.distance) continue;
    for (let e = system.rowStart[i]!; e < system.rowStart[i + 1]!; e++) {
      const local = system.rowRoot[e]!;
      const u = system.roots[local]!;
      const other = points[4 * r] === u ? points[4 * r + 1]! : points[4 * r]!;
      const before = last[local]!;
      if (before >= 0 && isTurned(coords, sketch, u, before, other)) {
        turned++;
        if (mend) layOver(coords, u, before, other);
      }
      last[local] = other;
    }
  }
  return turned;
}

/** Clearly the other hand: a corner that was nearly straight, or is now, says nothing. */
function isTurned(coords: Float64Array, sketch: Float64Array, u: number, a: number, b: number): boolean {
  const now = handOf(coords, u, a, b);
  const then = handOf(sketch, u, a, b);
  if (now * then >= 0) return false;
  return Math.abs(now) > CLEAR * armsOf(coords, u, a, b) && Math.abs(then) > CLEAR * armsOf(sketch, u, a, b);
}

function armsOf(coords: Float64Array, u: number, a: number, b: number): number {
  const x = coords[2 * u]!;
  const y = coords[2 * u + 1]!;
  return (
    Math.hypot(coords[2 * a]! - x, coords[2 * a + 1]! - y) * Math.hypot(coords[2 * b]! - x, coords[2 * b + 1]! - y)
  );
}

function handOf(coords: Float64Array, u: number, a: number, b: number): number {
  const x = coords[2 * u]!;
  const y = coords[2 * u + 1]!;
  return (coords[2 * a]! - x) * (coords[2 * b + 1]! - y) - (coords[2 * a + 1]! - y) * (coords[2 * b]! - x);
}

/** Mirrors a point in the line through two others. */
function layOver(coords: Float64Array, u: number, a: number, b: number): void {
  const dx = coords[2 * b]! - coords[2 * a]!;
  const dy = coords[2 * b + 1]! - coords[2 * a + 1]!;
  const size = dx * dx + dy * dy;
  const off = dx * (coords[2 * u + 1]! - coords[2 * a + 1]!) - dy * (coords[2 * u]! - coords[2 * a]!);
  if (size === 0) return;
  coords[2 * u]! += (2 * dy * off) / size;
  coords[2 * u + 1]! -= (2 * dx * off) / size;
}
