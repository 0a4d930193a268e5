/** How the teeth of all wheels stand in mesh before anything turns. */
import { toothPhases } from '../../solver/gearing/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';

export type Phases = ReadonlyMap<string, number>;

/** Wheels beyond which the rings of a movement take longer to close than a frame of a drag may (83 ms for 1000 measured). */
const MANY_WHEELS = 200;

/**
 * Drawing angle of a tooth of every wheel, radians.
 *
 * @param passing a drag is under way: with many wheels the angles of `before` are kept until it is over
 */
export function restPhases(placed: PlacedMovement, passing: boolean, before?: Phases): Phases {
  const { movement, places } = placed;
  if (passing && before && movement.wheels.length > MANY_WHEELS) return before;
  const { angleDeg } = toothPhases(movement, places);
  return new Map([...angleDeg].map(([wheel, degrees]) => [wheel, (degrees * Math.PI) / 180]));
}
