/**
 * A planner: one network planted once, then dragged about with its plan kept.
 *
 * During a drag every crossing keeps its hand (the slot taken at the start), so nothing jumps to another branch, and
 * groups go on from where they stood. A held point goes where the pointer is; a loose one as near as the rules let it;
 * a planted one stays. Where the whole plan is arcs crossing arcs the drag runs through flat arrays (`arcRun.ts`).
 * Array kernel: indices come from the plan, hence the `!`.
 */
import type { Network, NetworkResult } from '../network.ts';
import { ArcRun } from './arcRun.ts';
import { CrossingTool } from './crossing.ts';
import { Iteration, typicalLength } from './iterate.ts';
import type { Placing } from './placing.ts';
import { placingOf, probeCrossing } from './plant.ts';
import { RankProbe } from './rankProbe.ts';
import { type Derived, placeDerived, reduceNetwork } from './reduce.ts';
import { type Ground, System } from './system.ts';
import { judge } from './verdict.ts';

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

/** Longest step of a held point while groups follow it, against their lengths: short of where a corner turns over. */
const LONGEST_STEP = 0.1;
/** Steps after which a far pointer is followed coarsely rather than slowly. */
const MOST_STEPS = 64;

/** Smallest part of the way to the pointer that is tried before a point stays where it is. */
const SHORTEST_SHARE = 1 / 256;
/** A step counts as no farther up to this part of the group's lengths: what the follower leaves undone. */
const NO_FARTHER = 1e-8;

/** Plants a network and keeps its plan for drags. */
export function createPlanner(network: Network): Planner {
  return new KeptPlan(network);
}

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

  constructor(network: Network) {
    this.network = network;
    this.start = placingOf(network);
    this.planted = judge(this.start);
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
    const groups = this.start.plan.groups;
    let steps = 1;
    const fromX = this.coords[2 * root]!;
    const fromY = this.coords[2 * root + 1]!;
    if (groups.length > 0) {
      let shortest = Number.POSITIVE_INFINITY;
      for (const group of groups) {
        if (group.rules.length === 0) continue;
        this.system.load(this.start.ground, group.roots, group.rules);
        shortest = Math.min(shortest, typicalLength(this.system));
      }
      const away = Math.hypot(x - fromX, y - fromY);
      steps = Math.max(1, Math.min(MOST_STEPS, Math.ceil(away / (LONGEST_STEP * shortest))));
    }
    let placing = this.start;
    for (let n = 1; n <= steps; n++) {
      const share = n / steps;
      for (let i = 0; i < this.network.pointCount; i++) {
        if (!this.network.held[i] || this.start.ground.reduction.root[i] !== root) continue;
        this.sketch[2 * i] = fromX + share * (x - fromX);
        this.sketch[2 * i + 1] = fromY + share * (y - fromY);
      }
      placing = this.replace();
    }
    return this.keep(placing);
  }

  /** A group's root, or a point derived from one, follows the pointer; a planted point stays. */
  private dragFree(root: number, x: number, y: number): NetworkResult {
    const { reduction } = this.start.ground;
    const { plan } = this.start;
    const at = reduction.derivedAt ? reduction.derivedAt[root]! : -1;
    const derived = at >= 0 ? reduction.derived[at]! : undefined;
    const step = this.stepOf((derived ? derived.roots : [root]).filter((u) => this.planted.states[u] !== 0));
    if (step < 0) return this.keep(this.replace());
    const group = plan.groups[-1 - plan.root[step]!]!;
    const leads = derived ? derived.roots.filter((u) => group.roots.includes(u)) : [root];
    const from = this.groundNow().coords;
    if (derived) placeDerived(derived, from);
    const before = Math.hypot(from[2 * root]! - x, from[2 * root + 1]! - y);
    // Where links stretch out a whole step may overshoot, and a derived point may go the other way when the wrong one of
    // its roots leads: the first step that brings it no farther is taken, else it stays.
    for (let share = 1; share >= SHORTEST_SHARE; share /= 4) {
      for (const lead of leads) {
        const [wantX, wantY] = wantedOf(
          from,
          root,
          lead,
          derived,
          share * (x - from[2 * root]!),
          share * (y - from[2 * root + 1]!),
        );
        const ground = this.groundNow();
        this.system.load(ground, group.roots, group.rules);
        const outcome = this.iteration.follow(this.system, group, group.roots.indexOf(lead), wantX, wantY);
        if (outcome !== 'holds') continue;
        const scale = typicalLength(this.system);
        this.coords = ground.coords;
        const placing = this.replace();
        const { coords } = placing.ground;
        const after = Math.hypot(coords[2 * root]! - x, coords[2 * root + 1]! - y);
        if (after <= before + NO_FARTHER * scale) return this.keep(placing);
        this.coords = from;
      }
    }
    this.coords = from;
    return this.keep(this.replace());
  }

  /** The group step that may move one of the roots, or -1. */
  private stepOf(roots: readonly number[]): number {
    const { plan } = this.start;
    for (let s = 0; s < plan.stepCount; s++) {
      const u = plan.root[s]!;
      if (u < 0 && roots.some((root) => plan.groups[-1 - u]!.roots.includes(root))) return s;
    }
    return -1;
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

  /** Runs through the steps with every branch kept, groups going on from where they stand. */
  private replace(): Placing {
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
        if (iteration.solve(system, memo) === 'stuck') placing.stuck.push(s);
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
    this.coords = ground.coords;
    return placing;
  }

  /** Judges, and remembers the places as the start of the next drag. */
  private keep(placing: Placing): NetworkResult {
    const result = judge(placing);
    this.coords = Float64Array.from(result.coords);
    return result;
  }
}

/** Where the leading root would have to stand for the point itself to move by (dx, dy), all else unmoved. */
function wantedOf(
  coords: Float64Array,
  root: number,
  lead: number,
  derived: Derived | undefined,
  dx: number,
  dy: number,
): readonly [number, number] {
  const [leadX, leadY] = [coords[2 * lead]!, coords[2 * lead + 1]!];
  if (!derived || lead === root) return [leadX + dx, leadY + dy];
  const which = derived.roots.indexOf(lead);
  const [fr, fi] = [derived.factors[2 * which]!, derived.factors[2 * which + 1]!];
  const size = fr * fr + fi * fi;
  return [leadX + (dx * fr + dy * fi) / size, leadY + (dy * fr - dx * fi) / size];
}
