/**
 * Which points are contested: those of rules that do not hold, and all that is placed from them.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { PointState } from '../network.ts';
import type { Placing } from './placing.ts';
import { FIRST_EXACT_KIND } from './residual.ts';

/** Marks in `states` what the failing rules leave unsettled. */
export function markContested(placing: Placing, failing: readonly number[], states: Uint8Array): void {
  for (const rule of failing) markRule(placing, rule, states);
  spreadContested(placing, states);
}

/** A rule that places and does not hold contests what its step places, and nothing upstream. */
function markRule(placing: Placing, rule: number, states: Uint8Array): void {
  const { ground, plan } = placing;
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) {
      if (plan.ruleA[s] === rule || plan.ruleB[s] === rule) states[root] = PointState.contested;
      continue;
    }
    const group = plan.groups[-1 - root]!;
    if (group.rules.includes(rule)) for (const u of group.roots) states[u] = PointState.contested;
  }
  if (ground.network.kinds[rule]! >= FIRST_EXACT_KIND) markTie(placing, rule, states);
}

/** Points of a tie that does not hold are contested; held ones only when the tie has no other. */
function markTie(placing: Placing, rule: number, states: Uint8Array): void {
  const { network, reduction } = placing.ground;
  const own: number[] = [];
  for (let k = 4 * rule; k < 4 * rule + 3; k++) if (network.points[k]! >= 0) own.push(network.points[k]!);
  const free = own.filter((point) => !reduction.given[point]);
  const marked = new Set((free.length > 0 ? free : own).map((point) => reduction.root[point]!));
  for (let i = 0; i < network.pointCount; i++) if (marked.has(reduction.root[i]!)) states[i] = PointState.contested;
}

/** A point placed from a contested one is contested too: where it stands is not settled while that one's rules disagree. */
function spreadContested({ ground, plan }: Placing, states: Uint8Array): void {
  const { network, reduction } = ground;
  const { rootStart, roots: rootsOfRules } = ground.incidence;
  const isDoubted = (root: number): boolean => states[root] === PointState.contested && !reduction.given[root];
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    const group = root < 0 ? plan.groups[-1 - root]! : undefined;
    const own = group ? Array.from(group.roots) : [root];
    const rules = group ? group.rules : [plan.ruleA[s]!, plan.ruleB[s]!];
    const from = Array.from(rules).flatMap((r) => Array.from(rootsOfRules.subarray(rootStart[r]!, rootStart[r + 1]!)));
    if (!from.some((u) => isDoubted(u) && !own.includes(u))) continue;
    for (const u of own) if (states[u] === PointState.planted) states[u] = PointState.contested;
  }
  for (const { point, roots } of reduction.derived) {
    if (states[point] === PointState.planted && roots.some(isDoubted)) states[point] = PointState.contested;
  }
  for (let i = 0; i < network.pointCount; i++) {
    if (isDoubted(reduction.root[i]!)) states[i] = PointState.contested;
  }
}
