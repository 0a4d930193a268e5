/**
 * Rules that hold and are not needed: each may be left out alone without loosening anything.
 *
 * Where all points are settled beyond doubt by the rules that placed them, every other rule is spare. A group with more
 * rules than it needs, and whatever was decomposed, is asked for its dependent rules: the count of rules alone does not
 * say which are needed. Array kernel: indices come from the plan, hence the `!`.
 */

import { HOLDS } from '../../tolerances.ts';
import type { Placing } from './placing.ts';
import type { Group } from './planSteps.ts';
import { dependentRules } from './rank.ts';
import { FIRST_EXACT_KIND } from './residual.ts';
import type { Settling } from './settling.ts';
import { System } from './system.ts';

/** Spare rules in rising order. */
export function spareRules(placing: Placing, missBy: Float64Array, settling: Settling): number[] {
  const { ground, plan } = placing;
  const needed = new Uint8Array(ground.network.ruleCount);
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) {
      const [a, b] = placing.pairOf.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!];
      needed[a] = needed[b] = 1;
      continue;
    }
    const group = plan.groups[-1 - root]!;
    for (const r of group.rules) needed[r] = 1;
    const isDecomposed = group.rules.length > 0 && settling.decomposed.has(group.rules[0]!);
    if (group.kind === 'over' && !isDecomposed) for (const r of dependentIn(placing, group)) needed[r] = 0;
  }
  for (const r of settling.decomposed) needed[r] = 1;
  for (const r of settling.spare) needed[r] = 0;
  const found: number[] = [...ground.reduction.spare];
  for (let r = 0; r < ground.network.ruleCount; r++) {
    if (ground.network.kinds[r]! < FIRST_EXACT_KIND && !needed[r] && missBy[r]! <= HOLDS) found.push(r);
  }
  return found.sort((a, b) => a - b);
}

/** Rules of a settled group that depend on those listed before them. */
function dependentIn({ ground }: Placing, group: Group): number[] {
  const system = new System();
  system.load(ground, group.roots, group.rules);
  system.evaluate(true);
  // The probe has found it settled, so its rank is that of its coordinates.
  return dependentRules(system, group.rules.length - 2 * group.roots.length);
}
