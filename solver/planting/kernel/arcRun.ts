/**
 * Re-placing a plan that is nothing but arcs crossing arcs: one pass through flat arrays, proof included.
 *
 * Every step has its two centres, radii and hand ready, and its two rules are proved as soon as it is placed. When an
 * arc no longer reaches or a rule no longer holds the run gives up and the general way takes over.
 * Array kernel: indices come from the plan, hence the `!`.
 */

import { crossCirclesInto, Meet } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import { type NetworkResult, type PlacementStep, RuleKind } from '../network.ts';
import { PressureTrace } from './conflicts.ts';
import { rulesAgainst } from './disagreeing.ts';
import type { Placing } from './placing.ts';
import { RankProbe } from './rankProbe.ts';
import { stepsOf } from './steps.ts';

// Bound once: read through a room's face each use is a call where modules are not bundled.
const crossArcs = crossCirclesInto;

/** A plan of arcs alone, ready to be run for new sketch places. */
export class ArcRun {
  private readonly placing: Placing;
  private readonly planted: NetworkResult;
  /** Root and two centres a step, as positions of their x in `coords`. */
  private readonly roots: Int32Array;
  /** Two radii a step. */
  private readonly radii: Float64Array;
  private readonly out = new Float64Array(4);

  /** The run of a placing; undefined unless every rule is a distance, every step a crossing, and all that places holds. */
  static of(placing: Placing, planted: NetworkResult): ArcRun | undefined {
    const { plan, ground, meet } = placing;
    const { network, reduction } = ground;
    if (reduction.points !== network.points || plan.groups.length > 0 || plan.more.size > 0) return undefined;
    for (let r = 0; r < network.ruleCount; r++) if (network.kinds[r] !== RuleKind.distance) return undefined;
    for (let s = 0; s < plan.stepCount; s++) if (meet[s] !== Meet.two) return undefined;
    if (placing.doubted.length > 0) return undefined;
    const holds = planted.missBy.every((miss, r) => miss <= HOLDS || placing.checks[r] === 1);
    return holds ? new ArcRun(placing, planted) : undefined;
  }

  private constructor(placing: Placing, planted: NetworkResult) {
    this.placing = placing;
    this.planted = planted;
    const { plan, ground } = placing;
    const { points, values } = ground.network;
    const count = plan.stepCount;
    this.roots = new Int32Array(3 * count);
    this.radii = new Float64Array(2 * count);
    for (let s = 0; s < count; s++) {
      const u = plan.root[s]!;
      const rules = [plan.ruleA[s]!, plan.ruleB[s]!];
      const centres = rules.map((r) => (points[4 * r] === u ? points[4 * r + 1]! : points[4 * r]!));
      // The hand is kept by the order of the centres: the crossing left of the first towards the second.
      const order = placing.slot[s] === 0 ? [0, 1] : [1, 0];
      this.roots.set([2 * u, 2 * centres[order[0]!]!, 2 * centres[order[1]!]!], 3 * s);
      this.radii.set([values[3 * rules[order[0]!]!]!, values[3 * rules[order[1]!]!]!], 2 * s);
    }
  }

  /** Moves a held point and places all that follows, in `coords` itself; undefined when not every rule that places holds. */
  place(coords: Float64Array, point: number, x: number, y: number): NetworkResult | undefined {
    const { roots, radii, out } = this;
    coords[2 * point] = x;
    coords[2 * point + 1] = y;
    let worst = 0;
    const count = radii.length / 2;
    const probe = new RankProbe({ ...this.placing.ground, coords });
    for (let s = 0; s < count; s++) {
      const u = roots[3 * s]!;
      const a = roots[3 * s + 1]!;
      const b = roots[3 * s + 2]!;
      const ra = radii[2 * s]!;
      const rb = radii[2 * s + 1]!;
      const ax = coords[a]!;
      const ay = coords[a + 1]!;
      const bx = coords[b]!;
      const by = coords[b + 1]!;
      if (!(crossArcs(out, ax, ay, ra, bx, by, rb) > HOLDS)) return undefined;
      const ux = out[0]!;
      const uy = out[1]!;
      coords[u] = ux;
      coords[u + 1] = uy;
      const missA = Math.abs(Math.sqrt((ux - ax) * (ux - ax) + (uy - ay) * (uy - ay)) - ra);
      const missB = Math.abs(Math.sqrt((ux - bx) * (ux - bx) + (uy - by) * (uy - by)) - rb);
      if (missA > worst) worst = missA;
      if (missB > worst) worst = missB;
      probe.crossingOfArcs(u >> 1, a >> 1, b >> 1);
    }
    if (probe.doubted.length > 0) return undefined;
    return worst <= HOLDS ? this.result(coords) : undefined;
  }

  /** All that places holds, so the verdict is the one of the start; single residuals and steps are computed when read. */
  private result(now: Float64Array): NetworkResult {
    const { placing, planted } = this;
    const coords = Float64Array.from(now);
    let misses: Float64Array | undefined;
    let steps: PlacementStep[] | undefined;
    return {
      coords,
      states: planted.states,
      checks: placing.checks,
      against: (check) => rulesAgainst({ ...placing, ground: { ...placing.ground, coords } }, check),
      shares: (check) => new PressureTrace({ ...placing.ground, coords }, placing.plan).sharesOf(check),
      freeMotions: 0,
      motions: [],
      get spare() {
        return Array.from(placing.checks.keys()).filter((r) => placing.checks[r] && this.missBy[r]! <= HOLDS);
      },
      doubts: planted.doubts,
      disagreements: [],
      work: { iterations: 0, evaluations: 0, blocks: 0 },
      get missBy() {
        misses ??= distancesOff(placing, coords);
        return misses;
      },
      get steps() {
        steps ??= stepsOf({ ...placing, ground: { ...placing.ground, coords }, other: othersOf(placing, coords) });
        return steps;
      },
    };
  }
}

function distancesOff(placing: Placing, coords: Float64Array): Float64Array {
  const { points, values, ruleCount } = placing.ground.network;
  const misses = new Float64Array(ruleCount);
  for (let r = 0; r < ruleCount; r++) {
    const [p, q] = [points[4 * r]!, points[4 * r + 1]!];
    const d = Math.hypot(coords[2 * p]! - coords[2 * q]!, coords[2 * p + 1]! - coords[2 * q + 1]!);
    misses[r] = Math.abs(d - values[3 * r]!);
  }
  return misses;
}

/** The crossings not taken: each placed root mirrored in its line of centres. */
function othersOf(placing: Placing, coords: Float64Array): Float64Array {
  const { plan, ground } = placing;
  const { points } = ground.network;
  const other = new Float64Array(2 * plan.stepCount);
  for (let s = 0; s < plan.stepCount; s++) {
    const u = plan.root[s]!;
    const centreOf = (r: number): number => (points[4 * r] === u ? points[4 * r + 1]! : points[4 * r]!);
    const [a, b] = [centreOf(plan.ruleA[s]!), centreOf(plan.ruleB[s]!)];
    const [dx, dy] = [coords[2 * b]! - coords[2 * a]!, coords[2 * b + 1]! - coords[2 * a + 1]!];
    const [ex, ey] = [coords[2 * u]! - coords[2 * a]!, coords[2 * u + 1]! - coords[2 * a + 1]!];
    const off = (2 * (dx * ey - dy * ex)) / (dx * dx + dy * dy);
    other[2 * s] = coords[2 * u]! + off * dy;
    other[2 * s + 1] = coords[2 * u + 1]! - off * dx;
  }
  return other;
}
