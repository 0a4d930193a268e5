/** The couplings, as the train knows them. */
import type { Coupling, CouplingKind, CouplingOf } from '../../movement/schema.ts';
import { carrierJoins } from './carrier.ts';
import { contrateJoins } from './contrate.ts';
import type { Join } from './join.ts';
import { steppedJoins } from './stepped.ts';
import { wormJoins } from './worm.ts';

/** Every kind; one without its entry here does not compile. */
const JOINS = { worm: wormJoins, contrate: contrateJoins, carrier: carrierJoins, stepped: steppedJoins } satisfies {
  readonly [Kind in CouplingKind]: (coupling: CouplingOf<Kind>) => Join | undefined;
};

/** How a coupling joins two arbors; nothing where it only carries. */
export function joinOf(coupling: Coupling): Join | undefined {
  // The table pairs every kind with its own fields, which the compiler cannot follow through an index.
  return (JOINS[coupling.kind] as (coupling: Coupling) => Join | undefined)(coupling);
}
