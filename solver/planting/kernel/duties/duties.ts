/**
 * Duties: which rules place and which only check, from the drawing alone.
 *
 * Ties (same place, opposite, turned, held) come first: they are taken out exactly. Of the rest, in the order of the
 * document, a rule places while it adds to what the rules before it settle, judged by generic rank (`nudged.ts`): no
 * length, no reading and no hole takes part. Three things are decided without rank, because nearly equal rules would be
 * told apart by rounding: lengths between the same two axes (one of them places, the best kind at the turn of the
 * first), directions of one point from one centre, and fixed directions of one point within a degree.
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import { type Network, RuleKind } from '../../network.ts';
import { incidenceOf } from '../incidence.ts';
import { planNetwork } from '../plan.ts';
import type { Reduction } from '../reduce.ts';
import { FIRST_EXACT_KIND, isLinearPair } from '../residual.ts';
import { type Ground, System } from '../system.ts';
import { Echelon } from './echelon.ts';
import { nudgedNetwork } from './nudged.ts';

/** Fixed directions of one point nearer than this count as one, radians: a degree, below which they cross too flat to strike. */
const SAME_DIRECTION = Math.PI / 180;
/** Nudges tried before a doubt is left standing. */
const ATTEMPTS = 3;

/**
 * Duties of a network that is drawn as if nothing were made: drilled places are not held in it. What the network says of
 * its rules (`told`, `rank`) counts.
 *
 * @returns 1 for each rule that checks; ties are 0
 */
export function checkingRules(network: Network, reduction: Reduction): Uint8Array {
  let best: Judged | undefined;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const judged = judge(network, reduction, attempt);
    if (judged.doubts === 0) return judged.checks;
    if (!best || judged.doubts < best.doubts) best = judged;
  }
  // What is still in doubt checks: a point may then be told as loose, never as planted by rules that say one thing.
  return best?.checks ?? new Uint8Array(network.ruleCount);
}

/** Duties as one nudge of the sketch gives them. */
interface Judged {
  readonly checks: Uint8Array;
  /** Rules of which the numbers did not say whether they add. */
  readonly doubts: number;
}

function judge(network: Network, reduction: Reduction, attempt: number): Judged {
  const { ruleCount, kinds } = network;
  const nudged = nudgedNetwork(network, reduction, attempt);
  const system = evaluated(nudged, reduction);
  const position = positionsOf(network, reduction);
  const echelon = new Echelon(2 * position.count);
  const alike = new Alikeness(network, reduction);
  const stands = pairChoice(network, reduction);
  const checks = new Uint8Array(ruleCount).fill(1);
  let doubts = 0;
  for (let turn = 0; turn < ruleCount; turn++) {
    if (kinds[turn]! >= FIRST_EXACT_KIND) {
      checks[turn] = network.told?.[turn] ? 1 : 0;
      continue;
    }
    const r = stands[turn]!;
    if (r < 0 || network.told?.[r] || alike.isLikeAPlacing(r)) continue;
    const outcome = takeRow(echelon, system, r, position.of);
    if (outcome === 'doubtful') doubts++;
    if (outcome !== 'adds') continue;
    checks[r] = 0;
    alike.places(r);
  }
  return { checks, doubts };
}

/** The gradients of all rules by their unknown roots, at the nudged places. */
function evaluated(network: Network, reduction: Reduction): System {
  const ground: Ground = {
    network,
    reduction,
    incidence: incidenceOf(network, reduction),
    coords: network.coords,
    work: { iterations: 0, evaluations: 0, blocks: 0 },
  };
  const roots: number[] = [];
  for (let u = 0; u < network.pointCount; u++) if (reduction.unknown[u]) roots.push(u);
  const rules = Int32Array.from({ length: network.ruleCount }, (_, r) => r);
  const system = new System();
  system.load(ground, Int32Array.from(roots), rules);
  // Exact rules have no roots; evaluating them would ask for kinds that have no residual.
  system.evaluateRows((r) => network.kinds[r]! < FIRST_EXACT_KIND);
  return system;
}

/** Where each root stands in the order of construction: later ones hang on earlier ones. By local index of the system. */
function positionsOf(network: Network, reduction: Reduction): { readonly of: Int32Array; readonly count: number } {
  const plan = planNetwork(network, reduction);
  const rank = new Int32Array(network.pointCount).fill(-1);
  let count = 0;
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root >= 0) rank[root] = count++;
    else for (const u of nearFirst(plan.groups[-1 - root]!.roots, plan)) rank[u] = count++;
  }
  const of: number[] = [];
  for (let u = 0; u < network.pointCount; u++) if (reduction.unknown[u]) of.push(rank[u]! < 0 ? count++ : rank[u]!);
  return { of: Int32Array.from(of), count };
}

/** Roots of a group so that neighbours stand near each other: breadth first from one of those with the fewest neighbours. */
function nearFirst(roots: Int32Array, { incidence }: ReturnType<typeof planNetwork>): number[] {
  const inside = new Set(roots);
  const degree = (u: number): number => incidence.ruleStart[u + 1]! - incidence.ruleStart[u]!;
  const waiting = Array.from(roots).sort((a, b) => degree(a) - degree(b) || a - b);
  const order: number[] = [];
  for (const seed of waiting) {
    if (!inside.delete(seed)) continue;
    order.push(seed);
    for (let q = order.length - 1; q < order.length; q++) {
      const u = order[q]!;
      for (let k = incidence.ruleStart[u]!; k < incidence.ruleStart[u + 1]!; k++) {
        const r = incidence.rules[k]!;
        for (let j = incidence.rootStart[r]!; j < incidence.rootStart[r + 1]!; j++) {
          if (inside.delete(incidence.roots[j]!)) order.push(incidence.roots[j]!);
        }
      }
    }
  }
  return order;
}

function takeRow(echelon: Echelon, system: System, r: number, positionOf: Int32Array): ReturnType<Echelon['take']> {
  const positions: number[] = [];
  const values: number[] = [];
  for (let e = system.rowStart[r]!; e < system.rowStart[r + 1]!; e++) {
    const at = positionOf[system.rowRoot[e]!]!;
    positions.push(2 * at, 2 * at + 1);
    values.push(system.jacobian[2 * e]!, system.jacobian[2 * e + 1]!);
  }
  return echelon.take(positions, values);
}

/**
 * Of lengths between the same two axes one is asked, at the turn of the first of them: the lowest rank, then the order.
 *
 * @returns for each rule in its turn the rule that is asked there, -1 where it only checks
 */
function pairChoice(network: Network, reduction: Reduction): Int32Array {
  const { kinds, ruleCount, pointCount, told, rank } = network;
  const stands = Int32Array.from({ length: ruleCount }, (_, r) => r);
  const firsts = new Map<number, number>();
  for (let r = 0; r < ruleCount; r++) {
    if (kinds[r] !== RuleKind.distance || told?.[r]) continue;
    const [a, b] = [reduction.points[4 * r]!, reduction.points[4 * r + 1]!];
    const pair = Math.min(a, b) * pointCount + Math.max(a, b);
    const first = firsts.get(pair);
    if (first === undefined) {
      firsts.set(pair, r);
      continue;
    }
    stands[r] = -1;
    if ((rank?.[r] ?? 0) < (rank?.[stands[first]!] ?? 0)) stands[first] = r;
  }
  return stands;
}

/** Directions that count as one: remembers those that place. */
class Alikeness {
  private readonly fromCentre = new Set<number>();
  private readonly fixed = new Map<number, number[]>();
  private readonly network: Network;
  private readonly reduction: Reduction;

  constructor(network: Network, reduction: Reduction) {
    this.network = network;
    this.reduction = reduction;
  }

  /** Does a direction that places say the same of this rule's point already? */
  isLikeAPlacing(r: number): boolean {
    const centre = this.centreOf(r);
    if (centre !== undefined && this.fromCentre.has(centre)) return true;
    const direction = this.directionOf(r);
    if (direction === undefined) return false;
    return (this.fixed.get(this.reduction.points[4 * r]!) ?? []).some((other) => {
      const apart = Math.abs(direction - other) % Math.PI;
      return Math.min(apart, Math.PI - apart) < SAME_DIRECTION;
    });
  }

  places(r: number): void {
    const centre = this.centreOf(r);
    if (centre !== undefined) this.fromCentre.add(centre);
    const direction = this.directionOf(r);
    if (direction === undefined) return;
    const point = this.reduction.points[4 * r]!;
    const others = this.fixed.get(point);
    if (others) others.push(direction);
    else this.fixed.set(point, [direction]);
  }

  private centreOf(r: number): number | undefined {
    if (this.network.kinds[r] !== RuleKind.ray) return undefined;
    const { points } = this.reduction;
    return points[4 * r]! * this.network.pointCount + points[4 * r + 1]!;
  }

  /** The direction of a line that a fixed direction draws, radians; undefined for one that turns with other points. */
  private directionOf(r: number): number | undefined {
    const { kinds, values } = this.network;
    if (kinds[r] === RuleKind.onLine || isLinearPair(kinds[r]!)) return Math.atan2(values[3 * r]!, -values[3 * r + 1]!);
    const isFixed = kinds[r] === RuleKind.ray && this.reduction.points[4 * r + 2]! < 0;
    return isFixed ? values[3 * r]! : undefined;
  }
}
