/** What is asked when a dragged place looks for rules to settle on. */

import type { Point } from '../../solver/geometry/index.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** Where to look, and how lengths are written. */
export interface SnapQuestion {
  readonly placed: PlacedMovement;
  readonly point: PointId;
  /** The point and whatever moves along with it (`movesWith`). */
  readonly moving: ReadonlySet<PointId>;
  readonly target: Point;
  /** How near a locus must be to be worth offering, mm. */
  readonly reach: number;
  readonly nameOf: (id: PartId) => string;
  readonly lengthSays: (mm: number) => string;
}

/** Is the target within `reach` of a circle? */
export function isNear(centre: Point, radius: number, target: Point, reach: number): boolean {
  return Math.abs(Math.hypot(target.x - centre.x, target.y - centre.y) - radius) <= reach;
}
