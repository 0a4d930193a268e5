/** Exact signs: which side of a line a point is on, by adaptive-precision arithmetic (robust-predicates, y up). */
import { orient2d } from 'robust-predicates';
import type { Point } from './point.ts';

/**
 * Side of `p` seen along the directed line `a` → `b`: 1 left, -1 right, 0 exactly on it.
 *
 * The library's y axis points down, so its sign is turned here and nowhere else.
 */
export function sideOf(a: Point, b: Point, p: Point): -1 | 0 | 1 {
  const area = orient2d(a.x, a.y, b.x, b.y, p.x, p.y);
  return area < 0 ? 1 : area > 0 ? -1 : 0;
}
