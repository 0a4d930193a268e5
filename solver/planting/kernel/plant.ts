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
import { checkNetwork } from './check.ts';
import { CrossingTool } from './crossing.ts';
import { checkingRules } from './duties/duties.ts';
import { Iteration } from './iterate.ts';
import type { Placing } from './placing.ts';
import { planNetwork } from './plan.ts';
import { isLocus, type Plan } from './planSteps.ts';
import { RankProbe } from './rankProbe.ts';
import { placeDerived, reduceNetwork } from './reduce.ts';
import { FIRST_EXACT_KIND, isLinearPair } from './residual.ts';
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
  const { placing, result } = placedAndJudged(network, planOf(network, warm));
  placings.set(result, placing);
  return result;
}

/** A plan with the duties that it was made for. */
interface Planned {
  readonly plan: Plan;
  readonly checks: Uint8Array;
}

/** The plan of an earlier result, where it serves this network too. */
function planOf(network: Network, warm: NetworkResult | undefined): Planned | undefined {
  const earlier = warm && placings.get(warm);
  return earlier && hasSamePlan(earlier, network) ? earlier : undefined;
}

/** Are kinds, points, held places and duties those of the earlier network, with nothing merged or derived? */
function hasSamePlan({ ground: { network: earlier }, checks }: Placing, network: Network): boolean {
  const { pointCount, ruleCount } = network;
  if (earlier.pointCount !== pointCount || earlier.ruleCount !== ruleCount) return false;
  for (let i = 0; i < pointCount; i++) if (earlier.held[i] !== network.held[i]) return false;
  for (let r = 0; r < ruleCount; r++) {
    if (earlier.kinds[r] !== network.kinds[r] || network.kinds[r]! >= FIRST_EXACT_KIND) return false;
    if (network.checks && network.checks[r] !== checks[r]) return false;
    if (!hasSameDuty(earlier, network, r)) return false;
  }
  for (let k = 0; k < 4 * ruleCount; k++) if (earlier.points[k] !== network.points[k]) return false;
  // Duties that were given do not say what the kernel itself would say.
  return (earlier.checks === undefined) === (network.checks === undefined);
}

/** Is all the same that says of a rule whether it places: what it was told, its rank, and a direction that may be like another? */
function hasSameDuty(earlier: Network, network: Network, r: number): boolean {
  if ((earlier.told?.[r] ?? 0) !== (network.told?.[r] ?? 0)) return false;
  if ((earlier.rank?.[r] ?? 0) !== (network.rank?.[r] ?? 0)) return false;
  const kind = network.kinds[r];
  const isRay = kind === RuleKind.ray && network.points[4 * r + 2]! < 0;
  const isDirection = isRay || kind === RuleKind.onLine || isLinearPair(kind ?? -1);
  if (!isDirection) return true;
  return [0, 1].every((k) => earlier.values[3 * r + k] === network.values[3 * r + k]);
}

/**
 * Checks a network, places it and judges it.
 *
 * @param known the plan of a network with the same rules between the same points
 */
export function placedAndJudged(network: Network, known?: Planned): { placing: Placing; result: NetworkResult } {
  checkNetwork(network);
  const planned = known ?? planByDuties(network);
  const placing = placeByPlan(network, planned);
  const result = judge(placing);
  if (known || network.checks || !isInDoubt(placing, result)) return { placing, result };
  // Rules that are enough by number may still say one thing twice: only their rank tells.
  const checks = dutiesOf(network);
  if (checks.every((one, r) => one === planned.checks[r])) return { placing, result };
  const again = placeByPlan(network, planFor(network, checks));
  return { placing: again, result: judge(again) };
}

/** The drawing of a network for what is made of it: where it stands, the plan of what places, and what only checks. */
export function drawingOf(network: Network): { ground: Ground; plan: Plan; checks: Uint8Array } {
  const { ground, plan, checks } = placedAndJudged(network).placing;
  return { ground, plan, checks };
}

const sketchOf = ({ coords, pointCount }: Network): Float64Array =>
  Float64Array.from(coords.subarray(0, 2 * pointCount));

function dutiesOf(network: Network): Uint8Array {
  return checkingRules(network, reduceNetwork(network, sketchOf(network)));
}

function planFor(network: Network, checks: Uint8Array): Planned {
  return { plan: planNetwork(network, reduceNetwork(network, sketchOf(network)), checks), checks };
}

/** The plan of the rules that place. Where their number shows that none is too many, none is asked. */
function planByDuties(network: Network): Planned {
  if (network.checks) return planFor(network, network.checks);
  const plan = planNetwork(network, reduceNetwork(network, sketchOf(network)));
  if (!network.told && usesEveryRule(plan, network)) return { plan, checks: new Uint8Array(network.ruleCount) };
  return planFor(network, dutiesOf(network));
}

/** Does every step have just as many rules as it needs, and every rule its step? */
function usesEveryRule(plan: Plan, { kinds, ruleCount }: Network): boolean {
  if (plan.more.size > 0) return false;
  let left = 0;
  for (let r = 0; r < ruleCount; r++) if (kinds[r]! < FIRST_EXACT_KIND) left++;
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    const group = root < 0 ? plan.groups[-1 - root]! : undefined;
    if (group?.kind === 'over') return false;
    left -= group ? group.rules.length : 2;
  }
  return left === 0;
}

/** Do the rules settle less than their number says, or do some not hold? */
function isInDoubt({ plan, stuck, meet }: Placing, { freeMotions }: NetworkResult): boolean {
  if (stuck.length > 0) return true;
  let free = 0;
  for (const { kind, roots, rules } of plan.groups) if (kind === 'under') free += 2 * roots.length - rules.length;
  for (let s = 0; s < plan.stepCount; s++) if (plan.root[s]! >= 0 && meet[s] === MEET.same) return true;
  return freeMotions > free;
}

function placeByPlan(network: Network, { plan, checks }: Planned): Placing {
  const coords = sketchOf(network);
  const reduction = reduceNetwork(network, coords);
  const work = { iterations: 0, evaluations: 0, blocks: plan.groups.length };
  const ground = { network, reduction, incidence: plan.incidence, coords, work };
  return placeSteps(ground, plan, checks);
}

/** Places every step of the plan in order, and then all that follows from them. */
function placeSteps(ground: Ground, plan: Plan, checks: Uint8Array): Placing {
  const sketch = ground.network.coords;
  const probe = new RankProbe(ground);
  const placing: Placing = {
    ground,
    plan,
    checks,
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
      if (approach.solve(system, iteration, group, sketch, 0) === 'stuck') placing.stuck.push(s);
      else if (group.kind !== 'under') probe.group(system, iteration.factored(system, group));
      continue;
    }
    const many = plan.more.get(s);
    if (many) placeMany(placing, tool, system, iteration, s, many);
    else {
      placing.meet[s] = tool.place(ground, sketch, root, plan.ruleA[s]!, plan.ruleB[s]!);
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
