/**
 * The drawing with what was made put into it.
 *
 * A drilled point stands where it was drilled, and what hangs on it in the order of construction follows. Its own placing
 * rules check from now on. Patterns (straight opposite, even spacing, same radius) belong to the drawing: they go on from
 * the place that the point was drawn at, its ghost, a point of its own that the released rules still place. A drilled
 * *centre* of a pattern is followed. Array kernel: indices come from a checked network, hence the `!`.
 */
import { type Network, RuleKind } from '../../network.ts';
import type { Plan } from '../planSteps.ts';
import { FIRST_EXACT_KIND } from '../residual.ts';
import type { Ground } from '../system.ts';
import { releasesAt } from './releases.ts';

/** A made place of a point of the network, mm. */
export interface Fact {
  readonly point: number;
  readonly x: number;
  readonly y: number;
}

/** A drawing with facts in it, and the way back to the drawing. */
export interface FactNetwork {
  /** The points of the drawing in their order, drilled ones held where they were drilled; then the ghosts. */
  readonly network: Network;
  /** 1 for each rule that checks, released ones included. */
  readonly checks: Uint8Array;
  /** The drawing's rule that each rule is, or is a copy of for a ghost. */
  readonly sourceOf: Int32Array;
  /** The ghost of each drilled point that has one. */
  readonly ghostOf: ReadonlyMap<number, number>;
  /** The drawing's rules that facts released. */
  readonly released: Uint8Array;
  /** For each fact: how far another point of its block follows at most, against the error of the hole. */
  readonly factors: Float64Array;
}

/** Points in a rule that are its pattern, by their position in it; the rest are centres, or the rule is no pattern. */
const PATTERN: Readonly<Partial<Record<number, readonly number[]>>> = {
  [RuleKind.opposite]: [0, 2],
  [RuleKind.turned]: [0, 1],
  [RuleKind.sameRadius]: [0, 1],
  [RuleKind.between]: [0],
  [RuleKind.abreast]: [0, 1],
  [RuleKind.halfway]: [0, 1],
};

/**
 * Puts facts into a drawing.
 *
 * @param ground the drawing planted without facts: its coordinates are the drawn places
 * @param plan   the plan of the rules that place in it
 * @param checks 1 for the rules that only check in it
 * @param facts  at most one a point; of points that share a place the first one stands
 */
export function factNetwork(ground: Ground, plan: Plan, checks: Uint8Array, facts: readonly Fact[]): FactNetwork {
  const { network, reduction } = ground;
  const { root } = reduction;
  const byRoot = new Map<number, Fact>();
  for (const fact of facts) if (!byRoot.has(root[fact.point]!)) byRoot.set(root[fact.point]!, fact);
  const roots = [...byRoot.keys()];
  const { released, factors } = releasesAt(ground, plan, roots);
  const throughTies = new Map(roots.map((at) => [at, placingThroughTie(ground, plan, at)] as const));
  for (const rules of throughTies.values()) for (const r of rules ?? []) released[r] = 1;
  const made = new Draft(network, ground.coords, checks, released);
  for (const [at, fact] of byRoot) made.hold(membersOf(root, at), fact);
  for (const at of roots) {
    const rules = patternsOf(network, root, at).filter((r) => !checks[r] && !released[r]);
    if (rules.length === 0) continue;
    const throughTie = throughTies.get(at);
    const own = throughTie ?? (isPlacedAlone(plan, at) ? ownRules(released, network, root, at) : []);
    // What follows from others by a tie goes on doing so; what is placed together with others keeps its drawn place.
    const isGiven = throughTie === undefined && own.length === 0;
    const ghost = made.addGhost(byRoot.get(at)!.point, isGiven);
    for (const r of own) made.copyFor(r, root, at, ghost);
    for (const r of rules) made.refer(r, root, at, ghost);
  }
  return { ...made.finish(), released, factors };
}

function membersOf(root: Int32Array, at: number): number[] {
  const members: number[] = [];
  for (let i = 0; i < root.length; i++) if (root[i] === at) members.push(i);
  return members;
}

/** Rules of whose pattern the point is a part. */
function patternsOf({ ruleCount, kinds, points }: Network, root: Int32Array, at: number): number[] {
  const found: number[] = [];
  for (let r = 0; r < ruleCount; r++) {
    const places = PATTERN[kinds[r]!];
    if (places?.some((k) => root[points[4 * r + k]!] === at)) found.push(r);
  }
  return found;
}

/**
 * Rules that name a derived point and by it place the points that it follows from: with a hole there they check, and go on
 * placing by its ghost. Undefined for a point that follows from no others.
 */
function placingThroughTie({ reduction }: Ground, plan: Plan, at: number): readonly number[] | undefined {
  const index = reduction.derivedAt?.[at] ?? -1;
  if (index < 0) return undefined;
  const { roots } = reduction.derived[index]!;
  const found: number[] = [];
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    const group = root < 0 ? plan.groups[-1 - root]! : undefined;
    const isOwn = group ? group.roots.some((u) => roots.includes(u)) : roots.includes(root);
    if (!isOwn) continue;
    const rules = group ? Array.from(group.rules) : [plan.ruleA[s]!, plan.ruleB[s]!];
    found.push(...rules.filter((r) => [0, 1, 2].some((k) => reduction.points[4 * r + k] === at)));
  }
  return found;
}

/** Is the root struck by two rules of its own, not together with others? */
function isPlacedAlone(plan: Plan, at: number): boolean {
  for (let s = 0; s < plan.stepCount; s++) if (plan.root[s] === at) return true;
  return false;
}

/** Released rules that name the root and are no tie. */
function ownRules(released: Uint8Array, { points, kinds }: Network, root: Int32Array, at: number): number[] {
  const own: number[] = [];
  for (let r = 0; r < released.length; r++) {
    if (!released[r] || kinds[r]! >= FIRST_EXACT_KIND) continue;
    if ([0, 1, 2].some((k) => points[4 * r + k]! >= 0 && root[points[4 * r + k]!] === at)) own.push(r);
  }
  return own;
}

/** A network that grows: copies of the arrays, with ghosts and copied rules behind. */
class Draft {
  private readonly base: Network;
  private readonly drawn: Float64Array;
  private readonly coords: number[];
  private readonly held: number[];
  private readonly kinds: number[];
  private readonly points: number[];
  private readonly values: number[];
  private readonly sides: number[];
  private readonly sideFrom: number[];
  private readonly sideTo: number[];
  private readonly checks: number[];
  private readonly told: number[];
  private readonly sourceOf: number[];
  private readonly ghostOf = new Map<number, number>();

  constructor(base: Network, drawn: Float64Array, checks: Uint8Array, released: Uint8Array) {
    this.base = base;
    this.drawn = drawn;
    this.coords = Array.from(base.coords);
    this.held = Array.from(base.held);
    this.kinds = Array.from(base.kinds);
    this.points = Array.from(base.points);
    this.values = Array.from(base.values);
    this.sides = Array.from(base.sides);
    this.sideFrom = Array.from(base.sideFrom);
    this.sideTo = Array.from(base.sideTo);
    this.checks = Array.from(checks, (one, r) => one | released[r]!);
    this.told = Array.from(base.told ?? new Uint8Array(base.ruleCount));
    this.sourceOf = Array.from({ length: base.ruleCount }, (_, r) => r);
  }

  /** One member is held at the fact; no other stays held where it was drawn. */
  hold(members: readonly number[], { point, x, y }: Fact): void {
    for (const i of members) this.held[i] = 0;
    this.held[point] = 1;
    this.coords[2 * point] = x;
    this.coords[2 * point + 1] = y;
  }

  /** A ghost for a drilled point: sketched as it was, or given where it stands in the drawing. */
  addGhost(point: number, isGiven: boolean): number {
    const ghost = this.held.length;
    const from = isGiven ? this.drawn : this.base.coords;
    this.coords.push(from[2 * point]!, from[2 * point + 1]!);
    this.held.push(isGiven ? 1 : 0);
    this.sides.push(this.base.sides[point]!);
    this.sideFrom.push(this.base.sideFrom[point]!);
    this.sideTo.push(this.base.sideTo[point]!);
    this.ghostOf.set(point, ghost);
    return ghost;
  }

  /** A released rule once more, for the ghost: there it places. */
  copyFor(r: number, root: Int32Array, at: number, ghost: number): void {
    this.kinds.push(this.base.kinds[r]!);
    for (let k = 4 * r; k < 4 * r + 4; k++) {
      const point = this.base.points[k]!;
      this.points.push(point >= 0 && root[point] === at ? ghost : point);
    }
    for (let k = 3 * r; k < 3 * r + 3; k++) this.values.push(this.base.values[k]!);
    this.checks.push(0);
    this.told.push(0);
    this.sourceOf.push(r);
  }

  /** A pattern goes on from the ghost. */
  refer(r: number, root: Int32Array, at: number, ghost: number): void {
    for (const k of PATTERN[this.base.kinds[r]!] ?? []) {
      if (root[this.base.points[4 * r + k]!] === at) this.points[4 * r + k] = ghost;
    }
  }

  finish(): Pick<FactNetwork, 'network' | 'checks' | 'sourceOf' | 'ghostOf'> {
    const network: Network = {
      pointCount: this.held.length,
      ruleCount: this.kinds.length,
      coords: Float64Array.from(this.coords),
      held: Uint8Array.from(this.held),
      kinds: Uint8Array.from(this.kinds),
      points: Int32Array.from(this.points),
      values: Float64Array.from(this.values),
      sides: Uint8Array.from(this.sides),
      sideFrom: Int32Array.from(this.sideFrom),
      sideTo: Int32Array.from(this.sideTo),
      ...(this.base.told && { told: Uint8Array.from(this.told) }),
    };
    const { ghostOf } = this;
    return { network, checks: Uint8Array.from(this.checks), sourceOf: Int32Array.from(this.sourceOf), ghostOf };
  }
}
