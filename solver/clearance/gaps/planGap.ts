/** Gaps in plan between two solids: exact for rings against rings and against filled outlines. */
import {
  type Bounds,
  boundsOfOutline,
  farthestOnOutline,
  type Point,
  signedDistanceToRegion,
} from '../../geometry/index.ts';
import type { RegionSolid, RingSolid, Solid } from '../solids/solid.ts';

/** A gap in plan, mm (negative: overlap), and the two nearest surface points. */
export interface PlanGap {
  readonly gap: number;
  readonly a: Point;
  readonly b: Point;
}

/** Bounds of a solid in plan. */
export function boundsOfSolid(solid: Solid): Bounds {
  if (solid.shape === 'region') return boundsOfOutline(solid.region.outer);
  const { x, y } = solid.centre;
  return [x - solid.outer, y - solid.outer, x + solid.outer, y + solid.outer];
}

/**
 * Smallest gap in plan, or undefined for two filled outlines, which are fixed parts of the case.
 * Overlap is told as the smallest movement that would part the two.
 */
export function planGapOf(first: Solid, second: Solid): PlanGap | undefined {
  if (first.shape === 'ring') {
    return second.shape === 'ring' ? ringsGap(first, second) : ringRegionGap(first, second);
  }
  if (second.shape !== 'ring') return undefined;
  const { gap, a, b } = ringRegionGap(second, first);
  return { gap, a: b, b: a };
}

/** Two rings: side by side, or one inside the hole of the other; the roomiest reading is the true one. */
function ringsGap(first: RingSolid, second: RingSolid): PlanGap {
  const dx = second.centre.x - first.centre.x;
  const dy = second.centre.y - first.centre.y;
  const d = Math.hypot(dx, dy);
  const u: Point = d > 0 ? { x: dx / d, y: dy / d } : { x: 1, y: 0 };
  const at = (ring: RingSolid, radius: number, sign: number): Point => ({
    x: ring.centre.x + sign * radius * u.x,
    y: ring.centre.y + sign * radius * u.y,
  });
  const beside = d - first.outer - second.outer;
  const secondInFirst = first.inner > 0 ? first.inner - d - second.outer : Number.NEGATIVE_INFINITY;
  const firstInSecond = second.inner > 0 ? second.inner - d - first.outer : Number.NEGATIVE_INFINITY;
  if (beside >= secondInFirst && beside >= firstInSecond) {
    return { gap: beside, a: at(first, first.outer, 1), b: at(second, second.outer, -1) };
  }
  if (secondInFirst >= firstInSecond) {
    return { gap: secondInFirst, a: at(first, first.inner, 1), b: at(second, second.outer, 1) };
  }
  return { gap: firstInSecond, a: at(first, first.outer, -1), b: at(second, second.inner, -1) };
}

function ringRegionGap(ring: RingSolid, solid: RegionSolid): PlanGap {
  const near = signedDistanceToRegion(solid.region, ring.centre);
  const gap = near.distance - ring.outer;
  const dx = near.a.x - ring.centre.x;
  const dy = near.a.y - ring.centre.y;
  const d = Math.hypot(dx, dy) || 1;
  const sign = near.distance < 0 ? -1 : 1;
  const surface: Point = {
    x: ring.centre.x + (sign * ring.outer * dx) / d,
    y: ring.centre.y + (sign * ring.outer * dy) / d,
  };
  if (ring.inner > 0) {
    const around = ring.inner - farthestOnOutline(solid.region.outer, ring.centre);
    if (around > gap) return { gap: around, a: near.a, b: near.a };
  }
  return { gap, a: surface, b: near.a };
}
