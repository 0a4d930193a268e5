/** How far the work reaches in plan, for fitting it into the window. */

import { boundsOfOutline } from '../../../solver/geometry/index.ts';
import type { PlacedMovement } from '../../../solver/planting/placed.ts';
import type { WheelSize } from '../../../solver/teeth/index.ts';
import type { ViewBounds } from '../view.ts';

/** Bounds of all parts, mm; undefined for an empty movement. */
export function boundsOfWork(
  { movement, places }: PlacedMovement,
  sizes: ReadonlyMap<string, WheelSize>,
): ViewBounds | undefined {
  let [minX, minY, maxX, maxY] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  const take = ([left, low, right, high]: ViewBounds): void => {
    minX = Math.min(minX, left);
    minY = Math.min(minY, low);
    maxX = Math.max(maxX, right);
    maxY = Math.max(maxY, high);
  };
  for (const { outline } of [...movement.plates, ...movement.walls, ...movement.openings]) {
    take(boundsOfOutline(outline));
  }
  const disc = (id: (typeof movement.arbors)[number]['id'] | (typeof movement.posts)[number]['id'], radius: number) => {
    const place = places.get(id);
    if (place) take([place.x - radius, place.y - radius, place.x + radius, place.y + radius]);
  };
  for (const arbor of movement.arbors) disc(arbor.id, arbor.diameter / 2);
  for (const post of movement.posts) disc(post.id, post.diameter / 2);
  for (const { arbor, id } of movement.wheels) {
    const size = sizes.get(id);
    if (size) disc(arbor, Math.max(size.tipRadius, size.rootRadius));
  }
  return minX <= maxX ? [minX, minY, maxX, maxY] : undefined;
}
