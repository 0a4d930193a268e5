/** A contrate pair, as it is offered and told. */
import { type CouplingWays, DRAFT, teethOf } from './couplingWays.ts';

/** Each wheel of the one side could turn the wheel of the other. */
export const contrateWays: CouplingWays<'contrate'> = {
  says: ({ wheels: [a, b] }, nameOf) => `Contrate: ${nameOf(a)} turns ${nameOf(b)}`,
  ofWheel: ({ wheels }, wheel) => wheels.map((own) => ({ id: DRAFT, kind: 'contrate', wheels: [own, wheel] })),
  gives: (movement, { wheels: [a, b] }) => ({
    from: movement.wheels.find(({ id }) => id === a)?.arbor,
    driving: teethOf(movement, a),
    driven: teethOf(movement, b),
  }),
};
