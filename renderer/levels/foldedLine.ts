/**
 * The folded line of a section: the axes of the chosen arbors laid out in a row, each at its true distance from the
 * one before, so that wheels in mesh are seen in mesh.
 */

import type { ArborId } from '../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { ONE_PLACE } from '../../solver/tolerances.ts';

/** One axis on the line; the arbor and the pipes that ride on it share it. */
export interface Station {
  /** mm from the first axis. */
  readonly at: number;
  readonly arbors: readonly ArborId[];
}

/** Stations of the arbors in the order given; pipes join the axis that they ride on. */
export function stationsOf(placed: PlacedMovement, order: readonly ArborId[]): readonly Station[] {
  const stations: { at: number; x: number; y: number; arbors: ArborId[] }[] = [];
  for (const id of order) {
    const place = placed.places.get(id);
    if (!place) continue;
    const known = stations.find(({ x, y }) => Math.hypot(x - place.x, y - place.y) < ONE_PLACE);
    if (known) {
      known.arbors.push(id);
      continue;
    }
    const last = stations.at(-1);
    const at = last ? last.at + Math.hypot(place.x - last.x, place.y - last.y) : 0;
    stations.push({ at, x: place.x, y: place.y, arbors: [id] });
  }
  return stations;
}
