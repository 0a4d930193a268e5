/**
 * Placing one root at the crossing of its loci: which pair of loci, and which of the two crossings.
 *
 * The recorded side decides, else nearness to the sketch place; nothing else. With more than two loci a crossing on
 * which all agree goes before either. Array kernel: indices come from the plan, hence the `!`.
 */

import { crossCirclesInto, Meet, meetLoci, Shape } from '../../geometry/index.ts';
import { HOLDS } from '../../tolerances.ts';
import { RuleKind } from '../network.ts';
import { shortArm } from './degenerate.ts';
import { locusOf } from './locus.ts';
import { placeDerived } from './reduce.ts';
import { residualOf } from './residual.ts';
import type { Ground } from './system.ts';

// Bound once: read through a room's face each use is a call where modules are not bundled.
const crossArcs = crossCirclesInto;
const MEET = Meet;

/** Loci that a point may have before only the first ones are paired with each other. */
const MOST_PAIRED = 8;

/** What placing a root left behind, kept in one object that is used again and again. */
export class CrossingTool {
  /** How the two loci met, one of `Meet`. */
  meet = 0;
  gap = 0;
  /** Which crossing was taken: 0 the first (left, or ahead), 2 the second. */
  slot: 0 | 2 = 0;
  /** The other crossing; the same as the place when there is none. */
  otherX = 0;
  otherY = 0;
  readonly out = new Float64Array(8);
  private readonly f = new Float64Array(5);
  private readonly g = new Float64Array(5);
  private readonly grad = new Float64Array(8);

  /** Places `root` by two rules; `sketch` are the sketch places. Returns how they met. */
  place(ground: Ground, sketch: Float64Array, root: number, ruleA: number, ruleB: number): number {
    const { network, reduction, coords } = ground;
    const { f, g, out } = this;
    const { kinds } = network;
    if (kinds[ruleA] === RuleKind.distance && kinds[ruleB] === RuleKind.distance && !reduction.derivedAt) {
      if (this.placeByDistances(ground, sketch, root, ruleA, ruleB)) return MEET.two;
    }
    locusOf(network, reduction, ruleA, root, coords, f);
    locusOf(network, reduction, ruleB, root, coords, g);
    this.meet = meetLoci(f, g, sketch[2 * root]!, sketch[2 * root + 1]!, out);
    this.gap = out[4]!;
    if (this.meet === MEET.two) this.leaveOutDegenerate(ground, root, ruleA, ruleB);
    const at = this.meet === MEET.two ? this.choose(ground, sketch, root) : 0;
    if (this.meet === MEET.none) ontoLocus(ruleA < ruleB ? f : g, out);
    this.slot = at;
    coords[2 * root] = out[at]!;
    coords[2 * root + 1] = out[at + 1]!;
    this.otherX = out[2 - at]!;
    this.otherY = out[3 - at]!;
    return this.meet;
  }

  /** Of two crossings one at which a direction or line loses its meaning does not count. */
  private leaveOutDegenerate(ground: Ground, root: number, ruleA: number, ruleB: number): void {
    const { out } = this;
    const isLost = (at: 0 | 2): boolean => {
      ground.coords[2 * root] = out[at]!;
      ground.coords[2 * root + 1] = out[at + 1]!;
      return this.armLost(ground, ruleA) || this.armLost(ground, ruleB);
    };
    const [first, second] = [isLost(0), isLost(2)];
    if (first === second) return;
    const [kept, lost] = first ? [2, 0] : [0, 2];
    out[lost] = out[kept]!;
    out[lost + 1] = out[kept + 1]!;
    this.meet = MEET.one;
  }

  private armLost(ground: Ground, rule: number): boolean {
    const { network, reduction, coords } = ground;
    refresh(ground, rule);
    return shortArm(network.kinds[rule]!, reduction.points, 4 * rule, network.values, 3 * rule, coords) > 0;
  }

  /** The usual case without detours: two arcs that cross. False, with nothing changed, when they do not. */
  private placeByDistances(ground: Ground, sketch: Float64Array, root: number, ruleA: number, ruleB: number): boolean {
    const { network, reduction, coords } = ground;
    const { points } = reduction;
    const { values } = network;
    const { out } = this;
    const a = points[4 * ruleA] === root ? points[4 * ruleA + 1]! : points[4 * ruleA]!;
    const b = points[4 * ruleB] === root ? points[4 * ruleB + 1]! : points[4 * ruleB]!;
    const ra = values[3 * ruleA]!;
    const rb = values[3 * ruleB]!;
    const overlap = crossArcs(out, coords[2 * a]!, coords[2 * a + 1]!, ra, coords[2 * b]!, coords[2 * b + 1]!, rb);
    if (!(overlap > HOLDS)) return false;
    this.meet = MEET.two;
    this.gap = 0;
    const at = this.choose(ground, sketch, root);
    this.slot = at;
    coords[2 * root] = out[at]!;
    coords[2 * root + 1] = out[at + 1]!;
    this.otherX = out[2 - at]!;
    this.otherY = out[3 - at]!;
    return true;
  }

  /** As `place`, but takes the crossing of the given slot whatever the sketch says; for drags, which keep their branch. */
  placeAt(ground: Ground, root: number, ruleA: number, ruleB: number, slot: number): number {
    const meet = this.place(ground, ground.coords, root, ruleA, ruleB);
    if (this.slot !== slot) this.takeOther(ground, root);
    return meet;
  }

  /** Goes over to the other crossing, where the last placing had two. */
  takeOther({ coords }: Ground, root: number): void {
    if (this.meet !== MEET.two) return;
    this.slot = this.slot === 0 ? 2 : 0;
    const x = coords[2 * root]!;
    const y = coords[2 * root + 1]!;
    coords[2 * root] = this.otherX;
    coords[2 * root + 1] = this.otherY;
    this.otherX = x;
    this.otherY = y;
  }

  /** Position in `out` of the crossing that the document means: 0 or 2. */
  choose(ground: Ground, sketch: Float64Array, root: number): 0 | 2 {
    const { out } = this;
    const side = ground.reduction.sides[root]!;
    if (side > 0) {
      const first = onSide(ground, root, side, out[0]!, out[1]!);
      const second = onSide(ground, root, side, out[2]!, out[3]!);
      if (first !== second) return first ? 0 : 2;
    }
    const sx = sketch[2 * root]!;
    const sy = sketch[2 * root + 1]!;
    const ax = out[0]! - sx;
    const ay = out[1]! - sy;
    const bx = out[2]! - sx;
    const by = out[3]! - sy;
    return bx * bx + by * by < ax * ax + ay * ay ? 2 : 0;
  }

  /**
   * Places a root that has more than two rules: `loci` are those in closed form, `all` must agree. Returns the two rules that placed it, first in rule order where pairs
   * cross equally well; `undefined` when no crossing suits all (the place is then the crossing that misses least).
   */
  placeByMany(
    ground: Ground,
    sketch: Float64Array,
    root: number,
    loci: readonly number[],
    all: readonly number[],
  ): readonly [number, number] | undefined {
    const { coords } = ground;
    let best:
      | { x: number; y: number; ox: number; oy: number; worst: number; angle: number; pair: [number, number] }
      | undefined;
    for (let i = 0; i < Math.min(loci.length, MOST_PAIRED); i++) {
      for (let j = i + 1; j < Math.min(loci.length, MOST_PAIRED); j++) {
        const pair: [number, number] = [loci[i]!, loci[j]!];
        const meet = this.place(ground, sketch, root, pair[0], pair[1]);
        const chosen = { x: coords[2 * root]!, y: coords[2 * root + 1]!, ox: this.otherX, oy: this.otherY };
        for (const second of meet === MEET.two ? [false, true] : [false]) {
          if (second) {
            coords[2 * root] = chosen.ox;
            coords[2 * root + 1] = chosen.oy;
          }
          const [worst, angle] = [this.worst(ground, all), this.angle(ground, root, pair[0], pair[1])];
          const spot = second ? { x: chosen.ox, y: chosen.oy, ox: chosen.x, oy: chosen.y } : chosen;
          // Agreement first; among agreeing ones the place the document means, at the best crossing.
          const better =
            !best ||
            (worst <= HOLDS
              ? best.worst > HOLDS || (!second && angle > best.angle + 1e-9)
              : best.worst > HOLDS && worst < best.worst);
          if (better) best = { ...spot, worst, angle, pair };
        }
      }
    }
    coords[2 * root] = best!.x;
    coords[2 * root + 1] = best!.y;
    this.otherX = best!.ox;
    this.otherY = best!.oy;
    this.gap = 0;
    return best!.worst <= HOLDS ? best!.pair : undefined;
  }

  private worst(ground: Ground, rules: readonly number[]): number {
    const { network, reduction, coords } = ground;
    let most = 0;
    for (const r of rules) {
      refresh(ground, r);
      const value = residualOf(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
      const lost = shortArm(network.kinds[r]!, reduction.points, 4 * r, network.values, 3 * r, coords);
      most = Math.max(most, Math.abs(value), lost);
    }
    return most;
  }

  /** Angle between two rules' loci where the root now stands, radians in [0, π/2]. */
  angle(ground: Ground, root: number, ruleA: number, ruleB: number): number {
    const [ax, ay] = this.normalAt(ground, root, ruleA);
    const [bx, by] = this.normalAt(ground, root, ruleB);
    return Math.atan2(Math.abs(ax * by - ay * bx), Math.abs(ax * bx + ay * by));
  }

  /** Gradient of a rule by the root. */
  normalAt(ground: Ground, root: number, rule: number): [number, number] {
    const { network, reduction, coords } = ground;
    refresh(ground, rule);
    residualOf(network.kinds[rule]!, reduction.points, 4 * rule, network.values, 3 * rule, coords, this.grad);
    let [x, y] = [0, 0];
    for (let k = 0; k < 3; k++) {
      const point = reduction.points[4 * rule + k]!;
      if (point < 0) break;
      const [gx, gy] = [this.grad[2 * k]!, this.grad[2 * k + 1]!];
      if (point === root) {
        x += gx;
        y += gy;
        continue;
      }
      const at = reduction.derivedAt ? reduction.derivedAt[point]! : -1;
      if (at < 0) continue;
      const { roots, factors } = reduction.derived[at]!;
      const which = roots.indexOf(root);
      if (which < 0) continue;
      const [fr, fi] = [factors[2 * which]!, factors[2 * which + 1]!];
      x += fr * gx + fi * gy;
      y += fr * gy - fi * gx;
    }
    return [x, y];
  }
}

/** Brings the derived points of a rule to where their roots now stand. */
function refresh({ reduction, coords }: Ground, rule: number): void {
  if (!reduction.derivedAt) return;
  for (let k = 4 * rule; k < 4 * rule + 3; k++) {
    const at = reduction.derivedAt[reduction.points[k]!] ?? -1;
    if (at >= 0) placeDerived(reduction.derived[at]!, coords);
  }
}

/** Is the place on the recorded side? 1 left, 2 right, 3 ahead, 4 behind of the line from one point to another. */
function onSide(ground: Ground, root: number, side: number, x: number, y: number): boolean {
  const { reduction, coords } = ground;
  const from = reduction.sideFrom[root]!;
  const to = reduction.sideTo[root]!;
  for (const end of [from, to]) {
    const at = reduction.derivedAt ? reduction.derivedAt[end]! : -1;
    if (at >= 0) placeDerived(reduction.derived[at]!, coords);
  }
  const dx = coords[2 * to]! - coords[2 * from]!;
  const dy = coords[2 * to + 1]! - coords[2 * from + 1]!;
  const ex = x - coords[2 * from]!;
  const ey = y - coords[2 * from + 1]!;
  const across = dx * ey - dy * ex;
  const along = dx * ex + dy * ey;
  return side === 1 ? across > 0 : side === 2 ? across < 0 : side === 3 ? along > 0 : along < 0;
}

/** Takes the compromise between two loci that miss onto the earlier one: what was settled first holds, the later shows the gap. */
function ontoLocus(locus: Float64Array, out: Float64Array): void {
  const [dx, dy] = [out[0]! - locus[1]!, out[1]! - locus[2]!];
  if (locus[0] === Shape.circle) {
    const away = Math.hypot(dx, dy);
    const share = away > 0 ? locus[3]! / away : 0;
    out[0] = locus[1]! + (away > 0 ? dx * share : locus[3]!);
    out[1] = locus[2]! + dy * share;
  } else {
    const along = dx * locus[3]! + dy * locus[4]!;
    // A ray begins at its start: nothing of it lies behind.
    const on = locus[0] === Shape.ray ? Math.max(0, along) : along;
    out[0] = locus[1]! + on * locus[3]!;
    out[1] = locus[2]! + on * locus[4]!;
  }
  out[2] = out[0]!;
  out[3] = out[1]!;
}
