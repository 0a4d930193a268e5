/**
 * The plan: in which order points are placed, from structure alone.
 *
 * First the maker's order: whatever has two loci from placed points is placed, level by level (all points that are
 * ready together are placed together), so the plan does not depend on the order in which points and rules are listed.
 * What remains goes to `coupled.ts`. Array kernel: indices come from a checked network, hence the `!`.
 */
import { type Network, RuleKind } from '../network.ts';
import { planCoupled } from './coupled.ts';
import { type Incidence, incidenceOf } from './incidence.ts';
import { addRootStep, isLocus, type Plan } from './planSteps.ts';
import type { Reduction } from './reduce.ts';
import { isLinearPair } from './residual.ts';

/**
 * Makes the plan of a network.
 *
 * @param aside 1 for rules that the plan must do without: found to say what another says; they are only proved
 */
export function planNetwork(network: Network, reduction: Reduction, aside?: Uint8Array): Plan {
  const { pointCount, ruleCount } = network;
  const incidence = incidenceOf(network, reduction);
  const plan: Plan = {
    incidence,
    stepCount: 0,
    root: new Int32Array(pointCount),
    ruleA: new Int32Array(pointCount),
    ruleB: new Int32Array(pointCount),
    more: new Map(),
    groups: [],
    withoutSome: aside !== undefined,
  };
  const { rootStart } = incidence;
  const left = new Int32Array(ruleCount);
  for (let r = 0; r < ruleCount; r++) left[r] = aside?.[r] ? 0 : rootStart[r + 1]! - rootStart[r]!;
  leaveOutDoubles(network, reduction, incidence, left);
  const placed = new Uint8Array(pointCount);
  const count = buildByPoint(plan, network, reduction, left, placed);
  let unknowns = 0;
  for (let u = 0; u < pointCount; u++) unknowns += reduction.unknown[u]!;
  if (count < unknowns) planCoupled(plan, network, reduction, left, placed);
  return plan;
}

/**
 * Of rules of one kind between the same points (two depths between the same two arbors) the first counts: the others
 * can only repeat or contradict it.
 */
function leaveOutDoubles(network: Network, reduction: Reduction, incidence: Incidence, left: Int32Array): void {
  const { kinds, pointCount, ruleCount } = network;
  const { points } = reduction;
  const { ruleStart, rules } = incidence;
  // Distances, one root's neighbours after another's: `seen[other]` is the last root that has one to that point.
  const seen = new Int32Array(pointCount).fill(-1);
  for (let u = 0; u < pointCount; u++) {
    for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
      const r = rules[k]!;
      if (kinds[r] !== RuleKind.distance || left[r]! < 1) continue;
      const other = points[4 * r]! + points[4 * r + 1]! - u;
      // Of a derived place u is only a root: such doubles are found by their loci.
      if (other < 0 || other >= pointCount || (points[4 * r] !== u && points[4 * r + 1] !== u)) continue;
      if (seen[other] === u) left[r] = 0;
      else seen[other] = u;
    }
  }
  let known: Set<string> | undefined;
  for (let r = 0; r < ruleCount; r++) {
    const isNamedByPoints = kinds[r] !== RuleKind.onLine && !isLinearPair(kinds[r]!);
    if (kinds[r] === RuleKind.distance || !isNamedByPoints || left[r]! < 1) continue;
    known ??= new Set();
    const name = nameOf(kinds[r]!, points[4 * r]!, points[4 * r + 1]!, points[4 * r + 2]!);
    if (known.has(name)) left[r] = 0;
    else known.add(name);
  }
}

/** The same for two rules that can only say the same or contradict: kind and points, in an order of no meaning. */
function nameOf(kind: number, p: number, a: number, c: number): string {
  if (kind === RuleKind.inLine && a > c) return `${kind} ${p} ${c} ${a}`;
  if (kind === RuleKind.sameRadius && p > a) return `${kind} ${a} ${p} ${c}`;
  return `${kind} ${p} ${a} ${c}`;
}

/** Places level by level; returns how many roots were placed. `left` counts the unplaced roots of each rule. */
function buildByPoint(
  plan: Plan,
  network: Network,
  reduction: Reduction,
  left: Int32Array,
  placed: Uint8Array,
): number {
  const { kinds } = network;
  const { rootStart, roots, ruleStart, rules } = plan.incidence;
  const loci = new Uint8Array(network.pointCount);
  const queue = new Int32Array(network.pointCount);
  let end = 0;
  for (let r = 0; r < network.ruleCount; r++) {
    if (left[r] !== 1) continue;
    const u = roots[rootStart[r]!]!;
    if (loci[u]! < 2 && ++loci[u]! === 2) queue[end++] = u;
  }
  let start = 0;
  while (start < end) {
    const level = end;
    for (let q = start; q < level; q++) {
      const u = queue[q]!;
      let found = 0;
      let first = -1;
      let second = -1;
      for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
        if (left[rules[k]!] !== 1) continue;
        if (found === 0) first = rules[k]!;
        else if (found === 1) second = rules[k]!;
        found++;
      }
      const arcs = found === 2 && kinds[first] === RuleKind.distance && kinds[second] === RuleKind.distance;
      if (arcs || (found === 2 && isLocus(network, reduction, first, u) && isLocus(network, reduction, second, u))) {
        const step = plan.stepCount++;
        plan.root[step] = u;
        plan.ruleA[step] = first;
        plan.ruleB[step] = second;
        continue;
      }
      const ready = new Int32Array(found);
      found = 0;
      for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) if (left[rules[k]!] === 1) ready[found++] = rules[k]!;
      addRootStep(plan, network, reduction, u, ready);
    }
    for (; start < level; start++) {
      const u = queue[start]!;
      placed[u] = 1;
      for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
        const r = rules[k]!;
        if (--left[r]! !== 1) continue;
        for (let j = rootStart[r]!; j < rootStart[r + 1]!; j++) {
          const w = roots[j]!;
          if (!placed[w] && loci[w]! < 2 && ++loci[w]! === 2) queue[end++] = w;
        }
      }
    }
  }
  return end;
}
