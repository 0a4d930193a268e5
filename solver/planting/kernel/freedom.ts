/**
 * Free motions: what the rules of a system let move at the places found.
 *
 * To first order that is the null space of the Jacobian. Where the rules are independent every such motion exists. Where
 * some depend on others it may not: arcs that only touch, or three links that happen to lie parallel, let their points
 * go to first order and hold them all the same. So a small step along the motions is taken, with the dependent rules
 * left out: where these hold there too they say what the others say, and are spare. Where not, single motions are
 * tried, and a motion that leads back to where it started does not exist. Array kernel: indices come from the loaded
 * system, hence the `!`.
 */

import { Matrix, SVD } from 'ml-matrix';
import { HOLDS } from '../../tolerances.ts';
import { type Iteration, typicalLength } from './iterate.ts';
import { LACKING, nearNull } from './nearNull.ts';
import { dependentRules } from './rank.ts';
import { placeDerived } from './reduce.ts';
import { residualOf } from './residual.ts';
import type { Ground, System } from './system.ts';

/** A displacement of some roots that keeps every rule to first order; the largest component is 1. */
export interface Motion {
  readonly roots: Int32Array;
  /** [dx, dy] per root. */
  readonly shift: Float64Array;
}

/** What may still move, and which rules hold nothing. */
export interface Freedom {
  readonly motions: readonly Motion[];
  /** Rules that say what others say, here and wherever the motions lead. */
  readonly spare: readonly number[];
  /** Roots that the rules hold although they would move to first order. */
  readonly touching: readonly number[];
  /** Roots that the rules only barely settle, with the singular value over the largest. */
  readonly barely: readonly { readonly roots: readonly number[]; readonly ratio: number }[];
}

/** Component of a motion below which a root does not take part. */
export const STILL = 1e-7;
/** Component from which a root takes part in a motion that was found by steps, and in one that is only barely resisted. */
const TAKES_PART = 0.05;
/** Step along a motion, against the system's lengths: its square is what tells a motion from none. */
const STEP = 1e-3;
/** Part of the squared step, over the lengths, that a rule may miss by and still say what the others say. */
const SAYS_THE_SAME = 1e-2;
/** Part of the step within which a point is back where it started. */
const BACK = 0.1;
/** Motions and coordinates up to which single motions are tried: each takes an iteration. */
const MOST_TRIED = 12;
const MOST_COORDINATES = 600;

/** All free motions of the loaded system; its Jacobian must be current. Places are as they were afterwards. */
export function freedomOf(system: System, iteration: Iteration): Freedom {
  if (system.ruleCount === 0) return { motions: unitMotions(system), spare: [], touching: [], barely: [] };
  const near = nearNull(system);
  const free = near.vectors.filter((_, k) => near.values[k]! < LACKING);
  const barely = near.values.flatMap((ratio, k) =>
    ratio < LACKING ? [] : [{ roots: takingPart(system, near.vectors[k]!, TAKES_PART), ratio }],
  );
  const roots = system.roots.slice();
  const asMotions = (vectors: readonly Float64Array[]): Motion[] =>
    vectors.map((shift) => ({ roots, shift: scaled(shift) }));
  const dependent = dependentRules(system, system.ruleCount - 2 * system.rootCount + free.length);
  if (dependent.length === 0 || free.length === 0) {
    return { motions: asMotions(free), spare: dependent, touching: [], barely };
  }
  const trial = new Trial(system, iteration, dependent);
  const differing = trial.differing(free);
  const spare = dependent.filter((r) => !differing.includes(r));
  if (differing.length === 0 || free.length > MOST_TRIED || 2 * roots.length > MOST_COORDINATES) {
    trial.end();
    return { motions: asMotions(free), spare, touching: [], barely };
  }
  const real = trial.realMotions(free);
  trial.end();
  const moving = new Set(real.flatMap((shift) => takingPart(system, shift, TAKES_PART)));
  const touching = new Set(free.flatMap((shift) => takingPart(system, shift, STILL)).filter((u) => !moving.has(u)));
  for (const shift of real) {
    roots.forEach((u, k) => {
      if (touching.has(u)) shift.fill(0, 2 * k, 2 * k + 2);
    });
  }
  return { motions: asMotions(real), spare, touching: [...touching], barely };
}

/** Roots that move by more than a part of the farthest. */
function takingPart(system: System, shift: Float64Array, part: number): number[] {
  const far = Math.max(...shift.map(Math.abs));
  return Array.from(system.roots).filter((_, k) => Math.hypot(shift[2 * k]!, shift[2 * k + 1]!) > part * far);
}

/** Small steps along motions, taken and taken back. */
class Trial {
  private readonly system: System;
  private readonly iteration: Iteration;
  private readonly ground: Ground;
  private readonly roots: Int32Array;
  private readonly rules: Int32Array;
  private readonly dependent: readonly number[];
  private readonly start: Float64Array;
  private readonly length: number;
  private seed = 77_003;

  constructor(system: System, iteration: Iteration, dependent: readonly number[]) {
    this.system = system;
    this.iteration = iteration;
    this.ground = system.ground;
    this.roots = system.roots.slice();
    this.rules = system.rules.filter((_, i) => Math.abs(system.residual[i]!) <= HOLDS);
    this.dependent = dependent;
    this.length = typicalLength(system);
    this.start = new Float64Array(2 * this.roots.length);
    system.save(this.start);
  }

  /** Dependent rules that no longer hold after a step which keeps the others. */
  differing(free: readonly Float64Array[]): readonly number[] {
    const others = this.rules.filter((r) => !this.dependent.includes(r));
    if (!this.step(others, this.mixed(free))) return this.dependent;
    const allowed = HOLDS + SAYS_THE_SAME * STEP * STEP * this.length;
    return this.dependent.filter((r) => Math.abs(residualAt(this.ground, r)) > allowed);
  }

  /** The motions that exist, as an orthonormal basis within the space of the given ones. */
  realMotions(free: readonly Float64Array[]): Float64Array[] {
    const shares: number[][] = [];
    for (let n = 0; n < 2 * free.length + 2; n++) {
      const along = this.mixed(free);
      if (n % 2 === 1) for (let i = 0; i < along.length; i++) along[i] = -along[i]!;
      const holds = this.step(this.rules, along);
      const there = new Float64Array(this.start.length);
      this.system.save(there);
      const gone = holds ? there.map((v, i) => v - this.start[i]!) : along;
      const far = Math.max(...gone.map(Math.abs));
      const step = holds ? STEP * this.length * Math.max(...along.map(Math.abs)) : 0;
      if (far <= BACK * step) continue;
      shares.push(free.map((shift) => shift.reduce((sum, v, i) => sum + v * gone[i]!, 0) / far));
    }
    if (shares.length === 0) return [];
    while (shares.length < free.length) shares.push(free.map(() => 0));
    const svd = new SVD(new Matrix(shares), { computeLeftSingularVectors: false, computeRightSingularVectors: true });
    const most = Math.max(...svd.diagonal);
    return svd.diagonal.flatMap((value, k) => {
      if (value <= BACK * most) return [];
      const motion = new Float64Array(this.start.length);
      free.forEach((shift, j) => {
        const share = svd.rightSingularVectors.get(j, k);
        for (let i = 0; i < motion.length; i++) motion[i]! += share * shift[i]!;
      });
      return [motion];
    });
  }

  /** Puts everything back. */
  end(): void {
    this.system.restore(this.start);
  }

  /** A mixture of the motions in which all have a share; the farthest point moves by about 1. */
  private mixed(free: readonly Float64Array[]): Float64Array {
    const sum = new Float64Array(this.start.length);
    for (const shift of free) {
      this.seed = (this.seed * 48271) % 2147483647;
      const share = 2 * (this.seed / 2147483647) - 1;
      for (let i = 0; i < sum.length; i++) sum[i]! += (share + Math.sign(share) / 2) * shift[i]!;
    }
    const far = Math.max(...sum.map(Math.abs));
    return sum.map((v) => v / far);
  }

  /** Goes a step along from the start, and to where the rules hold; false where they do not. */
  private step(rules: Int32Array, along: Float64Array): boolean {
    const { system, roots } = this;
    system.load(this.ground, roots, rules);
    system.restore(this.start);
    system.move(along, STEP * this.length);
    return this.iteration.solve(system, {}) === 'holds';
  }
}

/** A rule's residual where its points now stand. */
function residualAt({ network, reduction, coords }: Ground, r: number): number {
  for (let k = 4 * r; k < 4 * r + 3 && reduction.derivedAt; k++) {
    const at = reduction.derivedAt[reduction.points[k]!] ?? -1;
    if (at >= 0) placeDerived(reduction.derived[at]!, coords);
  }
  return residualOf(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
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
