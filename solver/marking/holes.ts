/**
 * The holes of a plate, from what its points ask of it (`needsOfPlate`, which the check asks as well).
 *
 * Points at one place (pipes on an arbor) share one hole, of the largest diameter asked for.
 */

import { needsOfPlate, type PlateNeed } from '../clearance/bodies/index.ts';
import type { Movement } from '../movement/schema.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import { ONE_PLACE } from '../tolerances.ts';
import type { Hole } from './marks.ts';
import { namer } from './names.ts';

/**
 * The holes of a plate in the movement's own coordinates (upper face, x right, y up), in the order of the file.
 *
 * Loose and contested points give no hole: their place is not settled.
 *
 * @param plateId may be left out for a movement without plates
 */
export function holesOf(placed: PlacedMovement, plateId?: string): readonly Hole[] {
  const label = namer(placed.movement);
  const holes: Hole[] = [];
  const cells = new Map<string, number>();
  for (const need of needsOfPlate(placed, plateId)) {
    const place = placed.places.get(need.id);
    if (place?.state !== 'planted' || need.diameter <= 0) continue;
    const cell = `${Math.round(place.x / ONE_PLACE)},${Math.round(place.y / ONE_PLACE)}`;
    const at = cells.get(cell);
    const shared = at === undefined ? undefined : holes[at];
    if (at !== undefined && shared) {
      holes[at] = joined(shared, need, label(need.id));
      continue;
    }
    cells.set(cell, holes.length);
    holes.push({
      id: need.id,
      points: [need.id],
      label: label(need.id),
      x: place.x,
      y: place.y,
      diameter: need.diameter,
      through: true,
      state: stateOf(placed.movement, need.id, plateId),
      finish: need.finish,
      ...(need.note === undefined ? {} : { note: need.note }),
    });
  }
  return holes;
}

function joined(hole: Hole, need: PlateNeed, label: string): Hole {
  const larger = need.diameter > hole.diameter;
  return {
    ...hole,
    points: [...hole.points, need.id],
    label: `${hole.label} / ${label}`,
    diameter: Math.max(hole.diameter, need.diameter),
    finish: larger ? need.finish : hole.finish,
  };
}

/** What was made of a point on a plate; the last entry counts. */
export function stateOf(movement: Movement, point: string, plateId: string | undefined): Hole['state'] {
  let state: Hole['state'] = 'toMark';
  for (const made of movement.made) {
    if (made.point !== point) continue;
    if (made.plate === undefined || plateId === undefined || made.plate === plateId) state = made.state;
  }
  return state;
}
