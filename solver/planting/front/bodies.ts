/**
 * Outlines that a stated gap is kept between: circles that go with a point, and boundaries of the case.
 *
 * A part inside a ring keeps its gap inside. What counts as inside is decided by the sketch, so that the answer
 * depends on the document alone.
 */

import type { Point } from '../../geometry/index.ts';
import { containsPoint, nearestOnOutline } from '../../geometry/index.ts';
import type { PartId, PointId } from '../../movement/ids.ts';
import type { Movement, Outline, Wall, Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';

/** A circle about a point: the tips of a wheel, an arbor, a post; a mark has radius 0. */
export interface RoundBody {
  readonly kind: 'round';
  readonly point: PointId;
  readonly outer: number;
  /** Radius of the hollow of a ring (the tips of internal teeth), mm. */
  readonly inner?: number;
}

/** An outline of the case that stands still. */
export interface CaseBody {
  readonly kind: 'case';
  /** Which side of an outline is free: walls say so themselves, plates and openings go by the sketch. */
  readonly boundaryAt: (sketch: Point) => { readonly outline: Outline; readonly free: 'inside' | 'outside' };
}

export type Body = RoundBody | CaseBody;

/** Two modules of body outside the roots of internal teeth, as the movement document states. */
const RING_MODULES = 2;

/** Radii of a wheel's body: out to the tips, or for internal teeth from the tips out to the ring's outer edge. */
export function bodyOfWheel(wheel: Wheel, movement: Movement): RoundBody {
  const size = sizeOfWheel(wheel, movement);
  if (!wheel.internal) return { kind: 'round', point: wheel.arbor, outer: size.tipRadius };
  const outer =
    wheel.outerDiameter === undefined ? size.rootRadius + RING_MODULES * size.module : wheel.outerDiameter / 2;
  return { kind: 'round', point: wheel.arbor, outer, inner: size.tipRadius };
}

/** Looks up what a gap can be asked of. */
export function bodiesOf(movement: Movement): (part: PartId) => Body | undefined {
  const makers = new Map<string, () => Body>();
  for (const arbor of movement.arbors) {
    makers.set(arbor.id, () => ({ kind: 'round', point: arbor.id, outer: arbor.diameter / 2 }));
  }
  for (const post of movement.posts) {
    makers.set(post.id, () => ({ kind: 'round', point: post.id, outer: post.diameter / 2 }));
  }
  for (const mark of movement.marks) makers.set(mark.id, () => ({ kind: 'round', point: mark.id, outer: 0 }));
  for (const wheel of movement.wheels) makers.set(wheel.id, () => bodyOfWheel(wheel, movement));
  for (const wall of movement.walls) makers.set(wall.id, () => bodyOfWall(wall));
  for (const { id, outline } of [...movement.plates, ...movement.openings]) {
    makers.set(id, () => ({
      kind: 'case',
      boundaryAt: (sketch) => ({ outline, free: containsPoint(outline, sketch) ? 'inside' : 'outside' }),
    }));
  }
  return (part) => makers.get(part)?.();
}

/** Free outside a wall's outline and inside its inner one; a sketch within the metal goes to the nearer of the two. */
function bodyOfWall({ outline, inner }: Wall): CaseBody {
  const outside = { outline, free: 'outside' } as const;
  if (!inner) return { kind: 'case', boundaryAt: () => outside };
  const inside = { outline: inner, free: 'inside' } as const;
  return {
    kind: 'case',
    boundaryAt: (sketch) => {
      if (containsPoint(inner, sketch)) return inside;
      if (!containsPoint(outline, sketch)) return outside;
      return nearestOnOutline(inner, sketch).distance <= nearestOnOutline(outline, sketch).distance ? inside : outside;
    },
  };
}
