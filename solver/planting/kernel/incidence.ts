/**
 * Which unknown roots each rule depends on, and the other way round, as two compressed lists.
 *
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import { type Network, RuleKind } from '../network.ts';
import type { Reduction } from './reduce.ts';
import { FIRST_EXACT_KIND } from './residual.ts';

/** Roots of each rule and rules of each root, as two packed lists with their starts. */
export interface Incidence {
  /** Roots of rule r: `roots[rootStart[r]] … roots[rootStart[r + 1] - 1]`, each once. */
  readonly rootStart: Int32Array;
  readonly roots: Int32Array;
  /** Rules of root u: `rules[ruleStart[u]] … rules[ruleStart[u + 1] - 1]`, each once. */
  readonly ruleStart: Int32Array;
  readonly rules: Int32Array;
}

/** Factor below which a root has dropped out of a difference of two places; rounding of sums of unit factors. */
const DROPPED = 1e-12;

/** Builds both lists. Exact rules (merged, eliminated) have no roots. */
export function incidenceOf(network: Network, reduction: Reduction): Incidence {
  const { pointCount, ruleCount } = network;
  const rootStart = new Int32Array(ruleCount + 1);
  const ruleStart = new Int32Array(pointCount + 1);
  const roots = reduction.derivedAt
    ? rootsThroughDerived(network, reduction, rootStart)
    : rootsOfPlain(network, reduction, rootStart);
  for (let k = 0; k < rootStart[ruleCount]!; k++) ruleStart[roots[k]! + 1]!++;
  for (let u = 0; u < pointCount; u++) ruleStart[u + 1]! += ruleStart[u]!;
  const rules = new Int32Array(rootStart[ruleCount]!);
  const next = ruleStart.slice(0, pointCount);
  for (let r = 0; r < ruleCount; r++) {
    for (let k = rootStart[r]!; k < rootStart[r + 1]!; k++) rules[next[roots[k]!]!++] = r;
  }
  return { rootStart, roots, ruleStart, rules };
}

/** Does a kind speak of the difference of two places alone? */
function isDifference(kind: number, third: number): boolean {
  if (kind === RuleKind.distance || kind === RuleKind.level || kind === RuleKind.abreast) return true;
  return kind === RuleKind.ray && third < 0;
}

/** Without derived places the roots of a rule are its own points. */
function rootsOfPlain(network: Network, reduction: Reduction, rootStart: Int32Array): Int32Array {
  const { ruleCount, kinds } = network;
  const { points, unknown } = reduction;
  const roots = new Int32Array(3 * ruleCount);
  let at = 0;
  for (let r = 0; r < ruleCount; r++) {
    const from = at;
    if (kinds[r]! < FIRST_EXACT_KIND) {
      for (let k = 4 * r; k < 4 * r + 3; k++) {
        const u = points[k]!;
        if (u < 0 || !unknown[u]) continue;
        let seen = false;
        for (let j = from; j < at; j++) if (roots[j] === u) seen = true;
        if (!seen) roots[at++] = u;
      }
      // A distance or difference from a place to itself depends on nothing.
      if (isDifference(kinds[r]!, points[4 * r + 2]!) && points[4 * r] === points[4 * r + 1]) at = from;
    }
    rootStart[r + 1] = at;
  }
  return roots;
}

/** Adds a point's roots, with sign, to a sum of complex factors. */
function addRoots(sum: Map<number, [number, number]>, reduction: Reduction, point: number, sign: number): void {
  const derivedAt = reduction.derivedAt?.[point] ?? -1;
  if (derivedAt < 0) {
    if (!reduction.unknown[point]) return;
    const old = sum.get(point) ?? [0, 0];
    sum.set(point, [old[0] + sign, old[1]]);
    return;
  }
  const { roots, factors } = reduction.derived[derivedAt]!;
  roots.forEach((root, k) => {
    const old = sum.get(root) ?? [0, 0];
    sum.set(root, [old[0] + sign * factors[2 * k]!, old[1] + sign * factors[2 * k + 1]!]);
  });
}

function rootsThroughDerived(network: Network, reduction: Reduction, rootStart: Int32Array): Int32Array {
  const roots: number[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    const kind = network.kinds[r]!;
    const [p, a, c] = [reduction.points[4 * r]!, reduction.points[4 * r + 1]!, reduction.points[4 * r + 2]!];
    if (kind < FIRST_EXACT_KIND) {
      const sum = new Map<number, [number, number]>();
      addRoots(sum, reduction, p, 1);
      if (isDifference(kind, c)) addRoots(sum, reduction, a, -1);
      else if (kind === RuleKind.halfway) addRoots(sum, reduction, a, 1);
      else {
        // Shares of different places do not cancel here: a quarter turn keeps their factors apart.
        if (a >= 0) addRoots(sum, reduction, a, Math.SQRT2);
        if (c >= 0) addRoots(sum, reduction, c, Math.E);
      }
      for (const [root, [re, im]] of sum) if (Math.hypot(re, im) > DROPPED) roots.push(root);
    }
    rootStart[r + 1] = roots.length;
  }
  return Int32Array.from(roots);
}
