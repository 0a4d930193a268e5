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
import { Approach } from './approach.ts';
import { shortArm } from './degenerate.ts';
import { incidenceOf } from './incidence.ts';
import { Iteration } from './iterate.ts';
import { type Reduction, reduceNetwork } from './reduce.ts';
import { FIRST_EXACT_KIND } from './residual.ts';
import { System } from './system.ts';

/** Rules above which a set is not thinned out: each trial solves the whole set. */
const MOST_THINNED = 80;
/**
 * Rules up to which any of them may drop out. That a larger set does not hold from a few starts proves little of it: there
 * only ties that are not needed drop out.
 */
const MOST_SURE = 12;
/** Starts scattered about the places, and how far, against the size of the set. */
const SCATTERED = 12;
const SCATTER = 0.4;

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
  if (starts.some((start) => holdsFrom(network, start, rules))) return undefined;
  if (rules.length > MOST_THINNED) return rules;
  let kept = [...rules];
  const isSure = rules.length <= MOST_SURE;
  // What stands farthest from the miss is asked first.
  for (const rule of [...rules].reverse()) {
    if (!isSure && network.kinds[rule]! < FIRST_EXACT_KIND) continue;
    const rest = kept.filter((each) => each !== rule);
    if (rest.length > 0 && !holdsAlone(network, starts, rest)) kept = rest;
  }
  return kept;
}

/** Can these rules hold together, with nothing else asked? Misses up to what counts as touching are let pass. */
export function holdsAlone(network: Network, starts: readonly Float64Array[], rules: readonly number[]): boolean {
  if (starts.some((start) => holdsFrom(network, start, rules))) return true;
  const [start] = starts;
  if (!start || rules.length > MOST_SURE) return false;
  let seed = rules.length + 1;
  const reach = SCATTER * spanOf(network, start, rules);
  for (let n = 0; n < SCATTERED; n++) {
    const scattered = Float64Array.from(start, (v) => {
      seed = (seed * 48271) % 2147483647;
      return v + reach * (2 * (seed / 2147483647) - 1);
    });
    if (holdsFrom(network, scattered, rules, false)) return true;
  }
  return false;
}

/** How far the points of some rules stand apart, mm. */
function spanOf(network: Network, coords: Float64Array, rules: readonly number[]): number {
  let [left, right, low, high] = [1, -1, 1, -1].map((sign) => sign * Number.POSITIVE_INFINITY) as [
    number,
    number,
    number,
    number,
  ];
  for (const rule of rules) {
    for (let k = 4 * rule; k < 4 * rule + 4; k++) {
      const point = network.points[k]!;
      if (point < 0) continue;
      left = Math.min(left, coords[2 * point]!);
      right = Math.max(right, coords[2 * point]!);
      low = Math.min(low, coords[2 * point + 1]!);
      high = Math.max(high, coords[2 * point + 1]!);
    }
  }
  return Math.max(right - left, high - low, 1);
}

function holdsFrom(network: Network, start: Float64Array, rules: readonly number[], isThorough = true): boolean {
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
  const isMoved = roots.length > 0 && asked.length > 0;
  if (!isMoved) system.evaluate(false);
  else if (isThorough) new Approach().solve(system, new Iteration(), {}, Float64Array.from(coords));
  else new Iteration().solve(system, {});
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
