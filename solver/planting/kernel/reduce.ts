/**
 * Exact merging and elimination: what remains after `samePlace`, `opposite`, `turned`, `between` and `held` are taken out.
 *
 * Points at one place become one *root* (its first member in document order, whose sketch place counts). A turned or
 * opposite point is a linear function of others when places are read as complex numbers:
 * z(p) = (1 - w)·z(c) + w·z(q) with w = e^(iθ), θ = π for opposite, and a real w for a place between. These equations are solved for one root each
 * by elimination, so every such place is `constant + Σ factor·root` over roots that are still unknown, exactly.
 * Array kernel: indices come from a checked network, hence the `!`.
 */
import { HOLDS } from '../../tolerances.ts';
import { type Network, RuleKind } from '../network.ts';
import { FIRST_EXACT_KIND } from './residual.ts';

/** A place that follows from others: z = constant + Σ factor·z(root), with complex factors. */
export interface Derived {
  readonly point: number;
  roots: number[];
  /** Real and imaginary part of each root's factor. */
  factors: number[];
  constant: [number, number];
  /** Exact rules that it came from. */
  sources: Set<number>;
}

/** A network with its merged and derived points taken out: indices by point, −1 where there is none. */
export interface Reduction {
  /** The root that stands for each point. */
  readonly root: Int32Array;
  /** The network's rule points with each point replaced by its root. */
  readonly points: Int32Array;
  /** 1 where the point is a root that is neither held nor derived. */
  readonly unknown: Uint8Array;
  /** 1 where a point's place is given: held, or merged with a held one. */
  readonly given: Uint8Array;
  /** Derived roots in an order in which each needs unknown roots only. */
  readonly derived: readonly Derived[];
  /** Position in `derived` of a root, or -1; undefined when nothing is derived. */
  readonly derivedAt: Int32Array | undefined;
  /** Recorded crossing of each root (that of its first member that has one), as in the network. */
  readonly sides: Uint8Array;
  readonly sideFrom: Int32Array;
  readonly sideTo: Int32Array;
  /** Exact rules that repeat what others say, and sets of them that contradict with their gap in mm. */
  readonly spare: readonly number[];
  readonly disagreements: readonly { readonly rules: readonly number[]; readonly gap: number }[];
}

/** Factor below which a root has dropped out of an equation: rounding of sums of unit factors. */
const DROPPED = 1e-12;

function findRoot(parent: Int32Array, point: number): number {
  let at = point;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]!]!;
    at = parent[at]!;
  }
  return at;
}

/** Takes the exact rules out of a network. `coords` gives the held places. */
export function reduceNetwork(network: Network, coords: Float64Array): Reduction {
  const { pointCount, ruleCount, kinds } = network;
  let exact = 0;
  for (let r = 0; r < ruleCount; r++) if (kinds[r]! >= FIRST_EXACT_KIND && !network.told?.[r]) exact++;
  const root = new Int32Array(pointCount);
  for (let i = 0; i < pointCount; i++) root[i] = i;
  const unknown = new Uint8Array(pointCount);
  if (exact === 0) {
    for (let i = 0; i < pointCount; i++) unknown[i] = network.held[i] ? 0 : 1;
    const { points, held: given, sides, sideFrom, sideTo } = network;
    const recorded = { sides, sideFrom, sideTo };
    return {
      root,
      points,
      unknown,
      given,
      derived: [],
      derivedAt: undefined,
      ...recorded,
      spare: [],
      disagreements: [],
    };
  }
  const found = { spare: [] as number[], disagreements: [] as { rules: number[]; gap: number }[] };
  const given = mergePlaces(network, coords, root, found);
  for (let i = 0; i < pointCount; i++) unknown[i] = root[i] === i && !given[i] ? 1 : 0;
  const points = new Int32Array(4 * ruleCount);
  for (let k = 0; k < points.length; k++) points[k] = network.points[k]! < 0 ? -1 : root[network.points[k]!]!;
  const derivedAt = new Int32Array(pointCount).fill(-1);
  const derived = eliminate(network, points, coords, unknown, derivedAt, found);
  return { root, points, unknown, given, derived, derivedAt, ...sidesOfRoots(network, root), ...found };
}

/** The recorded crossings by roots. */
function sidesOfRoots(network: Network, root: Int32Array): Pick<Reduction, 'sides' | 'sideFrom' | 'sideTo'> {
  const sides = new Uint8Array(network.pointCount);
  const sideFrom = new Int32Array(network.pointCount);
  const sideTo = new Int32Array(network.pointCount);
  for (let i = 0; i < network.pointCount; i++) {
    const at = root[i]!;
    if (network.sides[i]! === 0 || sides[at]! > 0) continue;
    sides[at] = network.sides[i]!;
    sideFrom[at] = root[network.sideFrom[i]!]!;
    sideTo[at] = root[network.sideTo[i]!]!;
  }
  return { sides, sideFrom, sideTo };
}

/** Rules that turned out spare or contradicting while points were taken out; gaps in mm. */
type Found = { spare: number[]; disagreements: { rules: number[]; gap: number }[] };

/** Unites points at one place; a held member's place is copied to the root. Returns which points are given. */
function mergePlaces(network: Network, coords: Float64Array, root: Int32Array, found: Found): Uint8Array {
  const { kinds, points, ruleCount, pointCount } = network;
  const holder = new Int32Array(pointCount);
  for (let i = 0; i < pointCount; i++) holder[i] = network.held[i] ? i : -1;
  for (let r = 0; r < ruleCount; r++) {
    if (kinds[r] !== RuleKind.samePlace || network.told?.[r]) continue;
    const a = findRoot(root, points[4 * r]!);
    const b = findRoot(root, points[4 * r + 1]!);
    if (a === b) {
      found.spare.push(r);
      continue;
    }
    const [low, high] = a < b ? [a, b] : [b, a];
    root[high] = low;
    const [kept, other] = [holder[low]!, holder[high]!];
    if (kept >= 0 && other >= 0) {
      const gap = Math.hypot(coords[2 * kept]! - coords[2 * other]!, coords[2 * kept + 1]! - coords[2 * other + 1]!);
      if (gap > HOLDS) found.disagreements.push({ rules: [r], gap });
    } else if (kept < 0) holder[low] = other;
  }
  const given = new Uint8Array(pointCount);
  for (let i = 0; i < pointCount; i++) {
    const at = findRoot(root, i);
    root[i] = at;
    const keeper = holder[at]!;
    if (keeper < 0) continue;
    given[i] = 1;
    coords[2 * at] = coords[2 * keeper]!;
    coords[2 * at + 1] = coords[2 * keeper + 1]!;
  }
  return given;
}

/** A linear equation Σ factor·z(root) + constant = 0 while it is gathered. */
class Equation {
  readonly factors = new Map<number, [number, number]>();
  constant: [number, number] = [0, 0];
  readonly sources = new Set<number>();

  /** Adds (re + i·im)·z(point), with derived points written out in their roots. */
  add(re: number, im: number, point: number, space: Space): void {
    const at = space.derivedAt[point]!;
    if (at >= 0) {
      const known = space.derived[at]!;
      for (let k = 0; k < known.roots.length; k++) {
        const [fr, fi] = [known.factors[2 * k]!, known.factors[2 * k + 1]!];
        this.addRoot(re * fr - im * fi, re * fi + im * fr, known.roots[k]!);
      }
      this.addConstant(re, im, known.constant[0], known.constant[1]);
      for (const rule of known.sources) this.sources.add(rule);
    } else if (space.unknown[point]) this.addRoot(re, im, point);
    else this.addConstant(re, im, space.coords[2 * point]!, space.coords[2 * point + 1]!);
  }

  private addRoot(re: number, im: number, root: number): void {
    const old = this.factors.get(root);
    if (old) {
      old[0] += re;
      old[1] += im;
    } else this.factors.set(root, [re, im]);
  }

  private addConstant(re: number, im: number, x: number, y: number): void {
    this.constant[0] += re * x - im * y;
    this.constant[1] += re * y + im * x;
  }
}

/** Where derived points are put from the points that they follow, coordinates in mm. */
interface Space {
  readonly coords: Float64Array;
  readonly unknown: Uint8Array;
  readonly derivedAt: Int32Array;
  readonly derived: Derived[];
}

/** Solves each opposite and turned rule for one root: its own point where possible. */
function eliminate(
  network: Network,
  points: Int32Array,
  coords: Float64Array,
  unknown: Uint8Array,
  derivedAt: Int32Array,
  found: Found,
): Derived[] {
  const space: Space = { coords, unknown, derivedAt, derived: [] };
  for (let r = 0; r < network.ruleCount; r++) {
    const kind = network.kinds[r];
    if (!(kind! > RuleKind.samePlace) || network.told?.[r]) continue;
    const [wr, wi] = factorOfTie(kind!, network.values[3 * r]!);
    const p = points[4 * r]!;
    // Turned lists p, q, c; the others p, c, q.
    const [c, q] = kind === RuleKind.turned ? [2, 1] : [1, 2];
    const equation = new Equation();
    equation.sources.add(r);
    equation.add(1, 0, p, space);
    equation.add(wr - 1, wi, points[4 * r + c]!, space);
    equation.add(-wr, -wi, points[4 * r + q]!, space);
    solveFor(equation, p, space, found, r);
  }
  return space.derived;
}

/** The complex w of z(p) = (1 − w)·z(c) + w·z(q) for an exact kind that is not the same place. */
export function factorOfTie(kind: number, value: number): readonly [number, number] {
  if (kind === RuleKind.opposite) return [-1, 0];
  return kind === RuleKind.between ? [value, 0] : [Math.cos(value), Math.sin(value)];
}

/** The root to solve for: the rule's own point, else the one with the largest factor. */
function pivotOf(equation: Equation, wanted: number): number {
  let best = -1;
  let size = DROPPED;
  for (const [root, [re, im]] of equation.factors) {
    const s = root === wanted && Math.hypot(re, im) > DROPPED ? Number.POSITIVE_INFINITY : Math.hypot(re, im);
    if (s <= size) continue;
    size = s;
    best = root;
  }
  return best;
}

function solveFor(equation: Equation, wanted: number, space: Space, found: Found, rule: number): void {
  const pivot = pivotOf(equation, wanted);
  if (pivot < 0) {
    const gap = Math.hypot(equation.constant[0], equation.constant[1]);
    if (gap > HOLDS) found.disagreements.push({ rules: [...equation.sources].sort((a, b) => a - b), gap });
    else found.spare.push(rule);
    return;
  }
  const [pr, pi] = equation.factors.get(pivot)!;
  const size = pr * pr + pi * pi;
  // -1 / pivot factor
  const [qr, qi] = [-pr / size, pi / size];
  const made: Derived = { point: pivot, roots: [], factors: [], constant: [0, 0], sources: equation.sources };
  for (const [root, [re, im]] of equation.factors) {
    if (root === pivot || Math.hypot(re, im) <= DROPPED) continue;
    made.roots.push(root);
    made.factors.push(re * qr - im * qi, re * qi + im * qr);
  }
  const [cx, cy] = equation.constant;
  made.constant = [cx * qr - cy * qi, cx * qi + cy * qr];
  space.unknown[pivot] = 0;
  for (const known of space.derived) if (known.roots.includes(pivot)) rewrite(known, pivot, made);
  space.derivedAt[pivot] = space.derived.length;
  space.derived.push(made);
}

/** Writes a derived place without the root `pivot`, which is now derived itself. */
function rewrite(known: Derived, pivot: number, made: Derived): void {
  const at = known.roots.indexOf(pivot);
  const [re, im] = [known.factors[2 * at]!, known.factors[2 * at + 1]!];
  known.roots.splice(at, 1);
  known.factors.splice(2 * at, 2);
  made.roots.forEach((root, k) => {
    const [fr, fi] = [made.factors[2 * k]!, made.factors[2 * k + 1]!];
    let to = known.roots.indexOf(root);
    if (to < 0) {
      to = known.roots.push(root) - 1;
      known.factors.push(0, 0);
    }
    known.factors[2 * to] = known.factors[2 * to]! + re * fr - im * fi;
    known.factors[2 * to + 1] = known.factors[2 * to + 1]! + re * fi + im * fr;
  });
  known.constant[0] += re * made.constant[0] - im * made.constant[1];
  known.constant[1] += re * made.constant[1] + im * made.constant[0];
  for (const rule of made.sources) known.sources.add(rule);
}

/** Fills in the place of one derived point from its roots' places. */
export function placeDerived(derived: Derived, coords: Float64Array): void {
  let [x, y] = derived.constant;
  for (let k = 0; k < derived.roots.length; k++) {
    const root = derived.roots[k]!;
    const [fr, fi] = [derived.factors[2 * k]!, derived.factors[2 * k + 1]!];
    const [zx, zy] = [coords[2 * root]!, coords[2 * root + 1]!];
    x += fr * zx - fi * zy;
    y += fr * zy + fi * zx;
  }
  coords[2 * derived.point] = x;
  coords[2 * derived.point + 1] = y;
}
