/** A pin or finger, as it is offered and told. */
import { type CouplingWays, DRAFT, teethOf } from './couplingWays.ts';

/** The arbor moves the wheel by one tooth at each turn. */
export const steppedWays: CouplingWays<'stepped'> = {
  says: ({ arbor, wheel }, nameOf) => `Pin or finger on ${nameOf(arbor)} moves ${nameOf(wheel)}`,
  ofWheel: ({ arbor }, wheel) => [{ id: DRAFT, kind: 'stepped', arbor, wheel, teeth: 1 }],
  gives: (movement, { arbor, teeth = 1, wheel }) => ({ from: arbor, driving: teeth, driven: teethOf(movement, wheel) }),
};
