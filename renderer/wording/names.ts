/** What things are called: their name, or their id where they have none. */

import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import { isPinion } from '../../solver/teeth/index.ts';

/** "Great wheel", or "wheel of 64 on Centre" where it has no name. */
export function wheelName(wheel: Wheel, arborName: string, movement: Movement): string {
  return wheel.name ?? `${isPinion(wheel, movement) ? 'pinion' : 'wheel'} of ${wheel.teeth} on ${arborName}`;
}

/** Names by id, for everything that has one place or an outline. */
export function namesOf(movement: Movement): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const part of [
    ...movement.arbors,
    ...movement.posts,
    ...movement.marks,
    ...movement.plates,
    ...movement.walls,
    ...movement.openings,
  ]) {
    names.set(part.id, part.name ?? part.id);
  }
  for (const wheel of movement.wheels) {
    names.set(wheel.id, wheelName(wheel, names.get(wheel.arbor) ?? wheel.arbor, movement));
  }
  return names;
}
