/**
 * What moves together when a loose point is dragged. Array kernel: indices come from the plan, hence the `!`.
 */

import { HOLDS } from '../../tolerances.ts';
import { type NetworkResult, PointState, RuleKind } from '../network.ts';
import { areaOf, type Followed } from './follow.ts';
import type { PatternMemo } from './iterate.ts';
import type { Placing } from './placing.ts';

/** Roots and rules of the part, and the triangles in it that must keep their hand (see `Followed`). */
export interface LoosePart extends Pick<Followed, 'triangles' | 'hands'> {
  readonly roots: Int32Array;
  readonly rules: Int32Array;
  readonly memo: PatternMemo;
}

/** Loose roots that hang together with one, and the rules that hold of all that speak of them. */
export function loosePart(start: Placing, planted: NetworkResult, root: number): LoosePart {
  const { reduction, incidence } = start.ground;
  const { states, missBy } = planted;
  const at = reduction.derivedAt ? reduction.derivedAt[root]! : -1;
  const found = (at >= 0 ? reduction.derived[at]!.roots : [root]).filter((u) => states[u] === PointState.loose);
  const seen = new Set(found);
  const rules = new Set<number>();
  for (let q = 0; q < found.length; q++) {
    for (let k = incidence.ruleStart[found[q]!]!; k < incidence.ruleStart[found[q]! + 1]!; k++) {
      const r = incidence.rules[k]!;
      if (missBy[r]! > HOLDS || rules.has(r)) continue;
      rules.add(r);
      for (const u of incidence.roots.subarray(incidence.rootStart[r]!, incidence.rootStart[r + 1]!)) {
        if (seen.has(u) || states[u] !== PointState.loose) continue;
        seen.add(u);
        found.push(u);
      }
    }
  }
  const triangles = trianglesOf(start, seen);
  const hands = Float64Array.from({ length: triangles.length / 3 }, (_, k) => areaOf(triangles, k, planted.coords));
  const own = { roots: Int32Array.from(found).sort(), rules: Int32Array.from(rules).sort() };
  return { ...own, memo: {}, triangles, hands };
}

/** Crossings of two arcs among the roots, each with its centres. */
function trianglesOf({ plan, ground }: Placing, roots: ReadonlySet<number>): Int32Array {
  const { points } = ground.reduction;
  const found: number[] = [];
  for (let s = 0; s < plan.stepCount; s++) {
    const u = plan.root[s]!;
    const pair = [plan.ruleA[s]!, plan.ruleB[s]!];
    if (!roots.has(u) || pair.some((r) => ground.network.kinds[r] !== RuleKind.distance)) continue;
    const centres = pair.map((r) => (points[4 * r] === u ? points[4 * r + 1]! : points[4 * r]!));
    // A derived place is not brought along while the others move.
    if (!centres.some((c) => (ground.reduction.derivedAt?.[c] ?? -1) >= 0)) found.push(u, ...centres);
  }
  return Int32Array.from(found);
}
