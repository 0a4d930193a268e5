/** How the teeth of all wheels stand in mesh before anything turns. */

import type { ArborId, WheelId } from '../../../solver/movement/ids.ts';
import type { PlacedMovement } from '../../../solver/planting/placed.ts';
import { rollingPhases, toothPhases } from '../../../solver/train/index.ts';
import { forSame } from './forSame.ts';

/** Drawing angle of a tooth of every wheel, radians. */
export type Phases = ReadonlyMap<string, number>;

/** Wheels beyond which the rings of a movement take longer to close than a frame of a drag may (83 ms for 1000 measured). */
const MANY_WHEELS = 200;
const RADIANS = Math.PI / 180;

/** The angle of each wheel's first tooth, radians from +x. */
export function restPhases({ movement, places }: PlacedMovement): Phases {
  const { angleDeg } = toothPhases(movement, places);
  return new Map([...angleDeg].map(([wheel, degrees]) => [wheel, degrees * RADIANS]));
}

/**
 * The same while a drag is under way: of a large movement, the wheels that were carried away from where they stand
 * roll on their mates, and rings wait until it is over.
 *
 * @param before the phases of `settled`
 */
export function passingPhases(placed: PlacedMovement, settled: PlacedMovement, before: Phases): Phases {
  if (placed.movement.wheels.length <= MANY_WHEELS) return restPhases(placed);
  const moved = new Set<ArborId>();
  for (const { id } of placed.movement.arbors) {
    const [now, then] = [placed.places.get(id), settled.places.get(id)];
    if (now && (now.x !== then?.x || now.y !== then.y)) moved.add(id);
  }
  if (moved.size === 0) return before;
  const phases = new Map(before);
  for (const [wheel, degrees] of rolling(placed, settled, before)(placed.places, moved)) {
    phases.set(wheel, degrees * RADIANS);
  }
  return phases;
}

/** Prepared once for a drag, and again for each set of rules that it settles on. */
const rolling = forSame(
  (placed: PlacedMovement, settled: PlacedMovement, before: Phases) => [placed.movement, settled, before],
  ({ movement }, settled, before) => {
    const standing = new Map([...before].map(([wheel, angle]) => [wheel as WheelId, angle / RADIANS])); // phases are listed by wheel
    return rollingPhases(movement, standing, settled.places);
  },
);
