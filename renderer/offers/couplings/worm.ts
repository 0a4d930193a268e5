/** A worm, as it is offered and told. */
import { type CouplingWays, DRAFT, teethOf } from './couplingWays.ts';

/** The arbor becomes a worm of one start. */
export const wormWays: CouplingWays<'worm'> = {
  says: ({ arbor, wheel }, nameOf) => `Worm on ${nameOf(arbor)} turns ${nameOf(wheel)}`,
  ofWheel: ({ arbor }, wheel) => [{ id: DRAFT, kind: 'worm', arbor, starts: 1, wheel }],
  gives: (movement, { arbor, starts, wheel }) => ({ from: arbor, driving: starts, driven: teethOf(movement, wheel) }),
};
