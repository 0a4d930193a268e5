/**
 * The verdict on a placing: what holds, what is planted, loose or contested, which rules are spare, which disagree.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { type Network, type NetworkResult, PointState, RuleKind } from '../network.ts';
import { type Disagreement, gapOf, PressureTrace, thinOut } from './conflicts.ts';
import { markContested } from './contested.ts';
import { type Motion, motionsOf, STILL } from './freedom.ts';
import { Meet } from './meet.ts';
import type { Placing } from './plant.ts';
import { dependentRules } from './rank.ts';
import { FIRST_EXACT_KIND, residualOf } from './residual.ts';
import { stepsOf } from './steps.ts';
import { System } from './system.ts';

/** Residual to which every rule of a planted point holds, mm. */
export const HOLDS = 1e-9;

/** Judges a placing. Places of merged points are filled in first. */
export function judge(placing: Placing): NetworkResult {
  const { ground } = placing;
  const { network, reduction, coords, work } = ground;
  if (reduction.points !== network.points) {
    spreadToMembers(reduction.root, coords);
    keepHeld(placing);
  }
  // No minus zero leaves the kernel.
  for (let k = 0; k < coords.length; k++) coords[k]! += 0;
  const missBy = missesOf(placing);
  const { motions, dependent } = freedomOf(placing);
  const states = new Uint8Array(network.pointCount);
  markLoose(placing, motions, states);
  const failing: number[] = [];
  for (let r = 0; r < network.ruleCount; r++) if (missBy[r]! > HOLDS) failing.push(r);
  if (failing.length > 0) markContested(placing, failing, states);
  const disagreements = failing.length > 0 ? disagreementsOf(placing, failing, missBy) : [];
  const spare = spareRules(placing, missBy, dependent);
  let listed: ReturnType<typeof stepsOf> | undefined;
  let dense: Float64Array[] | undefined;
  return {
    coords,
    missBy,
    states,
    get steps() {
      listed ??= stepsOf(placing);
      return listed;
    },
    freeMotions: motions.length,
    get motions() {
      dense ??= motions.map((motion) => spread(placing, motion));
      return dense;
    },
    spare,
    disagreements,
    work,
  };
}

/** Gives every member of a merged place what its root has. */
function spreadToMembers(root: Int32Array, coords: Float64Array): void {
  for (let i = 0; i < root.length; i++) {
    const at = root[i]!;
    coords[2 * i] = coords[2 * at]!;
    coords[2 * i + 1] = coords[2 * at + 1]!;
  }
}

/** What is held stays where it is held, whatever contradicts it. */
function keepHeld({ ground, sketch }: Placing): void {
  const { coords, network } = ground;
  for (let i = 0; i < network.pointCount; i++) {
    if (!network.held[i]) continue;
    coords[2 * i] = sketch[2 * i]!;
    coords[2 * i + 1] = sketch[2 * i + 1]!;
  }
}

/** Residuals of all rules at the final places, exact rules included; held points keep the place they were given. */
function missesOf(placing: Placing): Float64Array {
  const { network, reduction, coords } = placing.ground;
  const { kinds, values, ruleCount } = network;
  const { points } = reduction;
  const misses = new Float64Array(ruleCount);
  for (let r = 0; r < ruleCount; r++) {
    const kind = kinds[r]!;
    if (kind === RuleKind.distance) {
      const p = 2 * points[4 * r]!;
      const a = 2 * points[4 * r + 1]!;
      const dx = coords[p]! - coords[a]!;
      const dy = coords[p + 1]! - coords[a + 1]!;
      misses[r] = Math.abs(Math.sqrt(dx * dx + dy * dy) - values[3 * r]!);
      continue;
    }
    misses[r] =
      kind < FIRST_EXACT_KIND
        ? Math.abs(residualOf(kind, points, 4 * r, values, 3 * r, coords))
        : exactMiss(network, r, coords, placing.sketch);
  }
  return misses;
}

/** How far an exact rule is from holding, mm; more than rounding only where held places contradict it. */
function exactMiss(network: Network, r: number, coords: Float64Array, sketch: Float64Array): number {
  const [p, b, c] = [network.points[4 * r]!, network.points[4 * r + 1]!, network.points[4 * r + 2]!];
  const at = (i: number): [number, number] => {
    const from = network.held[i] ? sketch : coords;
    return [from[2 * i]!, from[2 * i + 1]!];
  };
  const [px, py] = at(p);
  const [bx, by] = at(b);
  if (network.kinds[r] === RuleKind.samePlace) return Math.hypot(px - bx, py - by);
  const turned = network.kinds[r] === RuleKind.turned;
  const wr = turned ? Math.cos(network.values[3 * r]!) : -1;
  const wi = turned ? Math.sin(network.values[3 * r]!) : 0;
  // Opposite lists p, c, q; turned lists p, q, c.
  const [[cx, cy], [qx, qy]] = turned ? [at(c), [bx, by]] : [[bx, by], at(c)];
  const [dx, dy] = [qx - cx, qy - cy];
  return Math.hypot(px - cx - (wr * dx - wi * dy), py - cy - (wi * dx + wr * dy));
}

/** Free motions of loose groups, and of everything that hangs together with a step that lacks rank. */
function freedomOf(placing: Placing): { motions: Motion[]; dependent: number[] } {
  const { plan, ground, meet } = placing;
  const weak: number[] = [];
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0 ? meet[s] === Meet.touch || meet[s] === Meet.same : placing.weak.includes(s)) weak.push(s);
  }
  const system = new System();
  const motions: Motion[] = [];
  const dependent: number[] = [];
  const covered = new Uint8Array(ground.network.pointCount);
  for (const s of weak) {
    const root = plan.root[s]!;
    const seed = root >= 0 ? root : plan.groups[-1 - root]!.roots[0]!;
    if (covered[seed]) continue;
    const whole = connectedTo(placing, seed, covered);
    system.load(ground, whole.roots, whole.rules);
    system.evaluate(true);
    motions.push(...motionsOf(system));
    const touching = new Set<number>();
    for (const t of weak)
      if (plan.root[t]! >= 0 && meet[t] === Meet.touch) touching.add(plan.ruleA[t]!).add(plan.ruleB[t]!);
    dependent.push(...dependentRules(system).filter((r) => !touching.has(r)));
  }
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) continue;
    const group = plan.groups[-1 - root]!;
    if (group.kind !== 'under' || covered[group.roots[0]!]) continue;
    system.load(ground, group.roots, group.rules);
    if (group.rules.length > 0) system.evaluate(true);
    const found = motionsOf(system);
    motions.push(...found);
    // More freedom than the structure says: some rules repeat others.
    if (found.length > 2 * group.roots.length - group.rules.length) dependent.push(...dependentRules(system));
  }
  return { motions, dependent };
}

/** All roots and rules that hang together with a root. */
function connectedTo(placing: Placing, seed: number, covered: Uint8Array): { roots: Int32Array; rules: Int32Array } {
  const { rootStart, roots, ruleStart, rules } = placing.ground.incidence;
  const found = [seed];
  const foundRules = new Set<number>();
  covered[seed] = 1;
  for (let q = 0; q < found.length; q++) {
    const u = found[q]!;
    for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
      const r = rules[k]!;
      if (foundRules.has(r)) continue;
      foundRules.add(r);
      for (let j = rootStart[r]!; j < rootStart[r + 1]!; j++) {
        const w = roots[j]!;
        if (covered[w]) continue;
        covered[w] = 1;
        found.push(w);
      }
    }
  }
  return { roots: Int32Array.from(found).sort(), rules: Int32Array.from(foundRules).sort() };
}

/** A motion as displacements of every point, derived and merged ones included. */
function spread(placing: Placing, motion: Motion): Float64Array {
  const { network, reduction } = placing.ground;
  const all = new Float64Array(2 * network.pointCount);
  motion.roots.forEach((u, k) => {
    all[2 * u] = motion.shift[2 * k]!;
    all[2 * u + 1] = motion.shift[2 * k + 1]!;
  });
  for (const { point, roots, factors } of reduction.derived) {
    roots.forEach((root, k) => {
      const [fr, fi] = [factors[2 * k]!, factors[2 * k + 1]!];
      all[2 * point]! += fr * all[2 * root]! - fi * all[2 * root + 1]!;
      all[2 * point + 1]! += fr * all[2 * root + 1]! + fi * all[2 * root]!;
    });
  }
  if (reduction.points !== network.points) spreadToMembers(reduction.root, all);
  let most = 0;
  for (let i = 0; i < network.pointCount; i++) most = Math.max(most, Math.hypot(all[2 * i]!, all[2 * i + 1]!));
  return most > 0 ? all.map((v) => v / most) : all;
}

function markLoose(placing: Placing, motions: readonly Motion[], states: Uint8Array): void {
  const { network, reduction } = placing.ground;
  for (const { roots, shift } of motions) {
    for (let k = 0; k < roots.length; k++) {
      if (Math.hypot(shift[2 * k]!, shift[2 * k + 1]!) > STILL) states[roots[k]!] = PointState.loose;
    }
  }
  for (const { point, roots } of reduction.derived) {
    if (roots.some((root) => states[root] === PointState.loose)) states[point] = PointState.loose;
  }
  if (reduction.points === network.points) return;
  for (let i = 0; i < network.pointCount; i++) states[i] = states[reduction.root[i]!]!;
}

/** Rules that hold and are not needed: checks between placed points, surplus ones, repeated ones. */
function spareRules(placing: Placing, missBy: Float64Array, dependent: readonly number[]): number[] {
  const { ground, plan } = placing;
  const used = new Uint8Array(ground.network.ruleCount);
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) {
      const [a, b] = placing.pairOf.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!];
      used[a] = used[b] = 1;
      continue;
    }
    const group = plan.groups[-1 - root]!;
    for (const r of group.rules) used[r] = 1;
    for (const r of group.surplus) used[r] = 0;
  }
  for (const r of dependent) used[r] = 0;
  const found: number[] = [...ground.reduction.spare];
  for (let r = 0; r < ground.network.ruleCount; r++) {
    if (ground.network.kinds[r]! < FIRST_EXACT_KIND && !used[r] && missBy[r]! <= HOLDS) found.push(r);
  }
  return found.sort((a, b) => a - b);
}

function disagreementsOf(placing: Placing, failing: readonly number[], missBy: Float64Array): Disagreement[] {
  const { ground, plan, meet, gap } = placing;
  const found: Disagreement[] = [...ground.reduction.disagreements];
  const told = new Set<number>(found.flatMap((d) => d.rules));
  const trace = new PressureTrace(ground, plan);
  const system = new System();
  const tell = (rules: readonly number[], pressures: readonly number[], by: number, step: number): void => {
    for (const r of rules) told.add(r);
    found.push({ rules: trace.rulesBehind(rules, pressures, step), gap: by });
  };
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (placing.stuck.includes(s)) {
      const group = root < 0 ? plan.groups[-1 - root]! : undefined;
      system.load(ground, group?.roots ?? Int32Array.of(root), group?.rules ?? plan.more.get(s)!);
      system.evaluate(true);
      for (let i = 0; i < system.ruleCount; i++) told.add(system.rules[i]!);
      const set = thinOut(system);
      tell(set.rules, set.residuals, gapOf(set.residuals), s);
    } else if (root >= 0 && meet[s] === Meet.none) {
      const pair = [plan.ruleA[s]!, plan.ruleB[s]!];
      const residuals = pair.map((r) => signedResidual(placing, r));
      tell(pair, residuals, gap[s]!, s);
    }
  }
  for (const r of failing) {
    if (told.has(r) || ground.network.kinds[r]! >= FIRST_EXACT_KIND) continue;
    tell([r], [1], missBy[r]!, -1);
  }
  return found.filter((each, k) => !found.some((other, j) => j !== k && followsFrom(each, other, k < j)));
}

/** A set that holds a whole other one says nothing new: that one disagrees without the rest. Of equal sets the first counts. */
function followsFrom(set: Disagreement, other: Disagreement, isFirst: boolean): boolean {
  if (other.rules.length > set.rules.length || (isFirst && other.rules.length === set.rules.length)) return false;
  return other.rules.every((rule) => set.rules.includes(rule));
}

function signedResidual(placing: Placing, r: number): number {
  const { network, reduction, coords } = placing.ground;
  return residualOf(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
}
