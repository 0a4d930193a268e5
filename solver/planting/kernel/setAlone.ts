/**
 * A set of rules by itself: can it hold, and which of it is needed for that it cannot?
 *
 * Whatever a first-order argument says of a set, it is solved alone, every point free that is not held, from where the
 * points stand and from the sketch: only a set that stays apart from both is told as one that cannot hold. A rule without
 * which it still cannot hold is no member. Ties are members like any other rule. Array kernel: indices come from a checked
 * network, hence the `!`.
 */
import { TOUCHING } from '../../tolerances.ts';
import type { Network } from '../network.ts';
import { shortArm } from './degenerate.ts';
import { incidenceOf } from './incidence.ts';
import { Iteration } from './iterate.ts';
import { type Reduction, reduceNetwork } from './reduce.ts';
import { FIRST_EXACT_KIND } from './residual.ts';
import { System } from './system.ts';

/** Rules above which a set is not thinned out: each trial solves the whole set. */
const MOST_THINNED = 80;

/**
 * The set without what it does not need: it cannot hold, and without any one of its rules it can.
 *
 * @param starts places of all points to start from
 * @returns the rules in their order; undefined where the set holds by itself, so that something else is wrong
 */
export function minimalSet(
  network: Network,
  starts: readonly Float64Array[],
  rules: readonly number[],
): readonly number[] | undefined {
  if (holdsAlone(network, starts, rules)) return undefined;
  if (rules.length > MOST_THINNED) return rules;
  let kept = [...rules];
  // What stands farthest from the miss is asked first.
  for (const rule of [...rules].reverse()) {
    const rest = kept.filter((each) => each !== rule);
    if (rest.length > 0 && !holdsAlone(network, starts, rest)) kept = rest;
  }
  return kept;
}

/** Can these rules hold together, with nothing else asked? Misses up to what counts as touching are let pass. */
export function holdsAlone(network: Network, starts: readonly Float64Array[], rules: readonly number[]): boolean {
  return starts.some((start) => holdsFrom(network, start, rules));
}

function holdsFrom(network: Network, start: Float64Array, rules: readonly number[]): boolean {
  const alone = partOf(network, start, rules);
  const coords = Float64Array.from(alone.coords);
  const reduction = reduceNetwork(alone, coords);
  if (reduction.disagreements.length > 0) return false;
  const roots: number[] = [];
  for (let u = 0; u < alone.pointCount; u++) if (reduction.unknown[u]) roots.push(u);
  const asked = Int32Array.from(Array.from(rules.keys()).filter((r) => alone.kinds[r]! < FIRST_EXACT_KIND));
  const system = new System();
  const work = { iterations: 0, evaluations: 0, blocks: 0 };
  system.load(
    { network: alone, reduction, incidence: incidenceOf(alone, reduction), coords, work },
    Int32Array.from(roots),
    asked,
  );
  if (roots.length > 0 && asked.length > 0) new Iteration().solve(system, {});
  else system.evaluate(false);
  if (system.largest > TOUCHING) return false;
  return rules.every((_, r) => shortArm(alone.kinds[r]!, reduction.points, 4 * r, alone.values, 3 * r, coords) === 0);
}

/** The network of these rules and the points that they name, nothing recorded. */
function partOf(network: Network, start: Float64Array, rules: readonly number[]): Network {
  const indexOf = new Map<number, number>();
  const points = new Int32Array(4 * rules.length).fill(-1);
  const values = new Float64Array(3 * rules.length);
  rules.forEach((rule, r) => {
    for (let k = 0; k < 4; k++) {
      const point = network.points[4 * rule + k]!;
      if (point < 0) continue;
      if (!indexOf.has(point)) indexOf.set(point, indexOf.size);
      points[4 * r + k] = indexOf.get(point)!;
    }
    for (let k = 0; k < 3; k++) values[3 * r + k] = network.values[3 * rule + k]!;
  });
  const pointCount = indexOf.size;
  const coords = new Float64Array(2 * pointCount);
  const held = new Uint8Array(pointCount);
  for (const [point, i] of indexOf) {
    held[i] = network.held[point]!;
    const from = held[i] ? network.coords : start;
    coords[2 * i] = from[2 * point]!;
    coords[2 * i + 1] = from[2 * point + 1]!;
  }
  return {
    pointCount,
    ruleCount: rules.length,
    coords,
    held,
    kinds: Uint8Array.from(rules, (rule) => network.kinds[rule]!),
    points,
    values,
    sides: new Uint8Array(pointCount),
    sideFrom: new Int32Array(pointCount).fill(-1),
    sideTo: new Int32Array(pointCount).fill(-1),
  };
}

/** Ties that the places named by some rules depend on: what merges them, and what they are derived by. */
export function tiesBehind(network: Network, reduction: Reduction, rules: readonly number[]): readonly number[] {
  if (reduction.points === network.points) return [];
  const ties = new Set<number>();
  const named = new Set<number>();
  const waiting = [...rules];
  while (waiting.length > 0) {
    const rule = waiting.pop()!;
    for (let k = 4 * rule; k < 4 * rule + 4; k++) if (network.points[k]! >= 0) named.add(network.points[k]!);
    for (const tie of [...merging(network, reduction, named), ...deriving(reduction, named)]) {
      if (ties.has(tie) || rules.includes(tie)) continue;
      ties.add(tie);
      waiting.push(tie);
    }
  }
  return [...ties].sort((a, b) => a - b);
}

/** Same-place ties among points of a place of which more than one is named, or one that is held under another name. */
function merging(network: Network, reduction: Reduction, named: ReadonlySet<number>): number[] {
  const roots = new Set([...named].map((i) => reduction.root[i]!));
  const found: number[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    if (network.kinds[r] !== FIRST_EXACT_KIND || network.told?.[r]) continue;
    if (roots.has(reduction.root[network.points[4 * r]!]!)) found.push(r);
  }
  return found;
}

function deriving(reduction: Reduction, named: ReadonlySet<number>): number[] {
  const roots = new Set([...named].map((i) => reduction.root[i]!));
  return reduction.derived.flatMap(({ point, sources }) => (roots.has(point) ? [...sources] : []));
}
