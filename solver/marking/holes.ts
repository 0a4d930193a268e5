/**
 * The holes of a plate, from the bearings of arbors and the fixings of posts and marks.
 *
 * Points at one place (pipes on an arbor) share one hole, of the largest diameter asked for.
 */

import type { PointId } from '../movement/ids.ts';
import type { Arbor, Movement, Plate } from '../movement/schema.ts';
import type { PlacedMovement } from '../planting/placed.ts';
import { ONE_PLACE } from '../tolerances.ts';
import type { Hole } from './marks.ts';
import { namer } from './names.ts';

/** What one point asks of a plate. */
export interface PlateNeed {
  readonly id: PointId;
  /** Finished diameter, mm; 0 where the point is only pricked. */
  readonly diameter: number;
  readonly finish: 'drill' | 'ream';
  readonly note?: string;
}

/**
 * Every point that belongs to a plate, in the order of the file.
 *
 * An arbor belongs where a bearing says so (by plate, or by a height within the plate); one without bearings belongs to
 * the first plate, at its own diameter. Posts and marks belong to their plate, or to every plate where none is named.
 * A collar bearing stands on the plate and asks for the arbor's clearance only, so its bore counts.
 */
export function needsOfPlate(movement: Movement, plateId: string | undefined): readonly PlateNeed[] {
  const plate = movement.plates.find((each) => each.id === plateId);
  const first = movement.plates[0]?.id;
  const isFirst = plateId === undefined || plateId === first;
  const needs: PlateNeed[] = [];
  for (const arbor of movement.arbors) {
    const need = needOfArbor(arbor, plate, isFirst);
    if (need) needs.push(need);
  }
  const elsewhere = (of: string | undefined) => of !== undefined && plateId !== undefined && of !== plateId;
  for (const post of movement.posts) {
    if (!elsewhere(post.plate)) needs.push({ id: post.id, diameter: post.hole, finish: 'drill' });
  }
  for (const mark of movement.marks) {
    if (!elsewhere(mark.plate)) needs.push({ id: mark.id, diameter: mark.hole, finish: 'drill' });
  }
  return needs;
}

function needOfArbor(arbor: Arbor, plate: Plate | undefined, isFirst: boolean): PlateNeed | undefined {
  if (arbor.bearings.length === 0) {
    if (!isFirst || arbor.ridesOn !== undefined) return undefined;
    return {
      id: arbor.id,
      diameter: arbor.diameter,
      finish: 'drill',
      note: 'no bearing stated: its own diameter',
    };
  }
  let diameter = 0;
  for (const bearing of arbor.bearings) {
    if (!plate ? !isFirst : !standsIn(bearing, plate, isFirst)) continue;
    // A bush or race is seated in a hole of its outer diameter; a collar stands proud, over a hole of its bore.
    const seat = bearing.kind === 'collar' || bearing.outer === undefined ? bearing.bore : bearing.outer;
    diameter = Math.max(diameter, seat);
  }
  return diameter > 0 ? { id: arbor.id, diameter, finish: 'ream' } : undefined;
}

function standsIn(bearing: Arbor['bearings'][number], plate: Plate, isFirst: boolean): boolean {
  if (bearing.plate !== undefined) return bearing.plate === plate.id;
  if (bearing.at === undefined) return isFirst;
  return bearing.at < plate.levels.to && bearing.at + bearing.length > plate.levels.from;
}

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
  for (const need of needsOfPlate(placed.movement, plateId)) {
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
