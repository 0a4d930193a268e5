/** Parts of a movement by any of their ids. */
import type { PartId, PointId } from '../../../solver/movement/ids.ts';
import type { Movement, Opening, Plate, Wall } from '../../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../../solver/planting/placed.ts';

export type CasePart = Plate | Wall | Opening;

/** Points that belong to a part: a wheel's arbor, or the point itself. */
export function pointOf(placed: PlacedMovement, part: string): PointId | undefined {
  const wheel = placed.movement.wheels.find(({ id }) => id === part);
  const id = (wheel?.arbor ?? part) as PointId; // looked up at once; a part that is no point is not found
  return placed.places.has(id) ? id : undefined;
}

/** The part of the case that has an id. */
export function casePartOf(movement: Movement, id: PartId | undefined): CasePart | undefined {
  const { plates, walls, openings } = movement;
  return [...plates, ...walls, ...openings].find((part) => part.id === id);
}
