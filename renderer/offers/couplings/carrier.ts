/** An arm, as it is offered and told. */
import { carriersOf } from '../../../solver/movement/schema.ts';
import { type CouplingWays, DRAFT } from './couplingWays.ts';

/** One arbor becomes the arm of the other; an arm that carries something already takes the new arbor along. */
export const carrierWays: CouplingWays<'carrier'> = {
  says: ({ arm, carries }, nameOf) => `Arm on ${nameOf(arm)} carries ${carries.map(nameOf).join(', ')}`,
  ofArbors: (from, to) =>
    from.isArbor && to.isArbor ? [{ id: DRAFT, kind: 'carrier', arm: from.arbor, carries: [to.arbor] }] : [],
  takenIn: (movement, draft) => {
    const arm = carriersOf(movement).find((each) => each.arm === draft.arm);
    return arm && { kind: 'change', id: arm.id, set: { carries: [...arm.carries, ...draft.carries] } };
  },
};
