/**
 * Following a pointer: a point of a loose part goes to the nearest place that its rules let it reach, step by step.
 *
 * At each step the motions that the rules let pass are asked how they move the point (to first order: E P Eᵀ with P the
 * projection on the null space of J, found by two passes of μ(JᵀJ + μI)⁻¹, so nothing is squared away), the one that
 * brings it nearest with the least movement of all others is taken, and the rules are made to hold again. A step counts
 * only if they do, if it brings the point nearer, and if no other point goes farther than twice its first-order move and
 * a hundredth: so nothing leaps to another branch. Else it is halved. Array kernel: indices come from the loaded
 * system, hence the `!`.
 */
import { RuleKind } from '../network.ts';
import { shortArm } from './degenerate.ts';
import { type Iteration, type PatternMemo, typicalLength } from './iterate.ts';
import { type Derived, placeDerived } from './reduce.ts';
import type { System } from './system.ts';

/** Damping of the projection: between rounding (1e-16 / μ) and the stiffness of rules (μ / σ², squared by two passes). */
const MU = 1e-8;
/**
 * What a motion of all others costs against a miss of the pointer, least and most: the least is what the projection leaves
 * undone, and above the most nothing moves. Between them the cost follows how well the steps do what they promise: where
 * the point has come to the end of its reach, or its way is bent, a step that does less is worth more.
 */
const LEAST_COST = 1e-6;
const MOST_COST = 1e8;
/** Longest step against the part's lengths: short of where a corner turns over. */
const LONGEST_STEP = 0.1;
/** Steps after which a far pointer is followed by the next drag. */
const MOST_STEPS = 200;
/**
 * Nearer by less than this, against the lengths, several times in a row ends the following: at the nearest place the
 * distance changes by the square of what is left to go, which is then a millionth.
 */
const HARDLY = 1e-12;
const TIMES = 4;
/** What a point may go beyond twice its first-order move, mm (half of what is promised), and against the lengths where these are small. */
const BEYOND = 0.005;
const BEYOND_LENGTH = 5e-4;
/**
 * Response of the point, against 1, below which a link is nearly stretched: on the other side lies another branch. A step
 * that brings it lower is not taken, but one along the end of the reach, across the direction that hardly answers, down
 * to the second number. The point is then within a hundred-thousandth of its lengths of the end of its reach.
 */
const STRETCHED = 2e-5;
const LEAST_STRETCHED = 1e-7;

/** Shown the places of all points after every divided step; merged and derived ones are not brought along. */
export type Watch = (coords: Float64Array) => void;

/** What is followed: a loaded system, and a point of it (a root, or a place derived from some). */
export interface Followed {
  readonly system: System;
  readonly iteration: Iteration;
  readonly memo: PatternMemo;
  readonly point: number;
  readonly derived: Derived | undefined;
  /** Three points a triangle whose hand must stay: a point and the two centres that it is struck from. */
  readonly triangles: Int32Array;
  /** Twice the signed area of each triangle where the drag began. */
  readonly hands: Float64Array;
}

/** Twice the signed area of a triangle of the list, mm². */
export function areaOf(triangles: Int32Array, k: number, coords: Float64Array): number {
  const [u, a, b] = [2 * triangles[3 * k]!, 2 * triangles[3 * k + 1]!, 2 * triangles[3 * k + 2]!];
  const [ax, ay] = [coords[a]! - coords[u]!, coords[a + 1]! - coords[u + 1]!];
  return ax * (coords[b + 1]! - coords[u + 1]!) - ay * (coords[b]! - coords[u]!);
}

/** Follows pointers; its arrays are used again and again. */
export class Follower {
  private followed!: Followed; // set by `follow` before anything else is called
  private start = new Float64Array(0);
  private there = new Float64Array(0);
  private step = new Float64Array(0);
  /** Motions of all roots that answer a pull at the point in x and in y, and those before the step that is tried. */
  private along: readonly [Float64Array, Float64Array] = [this.start, this.start];
  private before: readonly [Float64Array, Float64Array] = [this.start, this.start];
  /** Where the point stands. */
  private readonly at = new Float64Array(2);

  /**
   * Brings the point as near to (x, y) as it can be reached. All rules of the system hold before and afterwards, and after
   * every step that is shown to `watch`.
   */
  follow(followed: Followed, x: number, y: number, watch?: Watch): void {
    this.followed = followed;
    const { system } = followed;
    this.reserve(2 * system.rootCount);
    const { coords, work } = system.ground;
    const length = typicalLength(system);
    const { start, at } = this;
    let cost = LEAST_COST;
    let hardly = 0;
    let isAcross = false;
    this.stand();
    if (!this.respond()) return;
    let off = Math.hypot(x - at[0]!, y - at[1]!);
    for (let n = 0; n < MOST_STEPS && hardly < TIMES && cost < MOST_COST; n++) {
      work.iterations++;
      const promised = off - this.aim(x - at[0]!, y - at[1]!, cost, length, isAcross);
      system.save(start);
      const taken = promised > 0 ? this.take(length, isAcross) : 'not';
      const nearer = taken === 'taken' ? off - Math.hypot(x - at[0]!, y - at[1]!) : 0;
      if (!(nearer > 0)) {
        if (taken === 'taken') [this.along, this.before] = [this.before, this.along];
        this.takeBack();
        if (!(promised > HARDLY * length)) hardly++;
        if (taken === 'stretched') isAcross = true;
        else {
          isAcross = false;
          cost *= 8;
        }
        continue;
      }
      isAcross = false;
      watch?.(coords);
      off -= nearer;
      hardly = nearer < HARDLY * length ? hardly + 1 : 0;
      if (nearer > 0.75 * promised) cost = Math.max(LEAST_COST, cost / 8);
      else if (nearer < 0.25 * promised) cost *= 4;
    }
  }

  /** Makes the step towards a wanted move of the point; how far off that leaves it, to first order. */
  private aim(wantX: number, wantY: number, cost: number, length: number, isAcross: boolean): number {
    const { step, along } = this;
    const { system } = this.followed;
    let [pullX, pullY] = this.pullFor(wantX, wantY, cost);
    if (isAcross) {
      // Only along the direction that answers most.
      const turn = Math.atan2(2 * this.through(along[0], 1), this.through(along[0], 0) - this.through(along[1], 1)) / 2;
      const pull = pullX * Math.cos(turn) + pullY * Math.sin(turn);
      [pullX, pullY] = [pull * Math.cos(turn), pull * Math.sin(turn)];
    }
    let far = 0;
    for (let k = 0; k < 2 * system.rootCount; k++) {
      step[k] = pullX * along[0][k]! + pullY * along[1][k]!;
      far = Math.max(far, Math.abs(step[k]!));
    }
    // Without rules nothing can turn over.
    const share = system.ruleCount > 0 ? Math.min(1, (LONGEST_STEP * length) / far) : 1;
    if (share < 1) for (let k = 0; k < 2 * system.rootCount; k++) step[k]! *= share;
    return Math.hypot(wantX - this.through(step, 0), wantY - this.through(step, 1));
  }

  /** Takes the step and makes the rules hold again; not where the points may not stand so, or a link would be stretched. */
  private take(length: number, isAcross: boolean): 'taken' | 'not' | 'stretched' {
    const { at, step } = this;
    const { system, iteration, memo } = this.followed;
    const [fromX, fromY] = [at[0]!, at[1]!];
    system.move(step, 1);
    if (iteration.solve(system, memo) !== 'holds') return 'not';
    if (!this.keepsMeaning()) return 'not';
    this.stand();
    // First-order moves that belong to where the point has really gone: near the end of its reach they differ.
    if (!this.isNear(length, this.pullFor(at[0]! - fromX, at[1]! - fromY, LEAST_COST))) return 'not';
    const [most, least] = this.responses();
    [this.along, this.before] = [this.before, this.along];
    const [mostThere, leastThere] = this.respond() ? this.responses() : [0, 0];
    const lowest = isAcross ? LEAST_STRETCHED : STRETCHED;
    const isStretched = (was: number, is: number): boolean => was >= LEAST_STRETCHED && is < lowest && is < was;
    if (!isStretched(most, mostThere) && !isStretched(least, leastThere)) return 'taken';
    [this.along, this.before] = [this.before, this.along];
    return 'stretched';
  }

  /** Do all triangles keep their hand, and all directions their point? */
  private keepsMeaning(): boolean {
    const { system, triangles, hands } = this.followed;
    const { network, reduction, coords } = system.ground;
    for (let k = 0; k < hands.length; k++) if (areaOf(triangles, k, coords) * hands[k]! < 0) return false;
    for (const r of system.rules) {
      if (network.kinds[r] === RuleKind.distance) continue;
      if (shortArm(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords) > 0) return false;
    }
    return true;
  }

  /** Puts the points back to where the step began; responses are those of there. */
  private takeBack(): void {
    this.followed.system.restore(this.start);
    this.stand();
  }

  /** Has no point gone farther than twice its first-order move, asked for and made, and a little? */
  private isNear(length: number, [pullX, pullY]: readonly [number, number]): boolean {
    const { start, there, step, along } = this;
    const { system } = this.followed;
    system.save(there);
    const little = Math.min(BEYOND, BEYOND_LENGTH * length);
    for (let k = 0; k < 2 * system.rootCount; k += 2) {
      const gone = Math.hypot(there[k]! - start[k]!, there[k + 1]! - start[k + 1]!);
      if (!(gone <= 2 * Math.hypot(step[k]!, step[k + 1]!) + little)) return false;
      const madeX = pullX * along[0][k]! + pullY * along[1][k]!;
      const madeY = pullX * along[0][k + 1]! + pullY * along[1][k + 1]!;
      if (!(gone <= 2 * Math.hypot(madeX, madeY) + little)) return false;
    }
    return true;
  }

  /** How hard to pull at the point in x and y for it to go by (goX, goY), when a motion of all others costs so much. */
  private pullFor(goX: number, goY: number, cost: number): readonly [number, number] {
    const { along } = this;
    const xx = this.through(along[0], 0) + cost;
    const xy = this.through(along[0], 1);
    const yy = this.through(along[1], 1) + cost;
    const det = xx * yy - xy * xy;
    return [(yy * goX - xy * goY) / det, (xx * goY - xy * goX) / det];
  }

  /** The greatest and least response of the point to a pull, over all directions. */
  private responses(): readonly [number, number] {
    const { along } = this;
    const [xx, xy, yy] = [this.through(along[0], 0), this.through(along[0], 1), this.through(along[1], 1)];
    const [middle, apart] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
    return [middle + apart, middle - apart];
  }

  /** Finds the motions that answer a pull where the system stands; false where they cannot be found. */
  private respond(): boolean {
    const { system, iteration, memo } = this.followed;
    const equations = iteration.equationsFor(system, memo);
    if (system.ruleCount > 0) {
      system.evaluate(true);
      equations.assemble(system);
      if (!equations.factor(MU)) return false;
    }
    for (const [axis, along] of this.along.entries()) {
      along.fill(0, 0, 2 * system.rootCount);
      this.spreadUnit(axis, along);
      for (let pass = 0; pass < 2 && system.ruleCount > 0; pass++) {
        equations.solve(along);
        for (let k = 0; k < 2 * system.rootCount; k++) along[k]! *= MU;
      }
    }
    return true;
  }

  private stand(): void {
    const { system, point, derived } = this.followed;
    const { coords } = system.ground;
    if (derived) placeDerived(derived, coords);
    this.at[0] = coords[2 * point]!;
    this.at[1] = coords[2 * point + 1]!;
  }

  /** Adds to `into` how one coordinate of the point depends on every root. */
  private spreadUnit(axis: number, into: Float64Array): void {
    const { system, point, derived } = this.followed;
    if (!derived) {
      into[2 * system.roots.indexOf(point) + axis] = 1;
      return;
    }
    derived.roots.forEach((root, k) => {
      const local = system.roots.indexOf(root);
      if (local < 0) return;
      const [fr, fi] = [derived.factors[2 * k]!, derived.factors[2 * k + 1]!];
      into[2 * local]! += axis === 0 ? fr : fi;
      into[2 * local + 1]! += axis === 0 ? -fi : fr;
    });
  }

  /** One coordinate of what a displacement of all roots does to the point. */
  private through(shift: Float64Array, axis: number): number {
    const { system, point, derived } = this.followed;
    if (!derived) return shift[2 * system.roots.indexOf(point) + axis]!;
    let sum = 0;
    derived.roots.forEach((root, k) => {
      const local = system.roots.indexOf(root);
      if (local < 0) return;
      const [fr, fi] = [derived.factors[2 * k]!, derived.factors[2 * k + 1]!];
      const [zx, zy] = [shift[2 * local]!, shift[2 * local + 1]!];
      sum += axis === 0 ? fr * zx - fi * zy : fi * zx + fr * zy;
    });
    return sum;
  }

  private reserve(size: number): void {
    if (this.step.length >= size) return;
    const fresh = () => new Float64Array(2 * size);
    [this.start, this.there, this.step] = [fresh(), fresh(), fresh()];
    this.along = [fresh(), fresh()];
    this.before = [fresh(), fresh()];
  }
}
