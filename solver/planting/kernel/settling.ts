/**
 * What is settled, how well, and what can still move: the free motions of a placing, part by part.
 *
 * Loose groups are decomposed on their own. Where the probe is in doubt about a point, all that hangs together with it is
 * decomposed as a whole, with every rule that speaks of it. Array kernel: indices come from the plan, hence the `!`.
 */

import { Meet } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import { type Doubt, PointState } from '../network.ts';
import { type Freedom, freedomOf, type Motion, STILL } from './freedom.ts';
import { Iteration } from './iterate.ts';
import type { Placing } from './placing.ts';
import { System } from './system.ts';

// Bound once: read through a room's face each use is a call where modules are not bundled.
const MEET = Meet;

/** What the decompositions found. */
export interface Settling {
  readonly motions: readonly Motion[];
  readonly touching: readonly number[];
  readonly barely: Freedom['barely'];
}

/** Decomposes loose groups, and every part with a root in doubt. */
export function settlingOf(placing: Placing, missBy: Float64Array): Settling {
  const { plan, ground } = placing;
  const parts: { readonly roots: Int32Array; readonly rules: Int32Array }[] = [];
  let covered: Uint8Array | undefined;
  for (const seed of [...placing.doubted, ...barelyApart(placing, missBy)]) {
    covered ??= new Uint8Array(ground.network.pointCount);
    if (!covered[seed]) parts.push(withoutFailing(placing, missBy, connectedTo(placing, seed, covered)));
  }
  for (const group of plan.groups) {
    if (group.kind === 'under' && !covered?.[group.roots[0]!]) parts.push({ roots: group.roots, rules: group.rules });
  }
  const found = parts.filter(({ roots }) => roots.length > 0).map((part) => decompose(placing, part));
  return {
    motions: found.flatMap(({ motions }) => motions),
    touching: found.flatMap(({ touching }) => touching),
    barely: found.flatMap(({ barely }) => barely),
  };
}

/** Roots whose loci miss by so little that both rules hold: planted, but nothing was carried through them. */
function barelyApart({ plan, meet }: Placing, missBy: Float64Array): number[] {
  const found: number[] = [];
  for (let s = 0; s < plan.stepCount; s++) {
    if (meet[s] !== MEET.none || plan.root[s]! < 0) continue;
    if (missBy[plan.ruleA[s]!]! <= HOLDS && missBy[plan.ruleB[s]!]! <= HOLDS) found.push(plan.root[s]!);
  }
  return found;
}

function decompose({ ground }: Placing, { roots, rules }: { roots: Int32Array; rules: Int32Array }): Freedom {
  const system = new System();
  system.load(ground, roots, rules);
  if (rules.length > 0) system.evaluate(true);
  return freedomOf(system, new Iteration());
}

/**
 * A part without what does not hold: rules that miss, points that such rules should have placed, and all that speaks of
 * these. What is settled must be so by rules that hold.
 */
function withoutFailing(
  { plan, ground, stuck, pairOf }: Placing,
  missBy: Float64Array,
  part: { readonly roots: Int32Array; readonly rules: Int32Array },
): { roots: Int32Array; rules: Int32Array } {
  const { rootStart, roots } = ground.incidence;
  const isFailing = (r: number): boolean => missBy[r]! > HOLDS;
  if (!part.rules.some(isFailing)) return part;
  const unplaced = new Set<number>();
  // A loose group may hang on what is unplaced: it settles nothing else, and has those motions less.
  const loose = new Set(plan.groups.flatMap(({ kind, rules }) => (kind === 'under' ? Array.from(rules) : [])));
  for (let s = 0; s < plan.stepCount; s++) {
    const root = plan.root[s]!;
    if (root < 0) {
      if (stuck.includes(s)) for (const u of plan.groups[-1 - root]!.roots) unplaced.add(u);
      continue;
    }
    const pair = pairOf.get(s) ?? [plan.ruleA[s]!, plan.ruleB[s]!];
    if (stuck.includes(s) || pair.some(isFailing)) unplaced.add(root);
  }
  const speaksOfUnplaced = (r: number): boolean =>
    roots.subarray(rootStart[r]!, rootStart[r + 1]!).some((u) => unplaced.has(u));
  return {
    roots: part.roots.filter((u) => !unplaced.has(u)),
    rules: part.rules.filter((r) => !isFailing(r) && (loose.has(r) || !speaksOfUnplaced(r))),
  };
}

/** All roots and rules that hang together with a root. */
function connectedTo(placing: Placing, seed: number, covered: Uint8Array): { roots: Int32Array; rules: Int32Array } {
  const { rootStart, roots, ruleStart, rules } = placing.ground.incidence;
  const found = [seed];
  const foundRules = new Set<number>();
  covered[seed] = 1;
  for (let q = 0; q < found.length; q++) {
    const u = found[q]!;
    for (let k = ruleStart[u]!; k < ruleStart[u + 1]!; k++) {
      const r = rules[k]!;
      // What only checks settles nothing.
      if (foundRules.has(r) || placing.checks[r]) continue;
      foundRules.add(r);
      for (let j = rootStart[r]!; j < rootStart[r + 1]!; j++) {
        const w = roots[j]!;
        if (covered[w]) continue;
        covered[w] = 1;
        found.push(w);
      }
    }
  }
  return { roots: Int32Array.from(found).sort(), rules: Int32Array.from(foundRules).sort() };
}

/** Gives every member of a merged place what its root has. */
export function spreadToMembers(root: Int32Array, coords: Float64Array): void {
  for (let i = 0; i < root.length; i++) {
    const at = root[i]!;
    coords[2 * i] = coords[2 * at]!;
    coords[2 * i + 1] = coords[2 * at + 1]!;
  }
}

/** A motion as displacements of every point, derived and merged ones included. */
export function spread(placing: Placing, motion: Motion): Float64Array {
  const { network, reduction } = placing.ground;
  const all = new Float64Array(2 * network.pointCount);
  motion.roots.forEach((u, k) => {
    all[2 * u] = motion.shift[2 * k]!;
    all[2 * u + 1] = motion.shift[2 * k + 1]!;
  });
  for (const { point, roots, factors } of reduction.derived) {
    roots.forEach((root, k) => {
      const [fr, fi] = [factors[2 * k]!, factors[2 * k + 1]!];
      all[2 * point]! += fr * all[2 * root]! - fi * all[2 * root + 1]!;
      all[2 * point + 1]! += fr * all[2 * root + 1]! + fi * all[2 * root]!;
    });
  }
  if (reduction.points !== network.points) spreadToMembers(reduction.root, all);
  let most = 0;
  for (let i = 0; i < network.pointCount; i++) most = Math.max(most, Math.hypot(all[2 * i]!, all[2 * i + 1]!));
  return most > 0 ? all.map((v) => v / most) : all;
}

/** Marks what the motions move, and what is derived from it. */
export function markLoose(placing: Placing, motions: readonly Motion[], states: Uint8Array): void {
  const { network, reduction } = placing.ground;
  for (const { roots, shift } of motions) {
    for (let k = 0; k < roots.length; k++) {
      if (Math.hypot(shift[2 * k]!, shift[2 * k + 1]!) > STILL) states[roots[k]!] = PointState.loose;
    }
  }
  for (const { point, roots } of reduction.derived) {
    if (roots.some((root) => states[root] === PointState.loose)) states[point] = PointState.loose;
  }
  if (reduction.points === network.points) return;
  for (let i = 0; i < network.pointCount; i++) states[i] = states[reduction.root[i]!]!;
}

/** Settled points of which more is to be told: placed where loci only touch, or barely settled. */
export function doubtsOf(placing: Placing, settling: Settling, states: Uint8Array): Doubt[] {
  const { plan, meet } = placing;
  const isPlanted = (root: number): boolean => states[root] === PointState.planted;
  const touching = new Set(settling.touching.filter(isPlanted));
  for (let s = 0; s < plan.stepCount; s++) {
    // Loci that miss by no more than what rules hold to are planted too.
    const touches = meet[s] === MEET.touch || meet[s] === MEET.none;
    if (touches && plan.root[s]! >= 0 && isPlanted(plan.root[s]!)) touching.add(plan.root[s]!);
  }
  const doubts: Doubt[] =
    touching.size > 0 ? [{ kind: 'touching', points: membersOf(placing, touching), ratio: 0 }] : [];
  for (const { roots, ratio } of settling.barely) {
    const settled = roots.filter((root) => isPlanted(root) && !touching.has(root));
    if (settled.length > 0) doubts.push({ kind: 'barely', points: membersOf(placing, new Set(settled)), ratio });
  }
  return doubts;
}

/** Every point that stands at one of the roots. */
function membersOf({ ground }: Placing, roots: ReadonlySet<number>): number[] {
  const { network, reduction } = ground;
  const members: number[] = [];
  for (let i = 0; i < network.pointCount; i++) if (roots.has(reduction.root[i]!)) members.push(i);
  return members;
}
