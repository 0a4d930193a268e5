/**
 * Which rules disagree in a placing: loci that miss, groups that do not close, rules without a direction, checks.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */

import { Meet } from '../../geometry/index.ts';
import { TOUCHING } from '../../tolerances.ts';
import { gapOf, type KernelDisagreement, PressureTrace, thinOut } from './conflicts.ts';
import { shortArm } from './degenerate.ts';
import type { Placing } from './placing.ts';
import { FIRST_EXACT_KIND, residualOf } from './residual.ts';
import { minimalSet, tiesBehind } from './setAlone.ts';
import { System } from './system.ts';

/**
 * The sets, each with its gap: minimal, and not able to hold by themselves. `missBy` are the misses of all rules, `failing`
 * those that do not hold. What only hangs on a place that is not settled says nothing of its own.
 */
export function disagreementsOf(
  placing: Placing,
  failing: readonly number[],
  missBy: Float64Array,
): KernelDisagreement[] {
  const { ground } = placing;
  const found: KernelDisagreement[] = [...ground.reduction.disagreements];
  const told = new Set<number>(found.flatMap((d) => d.rules));
  const teller = new Teller(placing, told, found);
  teller.steps();
  tellDegenerate(placing, failing, missBy, told, found);
  for (const r of failing) {
    if (told.has(r) || ground.network.kinds[r]! >= FIRST_EXACT_KIND || teller.isUnsettled(r, [])) continue;
    teller.tell([r], [1], missBy[r]!, -1);
  }
  return found.filter((each, k) => !found.some((other, j) => j !== k && followsFrom(each, other, k < j)));
}

/**
 * A check that misses, with the smallest set of rules that it cannot hold with: those that place its points, ties among
 * them. The check comes first.
 */
export function rulesAgainst(
  { ground, plan, sketch }: Pick<Placing, 'ground' | 'plan' | 'sketch'>,
  check: number,
): readonly number[] {
  const behind = new PressureTrace(ground, plan).rulesBehind([check], [1], -1);
  const whole = [...behind, ...tiesBehind(ground.network, ground.reduction, behind)];
  const least = minimalSet(ground.network, [ground.coords, sketch], whole);
  return least?.includes(check) ? [check, ...least.filter((r) => r !== check)] : behind;
}

/** Goes through the steps and tells the first that fail. */
class Teller {
  private readonly placing: Placing;
  private readonly told: Set<number>;
  private readonly found: KernelDisagreement[];
  private readonly trace: PressureTrace;
  private readonly system = new System();
  /** Roots whose step fails, and those that hang on them. */
  private readonly unsettled = new Set<number>();

  constructor(placing: Placing, told: Set<number>, found: KernelDisagreement[]) {
    this.placing = placing;
    this.told = told;
    this.found = found;
    this.trace = new PressureTrace(placing.ground, placing.plan);
  }

  /** Does a rule name a place that is not settled, beside its own? */
  isUnsettled(r: number, own: readonly number[]): boolean {
    const { rootStart, roots } = this.placing.ground.incidence;
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) {
      if (this.unsettled.has(roots[k]!) && !own.includes(roots[k]!)) return true;
    }
    return false;
  }

  tell(rules: readonly number[], pressures: readonly number[], by: number, step: number): void {
    const { ground, sketch } = this.placing;
    for (const r of rules) this.told.add(r);
    const behind = this.trace.rulesBehind(rules, pressures, step);
    const whole = [...behind, ...tiesBehind(ground.network, ground.reduction, behind)];
    const least = minimalSet(ground.network, [ground.coords, sketch], whole);
    this.found.push({ rules: least ?? behind, gap: by });
  }

  steps(): void {
    const { plan } = this.placing;
    for (let s = 0; s < plan.stepCount; s++) {
      const root = plan.root[s]!;
      const group = root < 0 ? plan.groups[-1 - root]! : undefined;
      const own = group ? Array.from(group.roots) : [root];
      const rules = group ? Array.from(group.rules) : [plan.ruleA[s]!, plan.ruleB[s]!];
      const hangs = rules.some((r) => this.isUnsettled(r, own));
      if (hangs) for (const r of rules) this.told.add(r);
      if (hangs || this.tellStep(s, root)) for (const u of own) this.unsettled.add(u);
    }
  }

  /** Tells a step that fails. */
  private tellStep(s: number, root: number): boolean {
    const { ground, plan, meet, gap } = this.placing;
    if (this.placing.stuck.includes(s)) {
      const group = root < 0 ? plan.groups[-1 - root]! : undefined;
      this.system.load(ground, group?.roots ?? Int32Array.of(root), group?.rules ?? plan.more.get(s)!);
      this.system.evaluate(true);
      const all = Array.from(this.system.rules.subarray(0, this.system.ruleCount));
      const set = thinOut(this.system);
      this.tell(set.rules, set.residuals, gapOf(set.residuals), s);
      for (const r of all) this.told.add(r);
      return true;
    }
    if (root < 0 || meet[s] !== Meet.none || !(gap[s]! > TOUCHING)) return false;
    const pair = [plan.ruleA[s]!, plan.ruleB[s]!];
    this.tell(
      pair,
      pair.map((r) => signedResidual(this.placing, r)),
      gap[s]!,
      s,
    );
    return true;
  }
}

/** Rules that lose their meaning where a point stands, with those that bring it there, as one set. */
function tellDegenerate(
  placing: Placing,
  failing: readonly number[],
  missBy: Float64Array,
  told: Set<number>,
  found: KernelDisagreement[],
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
function followsFrom(set: KernelDisagreement, other: KernelDisagreement, isFirst: boolean): boolean {
  if (other.rules.length > set.rules.length || (isFirst && other.rules.length === set.rules.length)) return false;
  return other.rules.every((rule) => set.rules.includes(rule));
}

function signedResidual(placing: Placing, r: number): number {
  const { network, reduction, coords } = placing.ground;
  return residualOf(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
}
