/** From where the place of a point is told as a radius and an angle. */
import { boundsOfOutline } from '../../solver/geometry/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Rule } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** The place that radius and angle are told about, mm, and the point that stands there; none for a plate's centre. */
export interface PolarCentre {
  readonly x: number;
  readonly y: number;
  readonly from?: PointId;
}

/**
 * The centre of the point's own radius rule, else the first held point, else the middle of the first plate.
 *
 * @param rules the rules that the point is in
 * @returns     undefined for the held point that the others are told about, and where nothing is held and no plate is
 */
export function polarOf(
  { movement, places }: PlacedMovement,
  point: PointId,
  rules: readonly Rule[],
): PolarCentre | undefined {
  const radius = rules.find((rule) => rule.kind === 'radius' && rule.point === point && !rule.leaveOut);
  const held = movement.rules.find((rule) => rule.kind === 'held' && !rule.leaveOut);
  const from = radius?.kind === 'radius' ? radius.centre : held?.kind === 'held' ? held.point : undefined;
  if (from === point) return undefined;
  const place = from === undefined ? undefined : places.get(from);
  if (place) return { x: place.x, y: place.y, from: place.id };
  const [plate] = movement.plates;
  if (!plate) return undefined;
  const [left, low, right, high] = boundsOfOutline(plate.outline);
  return { x: (left + right) / 2, y: (low + high) / 2 };
}
