/**
 * Other branches: what is tried when the placing that the sketch means leaves rules unkept which all could be kept.
 *
 * A rule that only checks (between points that others place) can tell that a crossing upstream was sketched on the
 * wrong side. The points that it hangs on are then turned over to their other crossing, those whose sketch is the
 * least sure first, and groups are taken to their other placements. A group with more rules than it needs is first
 * placed without the surplus. Only a placing that keeps every rule is taken: else the sketch's own stands, and is told
 * as it is. Arcs that do not reach tell nothing of a branch, and recorded sides are never overruled. Array kernel:
 * indices come from the plan, hence the `!`.
 */

import { Meet } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import type { Placing } from './placing.ts';
import { FIRST_EXACT_KIND, residualOf } from './residual.ts';

/** Candidates that are tried in one round, and rounds: each round turns one more step over. */
const MOST_TRIED = 24;
const MOST_ROUNDS = 4;
/** Steps placed again in all tries together: some ten milliseconds. */
const MOST_STEPS = 20_000;
/** Iterations of groups in all tries together: measured on chains of blocks, more recover no more. */
const MOST_ITERATIONS = 8000;
/** Other placements of a group that are tried. */
const OTHER_PLACEMENTS = 3;

/** Which step takes which other branch: 1 the other crossing, or a group's first, second… other placement. */
export type Turned = ReadonlyMap<number, number>;

/** Do rules that place nothing, or a group's surplus, tell that another branch may be meant? */
export function isTold(placing: Placing): boolean {
  const { plan, stuck } = placing;
  if (stuck.some((s) => plan.root[s]! < 0 && plan.groups[-1 - plan.root[s]!]!.surplus.length > 0)) return true;
  return checkingCount(placing) > 0 && unkept(placing).length > 0;
}

/** How many rules place nothing in this plan, and only check. */
function checkingCount({ plan, ground }: Placing): number {
  const { kinds, ruleCount } = ground.network;
  let count = 0;
  for (let r = 0; r < ruleCount; r++) if (kinds[r]! < FIRST_EXACT_KIND) count++;
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    count -= root < 0 ? plan.groups[-1 - root]!.rules.length : (plan.more.get(s)?.length ?? 2);
  }
  return count;
}

/** Rules that do not hold where the points stand. */
export function unkept({ ground }: Placing): number[] {
  const { network, reduction, coords } = ground;
  const found: number[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    const kind = network.kinds[r]!;
    if (kind >= FIRST_EXACT_KIND) continue;
    const miss = residualOf(kind, reduction.points, 4 * r, network.values, 3 * r, coords);
    if (!(Math.abs(miss) <= HOLDS)) found.push(r);
  }
  return found;
}

/** Rules of groups that are stuck with more rules than they need: what to do without at first. */
export function stuckSurplus({ plan, stuck }: Placing): number[] {
  return stuck.flatMap((s) => {
    const root = plan.root[s]!;
    return root < 0 ? plan.groups[-1 - root]!.surplus : [];
  });
}

/**
 * Looks for a branch on which every rule holds.
 *
 * @param again places the same plan with some steps turned over
 */
export function keepingBranch(placing: Placing, again: (turned: Turned) => Placing): Placing | undefined {
  const most = Math.floor(MOST_STEPS / Math.max(1, placing.plan.stepCount));
  const { work } = placing.ground;
  const last = work.iterations + MOST_ITERATIONS;
  let tries = 0;
  let [turned, failing]: [Turned, readonly number[]] = [new Map(), unkept(placing)];
  let from = placing;
  for (let round = 0; round < MOST_ROUNDS && failing.length > 0; round++) {
    let best: { turned: Turned; placing: Placing; failing: readonly number[] } | undefined;
    for (const [step, branch] of candidates(from, failing, turned)) {
      if (tries++ >= most || work.iterations >= last) return undefined;
      const next = new Map(turned).set(step, branch);
      const tried = again(next);
      const left = unkept(tried);
      if (left.length === 0 && tried.stuck.length === 0) return tried;
      if (left.length < (best?.failing.length ?? failing.length)) {
        best = { turned: next, placing: tried, failing: left };
      }
    }
    if (!best) return undefined;
    ({ turned, placing: from, failing } = best);
  }
  return undefined;
}

/** Steps that unkept rules hang on and that have another branch, the least sure first. */
function candidates(placing: Placing, failing: readonly number[], turned: Turned): [number, number][] {
  const { plan, ground, meet, sketch, other } = placing;
  const { coords, reduction } = ground;
  const found: { readonly at: [number, number]; readonly doubt: number }[] = [];
  for (const s of stepsBehind(placing, failing)) {
    if (turned.has(s)) continue;
    const root = plan.root[s]!;
    if (root < 0) {
      for (let k = 1; k <= OTHER_PLACEMENTS; k++) found.push({ at: [s, k], doubt: k });
      continue;
    }
    if (meet[s] !== Meet.two || plan.more.has(s) || reduction.sides[root]! > 0) continue;
    const [x, y] = [sketch[2 * root]!, sketch[2 * root + 1]!];
    const chosen = Math.hypot(coords[2 * root]! - x, coords[2 * root + 1]! - y);
    found.push({ at: [s, 1], doubt: Math.hypot(other[2 * s]! - x, other[2 * s + 1]! - y) - chosen });
  }
  found.sort((a, b) => a.doubt - b.doubt);
  return found.slice(0, MOST_TRIED).map(({ at }) => at);
}

/** Steps that place the points of the rules, and the points that these hang on, and so on. */
function stepsBehind({ plan, ground }: Placing, rules: readonly number[]): number[] {
  const { rootStart, roots } = plan.incidence;
  const stepOf = new Int32Array(ground.network.pointCount).fill(-1);
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) stepOf[root] = s;
    else for (const u of plan.groups[-1 - root]!.roots) stepOf[u] = s;
  }
  const seen = new Set<number>();
  const steps: number[] = [];
  const reach = (r: number): void => {
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) {
      const s = stepOf[roots[k]!]!;
      if (s < 0 || seen.has(s)) continue;
      seen.add(s);
      steps.push(s);
    }
  };
  for (const r of rules) reach(r);
  for (let q = 0; q < steps.length; q++) {
    const s = steps[q]!;
    const root = plan.root[s]!;
    const own = root < 0 ? plan.groups[-1 - root]!.rules : (plan.more.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!]);
    for (const r of own) reach(r);
  }
  return steps;
}
