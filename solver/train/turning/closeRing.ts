/** The smallest movement of a loose arbor that lets a ring of depths close. */

import type { Point } from '../../geometry/index.ts';
import type { ArborId } from '../../movement/ids.ts';
import { HOLDS } from '../../tolerances.ts';
import { fromWhole, type Places } from './meshes.ts';
import { type MeshRing, ringFactors, ringSum } from './ringClosure.ts';

/**
 * Places after a loose motion has been followed by `amount` mm (either way); undefined where it ends. With planting:
 * `const drag = startDrag(placed, arbor); (amount) => drag.to(x + amount * way.x, y + amount * way.y).places`.
 */
export type Mover = (amount: number) => Places | undefined;

/** Where a loose arbor closes a ring, or why it cannot. */
export type RingCure =
  | {
      readonly kind: 'closes';
      /** Amount given to the mover, mm, and the places of the bodies of the ring there. */
      readonly amount: number;
      readonly moved: readonly {
        readonly arbor: ArborId;
        readonly from: Point;
        readonly to: Point;
        readonly distance: number;
      }[];
    }
  /** The ring cannot turn, is not placed, closes nowhere within the reach, or the motion ends before. */
  | { readonly kind: 'none'; readonly why: 'standsStill' | 'notPlaced' | 'nowhere' | 'motionEnds' };

/** Step of the search for a ring of single wheels, mm: the miss changes by far less than half a tooth in it. */
const STEP = 0.05;
/** Steps tried before giving up, each way. */
const MOST_STEPS = 20_000;

/**
 * Follows a loose motion both ways until the ring closes, and closes in on the nearer place.
 *
 * @param places where everything stands now
 * @param mover  keeps the rules: a drag of the planting, or `keepDepths` where depths are the only rules
 * @param reach  how far to look, mm
 */
export function closeRing(ring: MeshRing, places: Places, mover: Mover, reach = 20): RingCure {
  const factors = ringFactors(ring);
  if (!factors) return { kind: 'none', why: 'standsStill' };
  const missAt = (amount: number): number | undefined => {
    const there = amount === 0 ? places : mover(amount);
    const sum = there && ringSum(ring, factors, there);
    return sum === undefined ? undefined : fromWhole(sum);
  };
  const start = missAt(0);
  if (start === undefined) return { kind: 'none', why: 'notPlaced' };
  // Compound wheels multiply the miss by their factors, so the step shrinks with the largest.
  const step = STEP / Math.max(...factors.map((factor) => Math.abs(Number(factor))));
  const before: Record<1 | -1, number | undefined> = { 1: start, [-1]: start };
  for (let steps = 1; steps <= Math.min(reach / step, MOST_STEPS); steps++) {
    for (const way of [1, -1] as const) {
      const last = before[way];
      if (last === undefined) continue;
      const here = missAt(way * steps * step);
      before[way] = here;
      // A change of sign without the jump from half a tooth to minus half.
      if (here === undefined || last * here > 0 || Math.abs(last - here) > 0.5) continue;
      return cureAt(ring, places, mover, closeIn(missAt, way * (steps - 1) * step, way * steps * step, last));
    }
  }
  return { kind: 'none', why: 'nowhere' };
}

/** Halves the span until the place is known to 1e-9 mm. */
function closeIn(missAt: (amount: number) => number | undefined, from: number, to: number, missFrom: number): number {
  let [low, high, missLow] = [from, to, missFrom];
  while (Math.abs(high - low) > 1e-10) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const miss = missAt(middle);
    if (miss === undefined) break;
    if (miss * missLow > 0) [low, missLow] = [middle, miss];
    else high = middle;
  }
  return (low + high) / 2;
}

function cureAt(ring: MeshRing, places: Places, mover: Mover, amount: number): RingCure {
  const there = mover(amount);
  if (!there) return { kind: 'none', why: 'motionEnds' };
  const moved = ring.bodies.flatMap((arbor) => {
    const [from, to] = [places.get(arbor), there.get(arbor)];
    if (!from || !to) return [];
    const distance = Math.hypot(to.x - from.x, to.y - from.y);
    return distance > HOLDS ? [{ arbor, from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y }, distance }] : [];
  });
  return { kind: 'closes', amount, moved };
}
