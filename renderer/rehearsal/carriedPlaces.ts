/** Where carried arbors stand once their arms have turned. A picture only: the planting itself stays as it is. */
import type { Rational, Turning } from '../../solver/gearing/index.ts';
import type { ArborId } from '../../solver/movement/index.ts';
import type { Place, PlacedMovement } from '../../solver/planting/index.ts';
import { turnedAngle } from './turnedPhases.ts';

type Plane = Pick<Place, 'x' | 'y'>;

/**
 * The planting with every carried arbor brought round by its arm, arms on arms included; `placed` itself where
 * nothing is carried or nothing has turned.
 */
export function carriedPlaces(placed: PlacedMovement, turning: Turning, turned: Rational): PlacedMovement {
  if (turned.n === 0n || !placed.movement.couplings.some(({ kind }) => kind === 'carrier')) return placed;
  const moved = new Map<ArborId, Plane | undefined>();
  const placeOf = (arbor: ArborId): Plane | undefined => {
    if (moved.has(arbor)) return moved.get(arbor);
    const rest = placed.places.get(arbor);
    moved.set(arbor, rest); // an arm that were carried by itself would find its place at rest
    const arm = turning.arbors.get(arbor)?.carrier?.arm;
    const armRest = arm && placed.places.get(arm);
    const armNow = arm && placeOf(arm);
    if (!rest || !arm || !armRest || !armNow) return rest;
    const angle = turnedAngle(turning, arm, turned);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [dx, dy] = [rest.x - armRest.x, rest.y - armRest.y];
    const now = { x: armNow.x + cos * dx - sin * dy, y: armNow.y + sin * dx + cos * dy };
    moved.set(arbor, now);
    return now;
  };
  const places = new Map(placed.places);
  for (const { id } of placed.movement.arbors) {
    const [rest, now] = [placed.places.get(id), placeOf(id)];
    if (rest && now && now !== rest) places.set(id, { ...rest, ...now });
  }
  return { ...placed, places };
}
