/**
 * The one file that imports planck: candidate pairs by its dynamic tree, and bodies for the rehearsal.
 *
 * Its traps: the tree fattens its boxes, so a hit is a candidate and never an answer; slop and skin of its bodies are
 * absolute and global, so the rehearsal scales its lengths.
 */
import { AABB, DynamicTree, Vec2 } from 'planck';
import type { Bounds } from '../geometry/index.ts';

/** Boxes that can be moved, and asked which of them come near a box. */
export interface NearTree {
  /** Moves the box of an index. */
  readonly move: (index: number, box: Bounds) => void;
  /** Calls `visit` for every index whose box comes within `margin` mm of the given one (and for some that do not). */
  readonly near: (box: Bounds, margin: number, visit: (index: number) => void) => void;
}

/** A tree of boxes; the index of a box is its place in the list. */
export function nearTreeOf(boxes: readonly Bounds[]): NearTree {
  const tree = new DynamicTree<number>();
  const proxies = boxes.map((box, index) => tree.createProxy(boxOf(box, 0), index));
  const still = new Vec2(0, 0);
  return {
    move: (index, box) => {
      const proxy = proxies[index];
      if (proxy !== undefined) tree.moveProxy(proxy, boxOf(box, 0), still);
    },
    near: (box, margin, visit) => {
      tree.query(boxOf(box, margin), (proxy) => {
        visit(tree.getUserData(proxy));
        return true;
      });
    },
  };
}

function boxOf([minX, minY, maxX, maxY]: Bounds, margin: number): AABB {
  return new AABB(new Vec2(minX - margin, minY - margin), new Vec2(maxX + margin, maxY + margin));
}
