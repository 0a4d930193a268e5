/** Sizes of all wheels of a movement; a size that did not change stays the same object, so that nothing is redrawn. */

import type { Movement } from '../../../solver/movement/schema.ts';
import { sizeOfWheel, type WheelSize } from '../../../solver/teeth/index.ts';

/** Do two flat records hold the same values? */
function sameFields(a: object, b: object): boolean {
  const left = Object.entries(a);
  const right = new Map(Object.entries(b));
  return left.length === right.size && left.every(([key, value]: [string, unknown]) => right.get(key) === value);
}

export type Sizes = ReadonlyMap<string, WheelSize>;

/** Sizes by wheel id; the result is `before` itself when nothing changed. */
export function sizesOf(movement: Movement, before?: Sizes): Sizes {
  const sizes = new Map<string, WheelSize>();
  let changed = before?.size !== movement.wheels.length;
  for (const wheel of movement.wheels) {
    const size = sizeOfWheel(wheel, movement);
    const known = before?.get(wheel.id);
    const kept = known && sameFields(known, size) ? known : size;
    if (kept !== known) changed = true;
    sizes.set(wheel.id, kept);
  }
  return changed || !before ? sizes : before;
}
