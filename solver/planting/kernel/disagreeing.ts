/**
 * Which rules disagree in a placing: loci that miss, groups that do not close, rules without a direction, checks.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */

import { Meet } from '../../geometry/index.ts';
import { TOUCHING } from '../../tolerances.ts';
import { type Disagreement, gapOf, PressureTrace, thinOut } from './conflicts.ts';
import { shortArm } from './degenerate.ts';
import type { Placing } from './placing.ts';
import { FIRST_EXACT_KIND, residualOf } from './residual.ts';
import { System } from './system.ts';

/**
 * The sets, each with its gap. `missBy` are the misses of all rules, `failing` those that do not hold.
 */
export function disagreementsOf(placing: Placing, failing: readonly number[], missBy: Float64Array): Disagreement[] {
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
    } else if (root >= 0 && meet[s] === Meet.none && gap[s]! > TOUCHING) {
      const pair = [plan.ruleA[s]!, plan.ruleB[s]!];
      const residuals = pair.map((r) => signedResidual(placing, r));
      tell(pair, residuals, gap[s]!, s);
    }
  }
  tellDegenerate(placing, failing, missBy, told, found);
  for (const r of failing) {
    if (told.has(r) || ground.network.kinds[r]! >= FIRST_EXACT_KIND) continue;
    tell([r], [1], missBy[r]!, -1);
  }
  return found.filter((each, k) => !found.some((other, j) => j !== k && followsFrom(each, other, k < j)));
}

/** Rules that lose their meaning where a point stands, with those that bring it there, as one set. */
function tellDegenerate(
  placing: Placing,
  failing: readonly number[],
  missBy: Float64Array,
  told: Set<number>,
  found: Disagreement[],
): void {
  const { plan, ground } = placing;
  const sets = new Map<number, number[]>();
  for (const r of failing) {
    if (told.has(r) || lostArm(placing, r) === 0) continue;
    const own = ownPoint(ground, r);
    sets.set(own, [...(sets.get(own) ?? []), r]);
  }
  for (let s = 0; s < plan.stepCount && sets.size > 0; s++) {
    if (plan.root[s]! < 0) continue;
    const pair = placing.pairOf.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!];
    for (const rules of sets.values()) if (pair.some((r) => rules.includes(r))) rules.push(...pair);
  }
  for (const set of sets.values()) {
    const rules = [...new Set(set)].sort((a, b) => a - b);
    for (const r of rules) told.add(r);
    found.push({ rules, gap: Math.max(...rules.map((r) => missBy[r]!)), isDegenerate: true });
  }
}

/** The first point of a rule that is not given, else its first. */
function ownPoint({ network, reduction }: Placing['ground'], r: number): number {
  for (let k = 4 * r; k < 4 * r + 3; k++) {
    const point = network.points[k]!;
    if (point >= 0 && !reduction.given[point]) return reduction.root[point]!;
  }
  return network.points[4 * r]!;
}

function lostArm({ ground }: Placing, r: number): number {
  const { network, reduction, coords } = ground;
  return shortArm(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
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
