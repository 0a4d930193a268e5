/** Wheels and movements for the tests of sizes, teeth and contact: only what a test says differs from the default. */

import { emptyMovement } from '../../solver/movement/index.ts';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';

/** A wheel with the schema's defaults; ids are plain strings in tests. */
export function wheelOf(fields: { id?: string } & Partial<Omit<Wheel, 'id'>>): Wheel {
  const base = {
    id: 'wheel',
    arbor: 'arbor',
    teeth: 20,
    size: { module: 1 },
    form: 'involute',
    internal: false,
    profileShift: 0,
    runOut: 0,
    level: 0,
    thickness: 2,
  };
  // Branded ids are strings; the schema's own parser brands them when a file is read.
  return { ...base, ...fields } as unknown as Wheel;
}

/** A movement of these wheels, the first driving the second when there are two. */
export function movementOf(...wheels: readonly Wheel[]): Movement {
  const [a, b] = wheels;
  const rules =
    a && b
      ? [{ kind: 'depth', id: 'depth', wheels: [a.id, b.id], use: 'calculated', allowance: 0, leaveOut: false }]
      : [];
  return { ...emptyMovement(), wheels, rules } as unknown as Movement; // as above: ids unbranded
}
