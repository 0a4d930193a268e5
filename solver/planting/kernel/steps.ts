/**
 * The steps of a planting as records, in an order in which each point only needs points before it.
 *
 * Array kernel: indices come from the plan, hence the `!`.
 */
import { Meet } from '../../geometry/index.ts';
import type { PlacementStep } from '../network.ts';
import { CrossingTool } from './crossing.ts';
import type { Placing } from './placing.ts';
import { FIRST_EXACT_KIND } from './residual.ts';

/** Lists the steps; points that follow exactly from others come as soon as those are there. */
export function stepsOf(placing: Placing): PlacementStep[] {
  const { ground, plan } = placing;
  const { network, reduction } = ground;
  const steps: PlacementStep[] = [];
  const follow = new Followers(placing, steps);
  for (let i = 0; i < network.pointCount; i++) {
    if (!reduction.given[i] || !network.held[i]) continue;
    steps.push({ kind: 'given', points: [i], rules: [] });
    follow.made(i);
  }
  follow.fixed();
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) {
      steps.push(crossingStep(placing, s));
      follow.made(root);
      continue;
    }
    const group = plan.groups[-1 - root]!;
    const surplus = new Set(group.surplus);
    const rules = Array.from(group.rules).filter((r) => !surplus.has(r));
    steps.push({ kind: group.kind === 'under' ? 'loose' : 'block', points: Array.from(group.roots), rules });
    for (const u of group.roots) follow.made(u);
  }
  return steps;
}

function crossingStep(placing: Placing, s: number): PlacementStep {
  const { ground, plan, meet, gap, other } = placing;
  const root = plan.root[s]!;
  const [a, b] = placing.pairOf.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!];
  const two = meet[s] === Meet.two && !placing.stuck.includes(s);
  return {
    kind: 'crossing',
    points: [root],
    rules: [a, b],
    ...(two ? { other: [other[2 * s]!, other[2 * s + 1]!] as const } : {}),
    crossingAngle: new CrossingTool().angle(ground, root, a, b),
    ...(gap[s]! > 0 ? { missBy: gap[s]! } : {}),
  };
}

/** Points merged with others or derived from them: listed when the last place they need is there. */
class Followers {
  private readonly done: Uint8Array;
  private readonly waiting: Int32Array;
  private readonly needs = new Map<number, number[]>();
  private readonly rulesOf = new Map<number, number[]>();
  private readonly members = new Map<number, number[]>();
  private readonly placing: Placing;
  private readonly steps: PlacementStep[];

  constructor(placing: Placing, steps: PlacementStep[]) {
    this.placing = placing;
    this.steps = steps;
    const { network, reduction } = placing.ground;
    this.done = new Uint8Array(network.pointCount);
    this.waiting = new Int32Array(reduction.derived.length);
    reduction.derived.forEach((derived, k) => {
      this.waiting[k] = derived.roots.length;
      for (const root of derived.roots) this.append(this.needs, root, k);
    });
    if (reduction.points === network.points) return;
    for (let i = 0; i < network.pointCount; i++) this.append(this.members, reduction.root[i]!, i);
    for (let r = 0; r < network.ruleCount; r++) {
      if (network.kinds[r]! < FIRST_EXACT_KIND) continue;
      for (const k of [0, 1, 2]) {
        if (network.points[4 * r + k]! >= 0) this.append(this.rulesOf, network.points[4 * r + k]!, r);
      }
    }
  }

  private append(to: Map<number, number[]>, key: number, value: number): void {
    const list = to.get(key);
    if (list) list.push(value);
    else to.set(key, [value]);
  }

  /** The place of a point is there: so are those of all points merged with it, and of derived ones it completes. */
  made(point: number): void {
    if (this.done[point]) return;
    this.done[point] = 1;
    const root = this.placing.ground.reduction.root[point]!;
    for (const member of this.members.get(root) ?? []) {
      const known = this.done[member] || this.placing.ground.network.held[member];
      this.done[member] = 1;
      if (!known) this.list(member);
    }
    for (const k of this.needs.get(root) ?? []) if (--this.waiting[k]! === 0) this.derive(k);
  }

  /** Derived places that need nothing but held ones. */
  fixed(): void {
    this.placing.ground.reduction.derived.forEach((derived, k) => {
      if (derived.roots.length === 0) this.derive(k);
    });
  }

  private derive(k: number): void {
    const { point } = this.placing.ground.reduction.derived[k]!;
    if (!this.done[point]) this.list(point);
    this.made(point);
  }

  private list(point: number): void {
    this.steps.push({ kind: 'derived', points: [point], rules: this.rulesOf.get(point) ?? [] });
  }
}
