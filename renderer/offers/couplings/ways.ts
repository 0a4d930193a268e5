/** The couplings, as the window knows them. */
import type { CouplingKind } from '../../../solver/movement/schema.ts';
import { carrierWays } from './carrier.ts';
import { contrateWays } from './contrate.ts';
import type { CouplingDraft, CouplingWays } from './couplingWays.ts';
import { steppedWays } from './stepped.ts';
import { wormWays } from './worm.ts';

/** Every kind, in the order in which they are offered; one without its entry here does not compile. */
const WAYS = { worm: wormWays, contrate: contrateWays, stepped: steppedWays, carrier: carrierWays } satisfies {
  readonly [Kind in CouplingKind]: CouplingWays<Kind>;
};

/** A kind as seen by what asks all of them alike. */
export type AnyWays = CouplingWays<CouplingKind>;

// The table pairs every kind with its own fields, which the compiler cannot follow through an index.
const ANY = WAYS as unknown as Readonly<Record<CouplingKind, AnyWays>>;

/** What is known of a coupling's kind. */
export const waysOf = ({ kind }: Pick<CouplingDraft, 'kind'>): AnyWays => ANY[kind];

/** All kinds, in the order in which they are offered. */
export const ALL_WAYS: readonly AnyWays[] = Object.values(ANY);
