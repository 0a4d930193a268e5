/** The couplings, as the window knows them. */
import type { CouplingKind } from '../../../solver/movement/schema.ts';
import { carrier } from './carrier.ts';
import { contrate } from './contrate.ts';
import type { CouplingWays, Draft } from './couplingWays.ts';
import { stepped } from './stepped.ts';
import { worm } from './worm.ts';

/** Every kind, in the order in which they are offered; one without its entry here does not compile. */
const WAYS = { worm, contrate, stepped, carrier } satisfies { readonly [Kind in CouplingKind]: CouplingWays<Kind> };

/** A kind as seen by what asks all of them alike. */
export type AnyWays = CouplingWays<CouplingKind>;

// The table pairs every kind with its own fields, which the compiler cannot follow through an index.
const ANY = WAYS as unknown as Readonly<Record<CouplingKind, AnyWays>>;

/** What is known of a coupling's kind. */
export const waysOf = ({ kind }: Pick<Draft, 'kind'>): AnyWays => ANY[kind];

/** All kinds, in the order in which they are offered. */
export const ALL_WAYS: readonly AnyWays[] = Object.values(ANY);
