/**
 * Planning of what cannot be built point by point: which points must be solved together, and in which order.
 *
 * Each rule is matched with one of its unplaced roots, a root taking two rules (it has two coordinates). Rules left
 * over mark the over-determined part, roots with room to spare the under-determined one, and the rest splits into
 * strongly connected blocks, each solved when those it depends on are placed. This is the decomposition of
 * A. L. Dulmage and N. S. Mendelsohn, "Coverings of bipartite graphs" (1958), with R. E. Tarjan's strongly connected
 * components (1972). Structure alone misses tangency and hidden dependence; rank is judged later, at the place.
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import type { Network } from '../network.ts';
import { addGroupStep, addRootStep, type Group, type Plan } from './planSteps.ts';
import type { Reduction } from './reduce.ts';

/** Which part of the decomposition a root belongs to. */
const Part = { outside: 0, square: 1, over: 2, under: 3 } as const;

/** Which rule settles which root, −1 where none does. */
interface Matching {
  /** Unplaced roots and the rules that touch them. */
  readonly roots: Int32Array;
  readonly rules: Int32Array;
  /** Root of each rule, or -1. */
  readonly rootOf: Int32Array;
  /** The two rules of each root, -1 where free. */
  readonly taken: Int32Array;
}

/** Adds the steps of all unplaced roots to the plan. */
export function planCoupled(
  plan: Plan,
  network: Network,
  reduction: Reduction,
  left: Int32Array,
  placed: Uint8Array,
): void {
  const matching = matchRules(plan, network, reduction, left, placed);
  const part = partsOf(plan, matching, network.pointCount);
  for (const group of components(plan, matching, part, Part.over, 'over', placed)) addGroupStep(plan, group);
  for (const block of strongBlocks(plan, matching, part, network.pointCount)) {
    const rules = new Int32Array(2 * block.length);
    block.forEach((u, k) => {
      rules[2 * k] = matching.taken[2 * u]!;
      rules[2 * k + 1] = matching.taken[2 * u + 1]!;
    });
    if (block.length === 1) addRootStep(plan, network, reduction, block[0]!, rules.sort());
    else addGroupStep(plan, { kind: 'square', roots: Int32Array.from(block), rules: rules.sort(), surplus: [] });
  }
  for (const group of components(plan, matching, part, Part.under, 'under', placed)) addGroupStep(plan, group);
}

/** Matches as many rules as possible: first greedily, then along augmenting paths (breadth first). */
function matchRules(
  plan: Plan,
  network: Network,
  reduction: Reduction,
  left: Int32Array,
  placed: Uint8Array,
): Matching {
  const { pointCount, ruleCount } = network;
  const { rootStart, roots: rootsOfRules } = plan.incidence;
  const roots: number[] = [];
  for (let u = 0; u < pointCount; u++) if (reduction.unknown[u] && !placed[u]) roots.push(u);
  const rootOf = new Int32Array(ruleCount).fill(-1);
  const taken = new Int32Array(2 * pointCount).fill(-1);
  const rules: number[] = [];
  const waiting: number[] = [];
  for (let r = 0; r < ruleCount; r++) {
    if (left[r]! < 1) continue;
    rules.push(r);
    for (let k = rootStart[r]!; k < rootStart[r + 1]! && rootOf[r]! < 0; k++) {
      const u = rootsOfRules[k]!;
      if (placed[u]) continue;
      const slot = taken[2 * u]! < 0 ? 2 * u : taken[2 * u + 1]! < 0 ? 2 * u + 1 : -1;
      if (slot < 0) continue;
      taken[slot] = r;
      rootOf[r] = u;
    }
    if (rootOf[r]! < 0) waiting.push(r);
  }
  const matching = { roots: Int32Array.from(roots), rules: Int32Array.from(rules), rootOf, taken };
  const paths: Paths = {
    cameFrom: new Int32Array(pointCount),
    mark: new Int32Array(pointCount),
    stamp: 0,
    queue: new Int32Array(pointCount),
  };
  for (const r of waiting) augment(plan, matching, r, placed, paths);
  return matching;
}

/** Memory for one search of an alternating path. */
interface Paths {
  readonly cameFrom: Int32Array;
  readonly mark: Int32Array;
  stamp: number;
  readonly queue: Int32Array;
}

/** Looks for a root with room, moving rules along the way; leaves everything as it is when there is none. */
function augment(plan: Plan, matching: Matching, rule: number, placed: Uint8Array, paths: Paths): void {
  const { rootStart, roots } = plan.incidence;
  const { taken, rootOf } = matching;
  const { cameFrom, mark, queue } = paths;
  const stamp = ++paths.stamp;
  let end = 0;
  const reach = (r: number): void => {
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) {
      const u = roots[k]!;
      if (placed[u] || mark[u] === stamp) continue;
      mark[u] = stamp;
      cameFrom[u] = r;
      queue[end++] = u;
    }
  };
  reach(rule);
  for (let q = 0; q < end; q++) {
    let u = queue[q]!;
    if (taken[2 * u]! >= 0 && taken[2 * u + 1]! >= 0) {
      reach(taken[2 * u]!);
      reach(taken[2 * u + 1]!);
      continue;
    }
    // Walk back: the rule that led here takes the room, and its old root is the next to fill.
    for (;;) {
      const r = cameFrom[u]!;
      const old = rootOf[r]!;
      taken[taken[2 * u]! < 0 ? 2 * u : 2 * u + 1] = r;
      rootOf[r] = u;
      if (old < 0) return;
      taken[taken[2 * old]! === r ? 2 * old : 2 * old + 1] = -1;
      u = old;
    }
  }
}

/** Spreads from left-over rules (over) and from roots with room (under); what neither reaches is square. */
function partsOf(plan: Plan, matching: Matching, pointCount: number): Uint8Array {
  const { rootStart, roots, ruleStart, rules } = plan.incidence;
  const { taken, rootOf } = matching;
  const part = new Uint8Array(pointCount);
  for (const u of matching.roots) part[u] = Part.square;
  const queue: number[] = [];
  const reach = (u: number, to: number): void => {
    if (part[u] !== Part.square) return;
    part[u] = to;
    queue.push(u);
  };
  for (const r of matching.rules) {
    if (rootOf[r]! >= 0) continue;
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) reach(roots[k]!, Part.over);
  }
  while (queue.length > 0) {
    const u = queue.pop()!;
    for (const r of [taken[2 * u]!, taken[2 * u + 1]!]) {
      if (r < 0) continue;
      for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) reach(roots[k]!, Part.over);
    }
  }
  for (const u of matching.roots) if (taken[2 * u]! < 0 || taken[2 * u + 1]! < 0) reach(u, Part.under);
  while (queue.length > 0) {
    const u = queue.pop()!;
    for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
      const w = rootOf[rules[k]!]!;
      if (w >= 0) reach(w, Part.under);
    }
  }
  return part;
}

/** Connected groups of one part, with the rules that belong to it. */
function components(
  plan: Plan,
  matching: Matching,
  part: Uint8Array,
  wanted: number,
  kind: Group['kind'],
  placed: Uint8Array,
): Group[] {
  const { rootStart, roots, ruleStart, rules } = plan.incidence;
  const groups: Group[] = [];
  const seenRule = new Set<number>();
  const seen = new Set<number>();
  // What only checks, or repeats what another asks, takes no part in any group.
  const isAsked = new Uint8Array(matching.rootOf.length);
  for (const r of matching.rules) isAsked[r] = 1;
  // A rule belongs to the over-determined part when all its unplaced roots do, to the other when any does.
  const belongs = (r: number): boolean => {
    if (wanted === Part.under) return true;
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) {
      if (!placed[roots[k]!] && part[roots[k]!] !== wanted) return false;
    }
    return true;
  };
  for (const seed of matching.roots) {
    if (part[seed] !== wanted || seen.has(seed)) continue;
    seen.add(seed);
    const found = [seed];
    const foundRules: number[] = [];
    for (let q = 0; q < found.length; q++) {
      const u = found[q]!;
      for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
        const r = rules[k]!;
        if (!isAsked[r] || seenRule.has(r) || !belongs(r)) continue;
        seenRule.add(r);
        foundRules.push(r);
        for (let j = rootStart[r]!; j < rootStart[r + 1]!; j++) {
          const w = roots[j]!;
          if (part[w] !== wanted || seen.has(w)) continue;
          seen.add(w);
          found.push(w);
        }
      }
    }
    const surplus = foundRules.filter((r) => matching.rootOf[r]! < 0).sort((a, b) => a - b);
    groups.push({ kind, roots: Int32Array.from(found).sort(), rules: Int32Array.from(foundRules).sort(), surplus });
  }
  return groups;
}

/** Strongly connected blocks of the square part, those depended on first (Tarjan, without recursion). */
function strongBlocks(plan: Plan, matching: Matching, part: Uint8Array, pointCount: number): number[][] {
  const { rootStart, roots } = plan.incidence;
  const { taken } = matching;
  const blocks: number[][] = [];
  const index = new Int32Array(pointCount);
  const low = new Int32Array(pointCount);
  const open = new Uint8Array(pointCount);
  const stack: number[] = [];
  const path: number[] = [];
  // Next edge of each root on the path: which of its two rules, and where in the rule.
  const edge = new Int32Array(pointCount);
  let counter = 0;
  const enter = (u: number): void => {
    index[u] = low[u] = ++counter;
    open[u] = 1;
    stack.push(u);
    path.push(u);
    edge[u] = 0;
  };
  for (const seed of matching.roots) {
    if (part[seed] !== Part.square || index[seed]) continue;
    enter(seed);
    while (path.length > 0) {
      const u = path[path.length - 1]!;
      const [r1, r2] = [taken[2 * u]!, taken[2 * u + 1]!];
      const n1 = rootStart[r1 + 1]! - rootStart[r1]!;
      const k = edge[u]!++;
      const at = k < n1 ? rootStart[r1]! + k : rootStart[r2]! + k - n1;
      if (k >= n1 && at >= rootStart[r2 + 1]!) {
        path.pop();
        const parent = path[path.length - 1];
        if (parent !== undefined) low[parent] = Math.min(low[parent]!, low[u]!);
        if (low[u] === index[u]) blocks.push(popBlock(stack, open, u));
        continue;
      }
      const w = roots[at]!;
      if (part[w] !== Part.square) continue;
      if (!index[w]) enter(w);
      else if (open[w]) low[u] = Math.min(low[u]!, index[w]!);
    }
  }
  return blocks;
}

function popBlock(stack: number[], open: Uint8Array, last: number): number[] {
  const block: number[] = [];
  for (;;) {
    const w = stack.pop()!;
    open[w] = 0;
    block.push(w);
    if (w === last) return block.sort((a, b) => a - b);
  }
}
