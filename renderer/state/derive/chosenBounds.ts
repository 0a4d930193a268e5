/** How far chosen parts reach in plan, for zooming to them. */

import { boundsOfOutline } from '../../../solver/geometry/index.ts';
import type { PlacedMovement } from '../../../solver/planting/placed.ts';
import type { ViewBounds } from '../view.ts';
import { casePartOf, pointOf } from './parts.ts';
import type { Sizes } from './sizes.ts';

/** Room shown about a place that has no wheel, mm: a post is seen with its neighbours. */
const BARE = 15;

/** Bounds of all these parts, mm; undefined where none of them has a place or an outline. */
export function chosenBounds(parts: Iterable<string>, placed: PlacedMovement, sizes: Sizes): ViewBounds | undefined {
  const boxes = [...parts].flatMap((part): ViewBounds[] => {
    const shaped = casePartOf(placed.movement, part as Parameters<typeof casePartOf>[1]); // an id that is no case part finds none
    if (shaped) return [boundsOfOutline(shaped.outline)];
    const point = pointOf(placed, part);
    const place = point && placed.places.get(point);
    const radius = sizes.get(part)?.tipRadius ?? BARE;
    return place ? [[place.x - radius, place.y - radius, place.x + radius, place.y + radius]] : [];
  });
  if (boxes.length === 0) return undefined;
  return [
    Math.min(...boxes.map(([minX]) => minX)),
    Math.min(...boxes.map(([, minY]) => minY)),
    Math.max(...boxes.map(([, , maxX]) => maxX)),
    Math.max(...boxes.map(([, , , maxY]) => maxY)),
  ];
}
