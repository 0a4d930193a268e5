/**
 * A planner: one network planted once, then dragged about with its plan kept.
 *
 * During a drag every crossing keeps its hand (the slot taken at the start), and groups go on from where they stood in
 * steps that are halved until no point goes farther than its first-order move allows: so nothing leaps to another branch.
 * A held point goes where the pointer is, and a group that cannot follow stays where it last could and is contested; a
 * loose point goes as near as the rules let it (`follow.ts`); a planted one stays. Where the whole plan is arcs crossing arcs the drag runs through flat arrays (`arcRun.ts`).
 * Array kernel: indices come from the plan, hence the `!`.
 */

import { HOLDS } from '../../tolerances.ts';
import type { Network, NetworkResult } from '../network.ts';
import { ArcRun } from './arcRun.ts';
import { CrossingTool } from './crossing.ts';
import { Follower, type Watch } from './follow.ts';
import { Iteration, type Outcome, type PatternMemo, typicalLength } from './iterate.ts';
import { type LoosePart, loosePart } from './loosePart.ts';
import type { Placing } from './placing.ts';
import { placedAndJudged, probeCrossing } from './plant.ts';
import { RankProbe } from './rankProbe.ts';
import { placeDerived, type Reduction, reduceNetwork } from './reduce.ts';
import { spreadToMembers } from './settling.ts';
import { type Ground, System } from './system.ts';
import { judge } from './verdict.ts';

/** Plants a network, and drags one of its points about. */
export interface Planner {
  /** The planting at the start, as `plantNetwork` gives it. */
  plant(): NetworkResult;
  /**
   * Brings a point as near to (x, y), mm, as its rules let it, starting from the last drag, and gives the planting there.
   *
   * @throws RangeError when the point is not one of the network or a coordinate is not finite
   */
  drag(point: number, x: number, y: number): NetworkResult;
}

/** Longest step of a held point while groups follow it, and longest move of these, against their lengths. */
const LONGEST_STEP = 0.1;
/** Shortest step that is tried before a group is told that it cannot follow, against the lengths. */
const SHORTEST_STEP = 1e-5;
/** What a point of a group may go beyond twice its first-order move, mm, and against the lengths where these are small. */
const BEYOND = 0.01;
const BEYOND_LENGTH = 5e-4;

/** A copy of the places with merged and derived points at theirs. */
function wholeOf(reduction: Reduction, coords: Float64Array): Float64Array {
  const whole = Float64Array.from(coords);
  for (const derived of reduction.derived) placeDerived(derived, whole);
  spreadToMembers(reduction.root, whole);
  return whole;
}

/**
 * Plants a network and keeps its plan for drags.
 *
 * @param watch is shown the places after every step into which the drag of a loose point is divided
 */
export function createPlanner(network: Network, watch?: Watch): Planner {
  return new KeptPlan(network, watch);
}

/** Keeps plan and branches from one drag step to the next. */
class KeptPlan implements Planner {
  private readonly start: Placing;
  private readonly planted: NetworkResult;
  private readonly network: Network;
  /** Places of held points as they are dragged, and of all others as they stand. */
  private sketch: Float64Array;
  private coords: Float64Array;
  private readonly arcs: ArcRun | undefined;
  private readonly tool = new CrossingTool();
  private readonly system = new System();
  private readonly iteration = new Iteration();
  private readonly follower = new Follower();
  private readonly watch: Watch | undefined;
  private readonly parts = new Map<number, LoosePart>();

  constructor(network: Network, watch: Watch | undefined) {
    this.network = network;
    this.watch = watch;
    const { placing, result } = placedAndJudged(network);
    this.start = placing;
    this.planted = result;
    this.sketch = Float64Array.from(this.planted.coords);
    for (let i = 0; i < network.pointCount; i++) {
      if (network.held[i]) this.sketch.set(network.coords.subarray(2 * i, 2 * i + 2), 2 * i);
    }
    this.coords = Float64Array.from(this.planted.coords);
    this.arcs = ArcRun.of(this.start, this.planted);
  }

  plant(): NetworkResult {
    return this.planted;
  }

  drag(point: number, x: number, y: number): NetworkResult {
    if (!(point >= 0 && point < this.network.pointCount)) {
      throw new RangeError(`point ${point}: expected an index from 0 to ${this.network.pointCount - 1}`);
    }
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      throw new RangeError(`place (${x}, ${y}): expected finite numbers of mm`);
    }
    const { reduction } = this.start.ground;
    if (reduction.given[point]) return this.dragHeld(point, x, y);
    return this.dragFree(reduction.root[point]!, x, y);
  }

  /** The held member of a merged place carries all of it. */
  private dragHeld(point: number, x: number, y: number): NetworkResult {
    const root = this.start.ground.reduction.root[point]!;
    if (this.arcs) {
      this.sketch[2 * point] = x;
      this.sketch[2 * point + 1] = y;
      const done = this.arcs.place(this.coords, point, x, y);
      if (done) return done;
    }
    return this.keep(this.walk(root, x, y));
  }

  /** Brings a held root to its new place in steps that every group follows; one that cannot stays where it last could. */
  private walk(root: number, x: number, y: number): Placing {
    const from = this.coords.slice(2 * root, 2 * root + 2);
    const away = Math.hypot(x - from[0]!, y - from[1]!);
    const shortest = this.shortestLength();
    let step = Math.min(1, (LONGEST_STEP * shortest) / away);
    for (let done = 0; done < 1; ) {
      const next = Math.min(1, done + step);
      this.hold(root, from[0]! + next * (x - from[0]!), from[1]! + next * (y - from[1]!));
      const { placing, lost } = this.replace([]);
      if (lost.length === 0) {
        done = next;
        this.coords = placing.ground.coords;
        if (done === 1) return placing;
      } else if (step * away > SHORTEST_STEP * shortest) step /= 2;
      else {
        this.hold(root, x, y);
        return this.replace(lost).placing;
      }
    }
    this.hold(root, x, y);
    return this.replace([]).placing;
  }

  private hold(root: number, x: number, y: number): void {
    for (let i = 0; i < this.network.pointCount; i++) {
      if (!this.network.held[i] || this.start.ground.reduction.root[i] !== root) continue;
      this.sketch[2 * i] = x;
      this.sketch[2 * i + 1] = y;
    }
  }

  /** Typical length of the smallest group, mm; infinite where there is none. */
  private shortestLength(): number {
    let shortest = Number.POSITIVE_INFINITY;
    for (const group of this.start.plan.groups) {
      if (group.rules.length === 0) continue;
      this.system.load(this.start.ground, group.roots, group.rules);
      shortest = Math.min(shortest, typicalLength(this.system));
    }
    return shortest;
  }

  /** A loose point, or one derived from loose ones, follows the pointer with all that hangs together with it; a planted one stays. */
  private dragFree(root: number, x: number, y: number): NetworkResult {
    const { reduction } = this.start.ground;
    const part = this.looseWith(root);
    if (part.roots.length > 0) {
      const at = reduction.derivedAt ? reduction.derivedAt[root]! : -1;
      const ground = this.groundNow();
      const derived = at >= 0 ? ground.reduction.derived[at]! : undefined;
      this.system.load(ground, part.roots, part.rules);
      const watch = this.watch && ((coords: Float64Array) => this.watch?.(wholeOf(ground.reduction, coords)));
      const { system, iteration } = this;
      this.follower.follow({ ...part, system, iteration, point: root, derived }, x, y, watch);
      this.coords = ground.coords;
    }
    return this.keep(this.replace([]).placing);
  }

  private looseWith(root: number): LoosePart {
    const known = this.parts.get(root);
    if (known) return known;
    const part = loosePart(this.start, this.planted, root);
    this.parts.set(root, part);
    return part;
  }

  private groundNow(): Ground {
    const { plan } = this.start;
    const coords = Float64Array.from(this.coords);
    for (let i = 0; i < this.network.pointCount; i++) {
      if (this.network.held[i]) coords.set(this.sketch.subarray(2 * i, 2 * i + 2), 2 * i);
    }
    const moved = { ...this.network, coords: this.sketch };
    const exact = this.start.ground.reduction.points !== this.network.points;
    const reduction = exact ? reduceNetwork(moved, coords) : this.start.ground.reduction;
    const work = { iterations: 0, evaluations: 0, blocks: plan.groups.length };
    return { network: moved, reduction, incidence: plan.incidence, coords, work };
  }

  /**
   * Runs through the steps with every branch kept, groups going on from where they stand. Groups of the steps in `still`
   * stay there whether their rules hold or not; `lost` are steps whose groups did not follow.
   */
  private replace(still: readonly number[]): { placing: Placing; lost: number[] } {
    const lost: number[] = [];
    const { start, tool, system, iteration } = this;
    const { plan } = start;
    const ground = this.groundNow();
    const probe = new RankProbe(ground);
    const placing: Placing = {
      ...start,
      ground,
      sketch: this.sketch,
      meet: start.meet.slice(),
      gap: start.gap.slice(),
      other: start.other.slice(),
      stuck: [],
      doubted: probe.doubted,
    };
    for (let s = 0; s < plan.stepCount; s++) {
      const root = plan.root[s]!;
      const many = root < 0 ? undefined : plan.more.get(s);
      if (root < 0 || many) {
        const group = root < 0 ? plan.groups[-1 - root]! : { kind: 'over', roots: Int32Array.of(root), rules: many! };
        if (group.rules.length === 0) continue;
        system.load(ground, group.roots, group.rules);
        const memo = root < 0 ? plan.groups[-1 - root]! : {};
        const outcome = this.groupOutcome(memo, start.stuck.includes(s), still.includes(s));
        if (outcome === 'lost') lost.push(s);
        if (outcome !== 'holds') placing.stuck.push(s);
        else if (group.kind !== 'under') probe.group(system, iteration.factored(system, memo));
        continue;
      }
      placing.meet[s] = tool.placeAt(ground, root, plan.ruleA[s]!, plan.ruleB[s]!, start.slot[s]!);
      placing.gap[s] = tool.gap;
      placing.other[2 * s] = tool.otherX;
      placing.other[2 * s + 1] = tool.otherY;
      probeCrossing(probe, placing, s);
    }
    for (const derived of ground.reduction.derived) placeDerived(derived, ground.coords);
    return { placing, lost };
  }

  /** How the loaded group came to stand in its new surroundings; one that never held is placed as near as it may. */
  private groupOutcome(memo: PatternMemo, wasStuck: boolean, isStill: boolean): Outcome | 'lost' {
    const { system, iteration } = this;
    if (wasStuck) return iteration.solve(system, memo);
    system.evaluate(true);
    if (isStill) return system.largest <= HOLDS ? 'holds' : 'stuck';
    const length = typicalLength(system);
    const little = Math.min(BEYOND, BEYOND_LENGTH * length);
    return iteration.solveNear(system, memo, little, LONGEST_STEP * length) === 'holds' ? 'holds' : 'lost';
  }

  /** Judges, and remembers the places as the start of the next drag where every group has followed. */
  private keep(placing: Placing): NetworkResult {
    const result = judge(placing);
    if (placing.stuck.every((s) => this.start.stuck.includes(s))) this.coords = Float64Array.from(result.coords);
    return result;
  }
}
