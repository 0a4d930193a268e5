/**
 * Other crossings: where rules fail, which crossings of earlier points (or other closings of blocks) would let them hold.
 *
 * Nothing is turned over by planting itself; this only looks for what may be offered. From the first rule that fails, each
 * point that it hangs on is tried at its other crossing, nearest first; what makes that rule hold is followed to the next
 * one that fails, until none does. Of several ways the one that leaves all points nearest to their sketch comes first.
 * The number of plantings is bounded: where nothing is found, nothing is known.
 */
import { GAUGE } from '../../tolerances.ts';
import type { Network, NetworkResult, PlacementStep } from '../network.ts';
import { plantNetwork } from './plant.ts';

/** Points placed elsewhere, and the planting that they lead to. */
export interface OtherPlacing {
  /** New sketch places of the turned points: [index, x, y]. */
  readonly turned: readonly (readonly [number, number, number])[];
  readonly result: NetworkResult;
}

/** Plantings tried in a network of up to `SMALL` points, and above. */
const MOST_TRIED = 240;
const SMALL = 300;
const MOST_TRIED_LARGE = 60;
/** Points, the nearest ones, that are turned over for the sake of one rule. */
const MOST_TURNED_FOR_ONE = 10;
/** Of these two are turned at once, where no single one helps. */
const MOST_PAIRED = 6;
/** Turned points in one way out. */
const DEEPEST = 16;

/** What may be turned: one point to its other crossing, or a block to another start. */
interface Turn {
  readonly isPair?: true;
  readonly places: readonly (readonly [number, number, number])[];
}

/** One way followed so far. */
interface Way {
  readonly turned: ReadonlyMap<number, readonly [number, number]>;
  readonly result: NetworkResult;
  readonly failing: readonly number[];
}

/**
 * Looks for crossings with which the wanted rules hold.
 *
 * @param network the network as it was planted
 * @param planted its result, whose duties stay
 * @param failingIn rules of a planting that do not hold, or are over: those that count here
 */
export function otherPlacing(
  network: Network,
  planted: NetworkResult,
  failingIn: (result: NetworkResult) => readonly number[],
): OtherPlacing | undefined {
  const search = new Search({ ...network, checks: planted.checks }, failingIn);
  const found = search.follow({ turned: new Map(), result: planted, failing: failingIn(planted) }, 0);
  return found && { turned: [...found.turned].map(([i, [x, y]]) => [i, x, y] as const), result: found.result };
}

/** Tries crossings one after the other, a bounded number of plantings in all. */
class Search {
  private left: number;
  private readonly network: Network;
  private readonly failingIn: (result: NetworkResult) => readonly number[];

  constructor(network: Network, failingIn: (result: NetworkResult) => readonly number[]) {
    this.network = network;
    this.failingIn = failingIn;
    this.left = network.pointCount > SMALL ? MOST_TRIED_LARGE : MOST_TRIED;
  }

  /** The way to its end: undefined where none was found with what may be tried. */
  follow(way: Way, depth: number): Way | undefined {
    if (way.failing.length === 0) return way;
    if (depth >= DEEPEST) return undefined;
    const order = new Order(this.network, way.result.steps);
    const first = order.firstOf(way.failing);
    const before = new Set(way.failing);
    const tried: (Way & { readonly moved: number })[] = [];
    const turns = order.turnsFor(first, way.result, MOST_TURNED_FOR_ONE);
    for (const turn of [...turns, ...pairsOf(turns)]) {
      // Two at once only for what places, and where no single turn helps.
      if (turn.isPair && (tried.length > 0 || way.result.checks[first.rule])) break;
      if (turn.places.every(([i]) => way.turned.has(i))) continue;
      const next = this.tried(way, turn);
      if (!next) break;
      const isBetter =
        !next.failing.includes(first.rule) && next.failing.every((r) => before.has(r) || order.at(r) > first.at);
      if (isBetter) tried.push({ ...next, moved: this.movedFromSketch(next.result) });
    }
    tried.sort((a, b) => a.failing.length - b.failing.length || a.moved - b.moved);
    for (const next of tried) {
      const found = this.follow(next, depth + 1);
      if (found) return found;
    }
    return undefined;
  }

  /** The planting with one more turn; undefined where enough was tried. */
  private tried(way: Way, turn: Turn): Way | undefined {
    if (this.left-- <= 0) return undefined;
    const turned = new Map(way.turned);
    for (const [i, x, y] of turn.places) turned.set(i, [x, y]);
    const result = plantNetwork(turnedNetwork(this.network, turned, way.result.coords));
    return { turned, result, failing: this.failingIn(result) };
  }

  private movedFromSketch({ coords }: NetworkResult): number {
    let sum = 0;
    const { pointCount, coords: sketch } = this.network;
    for (let k = 0; k < 2 * pointCount; k++) sum += ((coords[k] ?? 0) - (sketch[k] ?? 0)) ** 2;
    return sum;
  }
}

/** Two turns at once, of those nearest to what fails. */
function pairsOf(turns: readonly Turn[]): Turn[] {
  const near = turns.slice(0, MOST_PAIRED);
  return near.flatMap((a, k) =>
    near.slice(k + 1).map((b): Turn => ({ isPair: true, places: [...a.places, ...b.places] })),
  );
}

/** The network with other sketch places; a recorded side of a turned place, or of one at the same place, is forgotten. */
function turnedNetwork(
  network: Network,
  turned: ReadonlyMap<number, readonly [number, number]>,
  stood: Float64Array,
): Network {
  const coords = Float64Array.from(network.coords);
  const sides = Uint8Array.from(network.sides);
  for (const [point, [x, y]] of turned) {
    for (let i = 0; i < network.pointCount; i++) {
      if (network.held[i] || stood[2 * i] !== stood[2 * point] || stood[2 * i + 1] !== stood[2 * point + 1]) continue;
      coords[2 * i] = x;
      coords[2 * i + 1] = y;
      sides[i] = 0;
    }
  }
  return { ...network, coords, sides };
}

/** The order of construction of one planting. */
class Order {
  private readonly stepOf: Int32Array;
  private readonly network: Network;
  private readonly steps: readonly PlacementStep[];

  constructor(network: Network, steps: readonly PlacementStep[]) {
    this.network = network;
    this.steps = steps;
    this.stepOf = new Int32Array(network.pointCount).fill(-1);
    steps.forEach(({ points }, s) => {
      for (const i of points) this.stepOf[i] = s;
    });
  }

  private pointsOf(rule: number): number[] {
    return Array.from(this.network.points.subarray(4 * rule, 4 * rule + 4)).filter((i) => i >= 0);
  }

  /** The step that a rule comes with: that of the last of its points. */
  at(rule: number): number {
    return Math.max(...this.pointsOf(rule).map((i) => this.stepOf[i] ?? -1));
  }

  firstOf(rules: readonly number[]): { readonly rule: number; readonly at: number } {
    let [best, at] = [rules[0] ?? 0, Number.POSITIVE_INFINITY];
    for (const rule of rules) {
      if (this.at(rule) >= at) continue;
      best = rule;
      at = this.at(rule);
    }
    return { rule: best, at };
  }

  /** Turns of what a rule hangs on, the last placed first. */
  turnsFor({ rule }: { readonly rule: number }, result: NetworkResult, most: number): Turn[] {
    const waiting = new Set(this.pointsOf(rule).map((i) => this.stepOf[i] ?? -1));
    const turns: Turn[] = [];
    let count = 0;
    while (waiting.size > 0 && count < most) {
      const s = Math.max(...waiting);
      waiting.delete(s);
      const step = this.steps[s];
      if (!step || step.kind === 'given') continue;
      const own = this.turnsOf(step, result);
      if (own.length > 0) count++;
      turns.push(...own);
      for (const r of step.rules) {
        for (const i of this.pointsOf(r)) if ((this.stepOf[i] ?? -1) < s) waiting.add(this.stepOf[i] ?? -1);
      }
    }
    return turns;
  }

  private turnsOf({ kind, points, other, rules }: PlacementStep, { coords }: NetworkResult): Turn[] {
    const [point] = points;
    if (kind === 'crossing' && other && point !== undefined) return [{ places: [[point, other[0], other[1]]] }];
    return kind === 'block' ? this.mirrored(points, rules, coords) : [];
  }

  /** A block mirrored in the line through two points that it hangs on, and each of its points in that of two neighbours. */
  private mirrored(points: readonly number[], rules: readonly number[], coords: Float64Array): Turn[] {
    const inside = new Set(points);
    const named = new Set(rules.flatMap((r) => this.pointsOf(r)));
    const outside = [...named].filter((i) => !inside.has(i));
    const turns: Turn[] = [];
    const [a, b] = farthestTwo(outside, coords);
    if (a !== undefined && b !== undefined) {
      turns.push({ places: points.map((i) => [i, ...mirror(i, a, b, coords)] as const) });
    }
    for (const i of points) {
      const near = [...new Set(rules.flatMap((r) => (this.pointsOf(r).includes(i) ? this.pointsOf(r) : [])))];
      const [c, d] = farthestTwo(
        near.filter((each) => each !== i),
        coords,
      );
      if (c === undefined || d === undefined) continue;
      const [x, y] = mirror(i, c, d, coords);
      const by = Math.hypot(x - (coords[2 * i] ?? 0), y - (coords[2 * i + 1] ?? 0));
      if (by > GAUGE) turns.push({ places: [[i, x, y]] });
    }
    return turns;
  }
}

function farthestTwo(points: readonly number[], coords: Float64Array): readonly (number | undefined)[] {
  let best: readonly number[] = [];
  let most = GAUGE;
  points.forEach((a, k) => {
    for (const b of points.slice(k + 1)) {
      const apart = Math.hypot(
        (coords[2 * a] ?? 0) - (coords[2 * b] ?? 0),
        (coords[2 * a + 1] ?? 0) - (coords[2 * b + 1] ?? 0),
      );
      if (apart <= most) continue;
      most = apart;
      best = [a, b];
    }
  });
  return best;
}

/** Point i mirrored in the line through a and b. */
function mirror(i: number, a: number, b: number, coords: Float64Array): readonly [number, number] {
  const at = (k: number): number => coords[k] ?? 0;
  const [dx, dy] = [at(2 * b) - at(2 * a), at(2 * b + 1) - at(2 * a + 1)];
  const [px, py] = [at(2 * i) - at(2 * a), at(2 * i + 1) - at(2 * a + 1)];
  const along = (px * dx + py * dy) / (dx * dx + dy * dy);
  return [at(2 * a) + 2 * along * dx - px, at(2 * a + 1) + 2 * along * dy - py];
}
