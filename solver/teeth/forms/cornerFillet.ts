/**
 * A rounded root corner under any flank: a circle that touches the root circle and just touches the flank.
 *
 * With its centre at radius c and angle γ, the circle clears the flank when γ ≥ half(r) + opening(r) everywhere; it
 * touches where that is an equality, so γ is the maximum and the radius of the maximum is where the corner begins.
 */
import { highestBetween } from './bracketed.ts';
import { circlePiece, openingAt } from './flankCurves.ts';
import type { FlankPiece } from './toothForm.ts';

/**
 * A fillet that touches root and flank: the polar angle of its centre, radians, the radius at which it meets the
 * flank, and the radius of its centre, mm.
 */
interface Corner {
  readonly gamma: number;
  readonly touches: number;
  readonly centre: number;
}

function cornerOf(
  half: (radius: number) => number,
  root: number,
  radius: number,
  outer: number,
  internal: boolean,
): Corner {
  const centre = internal ? root - radius : root + radius;
  const [low, high] = internal ? [Math.max(outer, centre - radius), root] : [root, Math.min(outer, centre + radius)];
  const over = (r: number) => half(r) + openingAt(r, centre, radius);
  const touches = highestBetween(over, low, high, 1e-12 * root);
  return { gamma: over(touches), touches, centre };
}

/**
 * The flank with its root corner rounded: the fillet piece and the radius where it ends. When the wished corner is too
 * wide for the space it becomes a full round (both corners in one circle). `undefined` when there is no room at all.
 *
 * @param half   the flank below (above, for a ring) `outer`, down to the root
 * @param step   half of the angular pitch
 * @param outer  radius beyond which the corner may not reach
 */
export function cornerFillet(
  half: (radius: number) => number,
  root: number,
  wished: number,
  outer: number,
  step: number,
  internal: boolean,
): { readonly piece: FlankPiece; readonly touches: number } | undefined {
  const room = Math.abs(outer - root);
  let radius = Math.min(wished, 0.98 * room, internal ? root / 3 : Number.POSITIVE_INFINITY);
  if (!(radius > 1e-9 * root) || half(root) >= step) return undefined;
  let corner = cornerOf(half, root, radius, outer, internal);
  if (corner.gamma > step) {
    let [low, high] = [0, radius];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (cornerOf(half, root, middle, outer, internal).gamma > step) high = middle;
      else low = middle;
    }
    radius = low;
    corner = cornerOf(half, root, radius, outer, internal);
  }
  const at: readonly [number, number] = [
    corner.centre * Math.cos(corner.gamma),
    corner.centre * Math.sin(corner.gamma),
  ];
  const [from, to] = internal ? [corner.touches, root] : [root, corner.touches];
  return { piece: circlePiece('fillet', at, radius, false, from, to), touches: corner.touches };
}
