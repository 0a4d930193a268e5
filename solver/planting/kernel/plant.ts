/**
 * Planting a network: reduce, plan, place step by step, prove.
 *
 * Read `reduce.ts` (exact merging), `plan.ts` and `coupled.ts` (order), `crossing.ts` (closed forms), `iterate.ts`
 * (coupled groups), then `verdict.ts` (what holds, what is free, what disagrees). The result depends on the network
 * alone. Array kernel: indices come from a checked network, hence the `!`.
 */
import { Meet } from '../../geometry/index.ts';
import { type Network, type NetworkResult, RuleKind } from '../network.ts';
import { Approach } from './approach.ts';
import { isTold, keepingBranch, stuckSurplus, type Turned, unkept } from './branches.ts';
import { checkNetwork } from './check.ts';
import { CrossingTool } from './crossing.ts';
import { Iteration } from './iterate.ts';
import type { Placing } from './placing.ts';
import { planNetwork } from './plan.ts';
import { isLocus, type Plan } from './planSteps.ts';
import { RankProbe } from './rankProbe.ts';
import { placeDerived, reduceNetwork } from './reduce.ts';
import { FIRST_EXACT_KIND } from './residual.ts';
import { type Ground, System } from './system.ts';
import { judge } from './verdict.ts';

// Bound once: read through a room's face each use is a call where modules are not bundled.
const MEET = Meet;

/** Placings of results that are still in use, so that a plan can serve again. */
const placings = new WeakMap<NetworkResult, Placing>();

/**
 * Plants a network.
 *
 * @param network points, rules and sketch places; its coordinates alone choose between crossings
 * @param warm an earlier result: where its network had the same rules between the same points its plan is used again;
 *   places never depend on it, so warm and cold give the same
 * @returns places of all points with the proof of each rule, freedom and disagreements; every number is finite
 * @throws NetworkError when an index or a number of the network is not one
 */
export function plantNetwork(network: Network, warm?: NetworkResult): NetworkResult {
  return judged(placingOf(network, planOf(network, warm)));
}

/**
 * The same where the branch that the sketch means shows no fault; undefined where rules that only check, or more rules
 * than a group needs, do not hold on it. Looking for another branch is what takes long, and it may move anything.
 */
export function plantOwnBranch(network: Network, warm?: NetworkResult): NetworkResult | undefined {
  const { placing } = ownPlacing(network, planOf(network, warm));
  return isTold(placing) ? undefined : judged(placing);
}

function judged(placing: Placing): NetworkResult {
  const result = judge(placing);
  placings.set(result, placing);
  return result;
}

/** The plan of an earlier result, where it serves this network too. */
function planOf(network: Network, warm: NetworkResult | undefined): Plan | undefined {
  const earlier = warm && placings.get(warm);
  return earlier && hasSamePlan(earlier.ground.network, network) ? earlier.plan : undefined;
}

/** Are kinds, points and held places those of the earlier network, with nothing merged or derived? */
function hasSamePlan(earlier: Network, network: Network): boolean {
  const { pointCount, ruleCount } = network;
  if (earlier.pointCount !== pointCount || earlier.ruleCount !== ruleCount) return false;
  for (let i = 0; i < pointCount; i++) if (earlier.held[i] !== network.held[i]) return false;
  for (let r = 0; r < ruleCount; r++) {
    if (earlier.kinds[r] !== network.kinds[r] || network.kinds[r]! >= FIRST_EXACT_KIND) return false;
  }
  for (let k = 0; k < 4 * ruleCount; k++) if (earlier.points[k] !== network.points[k]) return false;
  return true;
}

/**
 * Checks a network and places it, without the verdict.
 *
 * @param known the plan of a network with the same rules between the same points
 */
export function placingOf(network: Network, known?: Plan): Placing {
  const { placing, aside } = ownPlacing(network, known);
  return isTold(placing) ? (otherBranch(placing, aside) ?? placing) : placing;
}

/** The placing on the branch that the sketch means, and the rules that its plan does without. */
function ownPlacing(network: Network, known?: Plan): { placing: Placing; aside: Uint8Array | undefined } {
  checkNetwork(network);
  let aside: Uint8Array | undefined;
  for (let round = 0; ; round++) {
    const placing = placeNetwork(network, aside, round === 0 && !known?.withoutSome ? known : undefined);
    const repeated = round < MOST_REPLANNED ? repeatedLoci(placing) : [];
    if (repeated.length === 0) return { placing, aside };
    aside ??= new Uint8Array(network.ruleCount);
    for (const r of repeated) aside[r] = 1;
  }
}

/** A placing on another branch that keeps every rule, where the sketch's own does not; undefined where none is found. */
function otherBranch(placing: Placing, aside: Uint8Array | undefined): Placing | undefined {
  const { network } = placing.ground;
  const surplus = stuckSurplus(placing);
  let from = placing;
  if (surplus.length > 0) {
    const without = aside?.slice() ?? new Uint8Array(network.ruleCount);
    for (const r of surplus) without[r] = 1;
    from = placeNetwork(network, without, undefined);
    if (from.stuck.length === 0 && unkept(from).length === 0) return from;
  }
  return keepingBranch(from, (turned) => placeSteps(freshGround(from), from.plan, from.sketch, turned));
}

/** The ground of a placing with every point back at its sketch. */
function freshGround({ ground, plan }: Placing): Ground {
  const coords = Float64Array.from(ground.network.coords.subarray(0, 2 * ground.network.pointCount));
  const reduction = reduceNetwork(ground.network, coords);
  return { network: ground.network, reduction, incidence: plan.incidence, coords, work: ground.work };
}

/** Times that a network is planned again because two of its loci turned out to be one. */
const MOST_REPLANNED = 8;

/** Places a network by the plan that does without the rules set aside. */
function placeNetwork(network: Network, aside: Uint8Array | undefined, known: Plan | undefined): Placing {
  const sketch = network.coords;
  const coords = Float64Array.from(sketch.subarray(0, 2 * network.pointCount));
  const reduction = reduceNetwork(network, coords);
  const plan = known ?? planNetwork(network, reduction, aside);
  const work = { iterations: 0, evaluations: 0, blocks: plan.groups.length };
  return placeSteps({ network, reduction, incidence: plan.incidence, coords, work }, plan, sketch);
}

/** The second rule of every crossing whose two loci are one and the same: it says what the first says. */
function repeatedLoci({ plan, meet }: Placing): number[] {
  const repeated: number[] = [];
  for (let s = 0; s < plan.stepCount; s++) {
    if (meet[s] === MEET.same && plan.root[s]! >= 0) repeated.push(plan.ruleB[s]!);
  }
  return repeated;
}

/**
 * Places every step of the plan in order, and then all that follows from them.
 *
 * @param turned steps that take another branch than the sketch's
 */
export function placeSteps(ground: Ground, plan: Plan, sketch: Float64Array, turned?: Turned): Placing {
  const probe = new RankProbe(ground);
  const placing: Placing = {
    ground,
    plan,
    sketch,
    meet: new Uint8Array(plan.stepCount),
    slot: new Uint8Array(plan.stepCount),
    gap: new Float64Array(plan.stepCount),
    other: new Float64Array(2 * plan.stepCount),
    pairOf: new Map(),
    stuck: [],
    doubted: probe.doubted,
  };
  const tool = new CrossingTool();
  const system = new System();
  const iteration = new Iteration();
  const approach = new Approach();
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root < 0) {
      const group = plan.groups[-1 - root]!;
      system.load(ground, group.roots, group.rules);
      if (group.rules.length === 0) continue;
      const branch = turned?.get(s) ?? 0;
      if (approach.solve(system, iteration, group, sketch, branch) === 'stuck') placing.stuck.push(s);
      else if (group.kind !== 'under') probe.group(system, iteration.factored(system, group));
      continue;
    }
    const many = plan.more.get(s);
    if (many) placeMany(placing, tool, system, iteration, s, many);
    else {
      placing.meet[s] = tool.place(ground, sketch, root, plan.ruleA[s]!, plan.ruleB[s]!);
      if (turned?.has(s)) tool.takeOther(ground, root);
      placing.gap[s] = tool.gap;
      placing.slot[s] = tool.slot;
    }
    placing.other[2 * s] = tool.otherX;
    placing.other[2 * s + 1] = tool.otherY;
    probeCrossing(probe, placing, s);
  }
  for (const derived of ground.reduction.derived) placeDerived(derived, ground.coords);
  return placing;
}

/** Carries errors through a crossing that was made; one that was not is told as what it is. */
export function probeCrossing(probe: RankProbe, placing: Placing, s: number): void {
  const { ground, plan, meet } = placing;
  if (meet[s] === MEET.none || placing.stuck.includes(s)) return;
  const root = plan.root[s]!;
  const pair = plan.more.size > 0 ? placing.pairOf.get(s) : undefined;
  const ruleA = pair ? pair[0] : plan.ruleA[s]!;
  const ruleB = pair ? pair[1] : plan.ruleB[s]!;
  const { kinds } = ground.network;
  const { points, derivedAt } = ground.reduction;
  if (kinds[ruleA] === RuleKind.distance && kinds[ruleB] === RuleKind.distance && !derivedAt) {
    const a = points[4 * ruleA]! + points[4 * ruleA + 1]! - root;
    const b = points[4 * ruleB]! + points[4 * ruleB + 1]! - root;
    probe.crossingOfArcs(root, a, b);
  } else probe.crossing(root, ruleA, ruleB);
}

/** A root with more than two loci: where all agree, else the least-squares place of all. */
function placeMany(
  placing: Placing,
  tool: CrossingTool,
  system: System,
  iteration: Iteration,
  step: number,
  rules: Int32Array,
): void {
  const { ground, plan } = placing;
  const root = plan.root[step]!;
  const loci = Array.from(rules).filter((r) => isLocus(ground.network, ground.reduction, r, root));
  const pair = tool.placeByMany(ground, placing.sketch, root, loci, Array.from(rules));
  placing.meet[step] = MEET.two;
  if (pair) {
    placing.pairOf.set(step, pair);
    return;
  }
  system.load(ground, Int32Array.of(root), rules);
  if (iteration.solve(system, {}) === 'stuck') placing.stuck.push(step);
}
