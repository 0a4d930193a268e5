/** The gap between any two parts: what the maker measures on the drawing, and what a remedy is judged by. */

import type { Point } from '../../geometry/index.ts';
import type { PartId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Solid } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import { heightGapOf, sizeAlong } from './gapReadings.ts';
import { planGapOf } from './planGap.ts';

/** The gap of two parts and where it is. */
export interface PartGap {
  /** Smallest gap, mm; negative where the two share space. */
  readonly gap: number;
  /** `plan` side by side, `height` one above the other, `slant` neither. */
  readonly direction: 'plan' | 'height' | 'slant';
  /** Nearest points in plan. */
  readonly at: readonly [Point, Point];
}

/** Smallest gap between two parts of a placed movement, or undefined where one of them has no body or both are fixed outlines. */
export function gapBetween(placed: PlacedMovement, first: PartId, second: PartId): PartGap | undefined {
  return gapOfSolids(solidsOf(placed), first, second);
}

/** As `gapBetween`, on solids already made. */
export function gapOfSolids(solids: readonly Solid[], first: PartId, second: PartId): PartGap | undefined {
  const others = solids.filter((solid) => solid.part === second);
  let best: PartGap | undefined;
  for (const a of solids) {
    if (a.part !== first) continue;
    for (const b of others) {
      const next = gapOfTwo(a, b);
      if (next && (!best || next.gap < best.gap)) best = next;
    }
  }
  return best;
}

function gapOfTwo(a: Solid, b: Solid): PartGap | undefined {
  const plan = planGapOf(a, b);
  if (!plan) return undefined;
  const height = heightGapOf(a, b);
  const at = [
    { x: plan.a.x, y: plan.a.y },
    { x: plan.b.x, y: plan.b.y },
  ] as const;
  // Two that stand in each other: how far they overlap in the direction in which they are parted soonest.
  if (height < 0 && plan.gap < height) return { gap: overlapOf(height, a, b, 'height'), direction: 'height', at };
  if (height < 0) return { gap: overlapOf(plan.gap, a, b, 'plan'), direction: 'plan', at };
  if (plan.gap <= 0) return { gap: height, direction: 'height', at };
  return { gap: Math.hypot(plan.gap, height), direction: height > 0 ? 'slant' : 'plan', at };
}

/** An overlap is never more than the smaller of the two is there. */
function overlapOf(gap: number, a: Solid, b: Solid, direction: 'plan' | 'height'): number {
  return Math.max(gap, -sizeAlong(a, direction), -sizeAlong(b, direction));
}
