/** Whether parts of the work lie where the title block would stand. */

import type { Point } from '../../solver/geometry/index.ts';
import { boundsOfOutline, nearestOnOutline } from '../../solver/geometry/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { ringsOf } from '../gestures/outline/handles.ts';
import { casePartOf } from '../state/derive/parts.ts';
import type { Sizes } from '../state/derive/sizes.ts';
import { toScreen, toWorld, type View } from '../state/view.ts';

/** A box on the bench, CSS pixels. */
export interface ScreenBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** How far a place's sign and name reach, CSS pixels. */
const SIGN_PX = 16;

/** Does a wheel, a post, a place or an outline reach into the box? */
export function isUnder({ movement, places }: PlacedMovement, sizes: Sizes, view: View, box: ScreenBox): boolean {
  const reaches = (centre: Point, radiusPx: number): boolean => {
    const { x, y } = toScreen(view, centre);
    const dx = x - Math.min(Math.max(x, box.left), box.right);
    const dy = y - Math.min(Math.max(y, box.top), box.bottom);
    return Math.hypot(dx, dy) < radiusPx;
  };
  for (const place of places.values()) if (reaches(place, SIGN_PX)) return true;
  for (const { id, arbor } of movement.wheels) {
    const place = places.get(arbor);
    const size = sizes.get(id);
    if (place && size && reaches(place, Math.max(size.tipRadius, size.rootRadius) * view.scale)) return true;
  }
  for (const { id, diameter } of movement.posts) {
    const place = places.get(id);
    if (place && reaches(place, (diameter / 2) * view.scale)) return true;
  }
  return [...movement.plates, ...movement.walls, ...movement.openings].some(({ id }) => {
    const part = casePartOf(movement, id);
    return part !== undefined && ringsOf(part).some(([, outline]) => lineEnters(outline, view, box));
  });
}

/** Does the line of an outline pass through the box? Told by the nearest point of the outline from places along the box's middle. */
function lineEnters(outline: Parameters<typeof nearestOnOutline>[0], view: View, box: ScreenBox): boolean {
  const [minX, minY, maxX, maxY] = boundsOfOutline(outline);
  const low = toScreen(view, { x: minX, y: minY });
  const high = toScreen(view, { x: maxX, y: maxY });
  if (high.x < box.left || low.x > box.right || low.y < box.top || high.y > box.bottom) return false;
  // Squares side by side, as high as the box, cover it.
  const half = (box.bottom - box.top) / 2;
  for (let x = box.left + half; x < box.right + half; x += 2 * half) {
    const middle = toWorld(view, { x: Math.min(x, box.right - half), y: box.top + half });
    const { distance } = nearestOnOutline(outline, { x: middle.x, y: middle.y });
    if (distance * view.scale < half) return true;
  }
  return false;
}
