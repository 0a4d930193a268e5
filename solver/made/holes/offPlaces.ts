/** Drilled holes that stand off their places, and what to do about each within the maker's own limits. */
import { asPoint, type Region, signedDistanceToRegion } from '../../geometry/index.ts';
import { holesOf, platesOf, plateViewOf } from '../../marking/index.ts';
import type { PlateId, PointId } from '../../movement/ids.ts';
import { applyEdit, type Edit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type Cure, curesFor } from './cure.ts';

/** A drilled hole that is not where it should be. */
export interface OffPlace {
  readonly point: PointId;
  /** From where the hole is to where it should be, in the movement's coordinates, mm. */
  readonly dx: number;
  readonly dy: number;
  /** Finished diameter of the hole, mm. */
  readonly diameter: number;
  /** Widest that the hole may be opened where it stands, mm; unbounded where nothing is near it. */
  readonly room: number;
  /** The best first, as seen on the marked face. */
  readonly cures: readonly Cure[];
}

/** Drilled points that stand off the place that the rules and the other points give them. */
export function offPlaces(movement: Movement): readonly OffPlace[] {
  const drilled = movement.made.filter(({ at }) => at !== undefined);
  const { leastWall, leaveWithin, plugBeyond, widestHole } = movement.cures;
  return drilled.flatMap(({ point, plate, at }): OffPlace[] => {
    const clear: Edit = { kind: 'clearMade', point, ...(plate === undefined ? {} : { plate }) };
    const without = applyEdit(movement, clear);
    if (without.kind === 'refused' || !at) return [];
    const planned = plantMovement(without.movement);
    const place = planned.places.get(point);
    if (place?.state !== 'planted') return [];
    const [dx, dy] = [place.x - at[0], place.y - at[1]];
    const on =
      plate ?? platesOf(movement).find((id) => holesOf(planned, id).some((hole) => hole.points.includes(point)));
    const hole = holesOf(planned, on).find((each) => each.points.includes(point));
    if (!hole || Math.hypot(dx, dy) === 0) return [];
    const room = Math.min(widestHole ?? Number.POSITIVE_INFINITY, roomAt(planned, on, point, at));
    const seen = plateViewOf(movement, on).see({ x: dx, y: dy });
    const limits = { leaveWithin, leastWall, plugBeyond, roomDiameter: room };
    const { diameter } = hole;
    return [{ point, dx, dy, diameter, room, cures: curesFor(seen.x, seen.y, { diameter, ...limits }) }];
  });
}

/** Widest hole about `at` that leaves the least wall to its neighbours, to openings and to the edge of the plate, mm. */
function roomAt(
  planned: PlacedMovement,
  on: PlateId | undefined,
  point: PointId,
  at: readonly [number, number],
): number {
  const { movement } = planned;
  const { leastWall } = movement.cures;
  const neighbours = holesOf(planned, on)
    .filter(({ points }) => !points.includes(point))
    .map(({ x, y, diameter }) => Math.hypot(x - at[0], y - at[1]) - diameter / 2);
  const plate = movement.plates.find(({ id }) => id === on);
  const holes = movement.openings.filter((opening) => opening.plate === on).map(({ outline }) => outline);
  const region: Region | undefined = plate && { outer: plate.outline, holes };
  const edge = region ? [-signedDistanceToRegion(region, asPoint(at)).distance] : [];
  return Math.max(0, 2 * (Math.min(Number.POSITIVE_INFINITY, ...neighbours, ...edge) - leastWall));
}
