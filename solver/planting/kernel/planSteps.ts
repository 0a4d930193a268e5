/** What a plan is made of: steps in order, groups that are solved together, and how a step is added. Array kernel: indices come from a checked network, hence the `!`. */
import { type Network, RuleKind } from '../network.ts';
import type { Incidence } from './incidence.ts';
import type { Reduction } from './reduce.ts';
import { isLinearPair } from './residual.ts';
import type { Pattern } from './sparseNormal.ts';

/** A set of points solved together. `square`: as many rules as unknowns; `over`: more; `under`: fewer. */
export interface Group {
  readonly kind: 'square' | 'over' | 'under';
  readonly roots: Int32Array;
  readonly rules: Int32Array;
  /** Rules of an over-determined group that the structure does not need; they hold anyway, or the group disagrees. */
  readonly surplus: readonly number[];
  /** Sparse pattern, once it was needed. */
  pattern?: Pattern;
}

/** Steps in order. A crossing places `root[s]` by `ruleA[s]` and `ruleB[s]`; a group step has root -1 - group index. */
export interface Plan {
  readonly incidence: Incidence;
  stepCount: number;
  readonly root: Int32Array;
  readonly ruleA: Int32Array;
  readonly ruleB: Int32Array;
  /** All the loci of a crossing step that has more than two. */
  readonly more: Map<number, Int32Array>;
  readonly groups: Group[];
  /** Made without rules that were set aside for the places they had: not to be used for other places. */
  readonly withoutSome: boolean;
}

/** Adds a step for one root: a crossing when it has two loci in closed form, else a group of one. */
export function addRootStep(plan: Plan, network: Network, reduction: Reduction, root: number, rules: Int32Array): void {
  let first = -1;
  let second = -1;
  for (let k = 0; k < rules.length && second < 0; k++) {
    if (!isLocus(network, reduction, rules[k]!, root)) continue;
    if (first < 0) first = rules[k]!;
    else second = rules[k]!;
  }
  if (second < 0) {
    const kind = rules.length > 2 ? 'over' : 'square';
    addGroupStep(plan, { kind, roots: Int32Array.of(root), rules, surplus: Array.from(rules.subarray(2)) });
    return;
  }
  const step = plan.stepCount++;
  plan.root[step] = root;
  plan.ruleA[step] = first;
  plan.ruleB[step] = second;
  if (rules.length > 2) plan.more.set(step, rules);
}

/** Appends a step that places a whole group at once. */
export function addGroupStep(plan: Plan, group: Group): void {
  plan.root[plan.stepCount++] = -1 - plan.groups.length;
  plan.groups.push(group);
}

/** Is the rule, with all else placed, a circle, line or ray for this root? */
export function isLocus(network: Network, reduction: Reduction, rule: number, root: number): boolean {
  const kind = network.kinds[rule]!;
  const { points } = reduction;
  const at = 4 * rule;
  if (kind === RuleKind.distance || kind === RuleKind.onLine || isLinearPair(kind)) return true;
  const third = points[at + 2]!;
  if (kind === RuleKind.ray && third < 0) return true;
  let uses = 0;
  for (let k = at; k < at + 3; k++) if (dependsOn(reduction, points[k]!, root)) uses++;
  if (uses !== 1) return false;
  // The centre of an angle between two placed points runs on an arc: left to the iteration.
  return kind !== RuleKind.ray || !dependsOn(reduction, points[at + 1]!, root);
}

/** Does the place of `point` change with `root`? */
export function dependsOn(reduction: Reduction, point: number, root: number): boolean {
  if (point === root) return true;
  const at = reduction.derivedAt ? reduction.derivedAt[point]! : -1;
  return at >= 0 && reduction.derived[at]!.roots.includes(root);
}
