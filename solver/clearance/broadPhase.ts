/**
 * Candidate pairs by planck's dynamic tree: the one file that imports planck's collision part.
 *
 * The tree fattens its boxes (0.1 units), so a hit is a candidate and never an answer; each pair is told once.
 */
import { AABB, DynamicTree, Vec2 } from 'planck';
import type { Bounds } from '../geometry/index.ts';

/** Calls `visit(i, j)` with i < j once for every two boxes that come within `margin` mm of each other (and for some that do not). */
export function visitNearPairs(boxes: readonly Bounds[], margin: number, visit: (i: number, j: number) => void): void {
  const tree = new DynamicTree<number>();
  boxes.forEach((box, index) => {
    tree.createProxy(boxOf(box, 0), index);
  });
  boxes.forEach((box, index) => {
    tree.query(boxOf(box, margin), (proxy) => {
      const other = tree.getUserData(proxy);
      if (other > index) visit(index, other);
      return true;
    });
  });
}

function boxOf([minX, minY, maxX, maxY]: Bounds, margin: number): AABB {
  return new AABB(new Vec2(minX - margin, minY - margin), new Vec2(maxX + margin, maxY + margin));
}
