/**
 * What lies under a pixel. Tolerances are CSS pixels at every zoom; the nearest sign wins over the smallest wheel,
 * a wheel over the case.
 */

import type { Point } from '../../solver/geometry/index.ts';
import { asPoint, containsPoint, nearestOnOutline } from '../../solver/geometry/index.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Outline } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { WheelSize } from '../../solver/teeth/index.ts';
import { toWorld, type View } from '../state/view.ts';

export type HitKind = 'arbor' | 'post' | 'mark' | 'wheel' | 'wall' | 'plate' | 'opening';

/** What was hit. */
export interface Hit {
  readonly kind: HitKind;
  readonly part: PartId;
  /** The point that moves when this is dragged. */
  readonly point?: PointId;
}

/** Reach of a place's sign and of a line. A finger is blunter than a pointer. */
export const SIGN_REACH_PX = 11;
export const LINE_REACH_PX = 5;
export const FINGER_REACH_PX = 22;

/** Where to look, and on what. */
export interface HitQuestion {
  readonly placed: PlacedMovement;
  readonly sizes: ReadonlyMap<string, WheelSize>;
  readonly view: View;
  readonly pixel: Point;
  readonly finger?: boolean;
}

/** The part under a pixel, or nothing. */
export function hitAt(question: HitQuestion): Hit | undefined {
  return nearestSign(question) ?? wheelUnder(question) ?? postUnder(question) ?? caseUnder(question);
}

function nearestSign({ placed, view, pixel, finger }: HitQuestion): Hit | undefined {
  const at = toWorld(view, pixel);
  let best = (finger ? FINGER_REACH_PX : SIGN_REACH_PX) / view.scale;
  let found: Hit | undefined;
  const look = (kind: 'arbor' | 'post' | 'mark', ids: readonly { readonly id: PointId }[]): void => {
    for (const { id } of ids) {
      const place = placed.places.get(id);
      if (!place) continue;
      const away = Math.hypot(place.x - at.x, place.y - at.y);
      // A pipe stands where its arbor stands: the first, the carrying arbor, is the one that is meant.
      if (away < best - 1e-9) {
        best = away;
        found = { kind, part: id, point: id };
      }
    }
  };
  look('arbor', placed.movement.arbors);
  look('post', placed.movement.posts);
  look('mark', placed.movement.marks);
  return found;
}

/** The smallest wheel whose body or tip circle lies under the pixel. */
function wheelUnder({ placed, sizes, view, pixel }: HitQuestion): Hit | undefined {
  const at = toWorld(view, pixel);
  const reach = LINE_REACH_PX / view.scale;
  let best = Number.POSITIVE_INFINITY;
  let found: Hit | undefined;
  for (const wheel of placed.movement.wheels) {
    const place = placed.places.get(wheel.arbor);
    const size = sizes.get(wheel.id);
    if (!place || !size) continue;
    const away = Math.hypot(place.x - at.x, place.y - at.y);
    const radius = Math.max(size.tipRadius, size.rootRadius);
    const inside = wheel.internal ? Math.abs(away - size.pitchRadius) < reach + size.addendum : away < radius + reach;
    if (inside && radius < best) {
      best = radius;
      found = { kind: 'wheel', part: wheel.id, point: wheel.arbor };
    }
  }
  return found;
}

function postUnder({ placed, view, pixel }: HitQuestion): Hit | undefined {
  const at = toWorld(view, pixel);
  for (const post of placed.movement.posts) {
    const place = placed.places.get(post.id);
    if (!place) continue;
    const away = Math.hypot(place.x - at.x, place.y - at.y);
    if (away < post.diameter / 2 + LINE_REACH_PX / view.scale) return { kind: 'post', part: post.id, point: post.id };
  }
  return undefined;
}

function caseUnder({ placed, view, pixel }: HitQuestion): Hit | undefined {
  const at = toWorld(view, pixel);
  const point = [at.x, at.y] as const;
  const reach = LINE_REACH_PX / view.scale;
  const near = (outline: Outline): boolean => nearestOnOutline(outline, asPoint(point)).distance < reach;
  for (const wall of placed.movement.walls) {
    const solid =
      containsPoint(wall.outline, asPoint(point)) && !(wall.inner && containsPoint(wall.inner, asPoint(point)));
    const onLine = near(wall.outline) || (wall.inner ? near(wall.inner) : false);
    if ((wall.inner && solid) || onLine) return { kind: 'wall', part: wall.id };
  }
  for (const opening of placed.movement.openings) {
    if (near(opening.outline)) return { kind: 'opening', part: opening.id };
  }
  for (const plate of placed.movement.plates) {
    if (near(plate.outline)) return { kind: 'plate', part: plate.id };
  }
  return undefined;
}

/** Points whose place lies in a rectangle given by two pixels. */
export function pointsWithin(placed: PlacedMovement, view: View, a: Point, b: Point): PointId[] {
  const from = toWorld(view, a);
  const to = toWorld(view, b);
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [low, high] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  return [...placed.places.values()]
    .filter(({ x, y }) => x >= left && x <= right && y >= low && y <= high)
    .map(({ id }) => id);
}
